"""Speed and memory of the estimate: one more set on three years of logs, and a full refit.

Usage: python benchmarks/training_speed.py
"""

from __future__ import annotations

import gc
import resource
import statistics
import time

import numpy as np

from setwright.exercises import catalogue
from setwright.training.done import DoneSet
from setwright.training.lifter import fit

SETS = 15_000
EXERCISES = 25
DAYS = 3 * 365
SETS_A_DAY = 24
MORE = 200


def log_of_three_years() -> list[DoneSet]:
    """Four days a week, six exercises of four sets, of twenty-five in turn."""
    rng = np.random.default_rng(1)
    names = catalogue.ids()[:: len(catalogue.ids()) // EXERCISES][:EXERCISES]
    days = sorted(rng.choice(DAYS, SETS // SETS_A_DAY, replace=False).tolist())
    found = []
    for session, day in enumerate(days):
        for place in range(6):
            name = names[(session * 6 + place) % EXERCISES]
            for number in range(4):
                reps = float(rng.integers(6, 13))
                rir = float(rng.integers(0, 4)) if rng.random() < 0.9 else None
                load = 60.0 * (1 + 0.0003 * day) * float(rng.choice([0.95, 1.0, 1.05]))
                minute = 600.0 + 14 * place + 3.5 * number
                made = f"{session}-{place}-{number}"
                found.append(
                    DoneSet(
                        made,
                        day,
                        minute,
                        name,
                        number + 1,
                        load,
                        load,
                        reps,
                        rir,
                        rir == 0.0,
                        150.0,
                    )
                )
    return found


def main() -> None:
    """Print what was measured."""
    log = log_of_three_years()
    fit(log[:100], "male", "intermediate")
    gc.collect()
    start = time.perf_counter()
    lifter = fit(log, "male", "intermediate")
    refit = time.perf_counter() - start
    day = log[-1].day
    took = []
    for more in range(MORE):
        old = log[-MORE + more]
        one = DoneSet(
            f"more-{more}",
            day + 2 + more // SETS_A_DAY,
            old.minute,
            old.exercise,
            old.number,
            old.load_kg,
            old.system_kg,
            old.reps,
            old.rir,
            old.to_failure,
            old.rest_s,
        )
        start = time.perf_counter()
        lifter.fold(one)
        took.append((time.perf_counter() - start) * 1000)
    start = time.perf_counter()
    for _ in range(100):
        lifter.copy()
    copied = (time.perf_counter() - start) * 10
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    print(f"full refit of {len(log)} sets of {EXERCISES} exercises: {refit:.2f} s (wanted: 2)")
    print(
        f"one more set: median {statistics.median(took):.2f} ms, slowest of {MORE} "
        f"{max(took):.2f} ms (wanted: 5)"
    )
    print(f"a copy: {copied:.2f} ms")
    print(f"peak memory of the process: {peak:.0f} MB (wanted: 200)")


if __name__ == "__main__":
    main()
