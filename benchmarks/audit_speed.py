"""How long an audit takes: in process, and as a whole command beside importing its libraries."""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

from setwright.audit.audit import audit
from setwright.exercises import catalogue
from setwright.plan.week import Entry, Plan, Session
from setwright.plan.write import write_plan

DAYS = ("monday", "tuesday", "thursday", "friday")


def four_days() -> Plan:
    """Four days of seven exercises, taken evenly from the catalogue."""
    ids = catalogue.ids()
    picked = [ids[number * len(ids) // 28] for number in range(28)]
    sessions = tuple(
        Session(
            name=f"Day {day + 1}",
            day=DAYS[day],
            exercises=tuple(
                Entry(exercise=one, sets=3, reps=(8, 12), rir=(3, 1), rest_s=(120, 180))
                for one in picked[day::4]
            ),
        )
        for day in range(4)
    )
    return Plan(setwright="plan/1", title="Four days", sessions=sessions)


def median_s(work: Callable[[], object], times: int) -> float:
    """Median wall time of some work, after one run to warm up, in seconds."""
    work()
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spent.append(time.perf_counter() - start)
    return statistics.median(spent)


def main() -> None:
    """Print the figures."""
    plan = four_days()
    print(f"audit in process: {median_s(lambda: audit(plan), 50) * 1000:.1f} ms (target 20)")
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "plan.yaml")
        path.write_text(write_plan(plan), encoding="utf-8")

        def run(*arguments: str) -> None:
            done = subprocess.run([sys.executable, *arguments], capture_output=True, check=False)
            if done.returncode not in (0, 1) or b"Traceback" in done.stderr:
                raise RuntimeError(done.stderr.decode())

        base = median_s(lambda: run("-c", "import numpy, pydantic"), 9)
        whole = median_s(lambda: run("-m", "setwright", "audit", str(path)), 9)
    print(f"import numpy, pydantic: {base:.2f} s")
    print(f"setwright audit: {whole:.2f} s (target {1.5 * base + 0.3:.2f})")


if __name__ == "__main__":
    main()
