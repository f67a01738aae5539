"""How long a teaching document takes as a whole command, for a four-day week."""

from __future__ import annotations

import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from handout_speed import TARGET_S, four_days
from setwright.plan.write import write_plan

TIMES = 5


def seconds(plan: str, out: str, depth: str) -> tuple[float, float]:
    """Wall time and processor time of one command."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.perf_counter()
    words = ("explain", plan, "--depth", depth, "-o", out)
    done = subprocess.run(
        [sys.executable, "-m", "setwright", *words], capture_output=True, check=False
    )
    wall = time.perf_counter() - start
    if done.returncode:
        raise RuntimeError(done.stderr.decode())
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return wall, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def main() -> None:
    """Print the figures."""
    load = os.getloadavg()[0]
    print(
        f"four days of seven exercises, medians of {TIMES}; target {TARGET_S:g} s; load {load:.1f}"
    )
    with tempfile.TemporaryDirectory() as folder:
        plan = Path(folder, "plan.yaml")
        plan.write_text(write_plan(four_days(0)), encoding="utf-8")
        for depth in ("short", "full"):
            for kind in ("md", "html", "pdf"):
                out = str(Path(folder, f"week.{kind}"))
                spent = [seconds(str(plan), out, depth) for _ in range(TIMES)]
                wall, processor = (statistics.median(one) for one in zip(*spent, strict=True))
                print(f"{depth:>5} {kind:<4} {wall:.2f} s, processor {processor:.2f} s")


if __name__ == "__main__":
    main()
