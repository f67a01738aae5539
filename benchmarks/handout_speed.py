"""How long handouts take: a four-day week as a whole command, and a hundred plans in one."""

from __future__ import annotations

import os
import resource
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from setwright.exercises import catalogue
from setwright.plan.week import Entry, Plan, Session
from setwright.plan.write import write_plan

DAYS = ("monday", "tuesday", "thursday", "friday")
TIMES, MANY, TARGET_S = 5, 100, 3.0


def four_days(number: int) -> Plan:
    """Four days of seven exercises from the catalogue; another number takes others."""
    ids = catalogue.ids()
    picked = [ids[(number + place * len(ids) // 28) % len(ids)] for place in range(28)]
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
    return Plan(setwright="plan/1", title=f"Four days, {number}", sessions=sessions)


def seconds(*words: str) -> tuple[float, float]:
    """Wall time and processor time of one command."""
    start, before = time.perf_counter(), processor_s()
    done = subprocess.run(
        [sys.executable, "-m", "setwright", "handout", *words], capture_output=True, check=False
    )
    if done.returncode:
        raise RuntimeError(done.stderr.decode())
    return time.perf_counter() - start, processor_s() - before


def processor_s() -> float:
    """Processor time of the commands so far."""
    spent = resource.getrusage(resource.RUSAGE_CHILDREN)
    return spent.ru_utime + spent.ru_stime


def main() -> None:
    """Print the figures."""
    with tempfile.TemporaryDirectory() as folder:
        paths = []
        for number in range(MANY):
            path = Path(folder, f"client-{number}.yaml")
            path.write_text(write_plan(four_days(number)), encoding="utf-8")
            paths.append(str(path))
        out = ("-o", str(Path(folder, "out")))
        for reader in ("client", "coach"):
            spent = [seconds(paths[0], "--for", reader, *out) for _ in range(TIMES)]
            print(
                f"four days for the {reader}, all formats: "
                f"median {statistics.median(wall for wall, _ in spent):.2f} s, "
                f"slowest {max(wall for wall, _ in spent):.2f} s (target {TARGET_S:.0f}); "
                f"processor {statistics.median(busy for _, busy in spent):.2f} s"
            )
        wall, busy = seconds(*paths, *out)
        print(f"{MANY} clients, all formats: {wall:.0f} s, processor {busy:.0f} s")
    print(f"load of the machine: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")


if __name__ == "__main__":
    main()
