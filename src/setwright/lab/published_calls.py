"""Published figures of calls and of repetitions at a load, and the lifters in their protocols."""

from __future__ import annotations

from functools import partial

import numpy as np

from setwright.lab.check import Check, Sample, mean_check, range_check, spread_check
from setwright.lab.protocols import Called, called_in_set, failure_sets

META = "rir-accuracy-meta-2022"
SQUAT = "rir-accuracy-squat-70-percent-2021"
BENCH = "rir-accuracy-bench-75-percent-2023"
SQUAT_70 = "reps-at-70-percent-squat-trained"
BENCH_70 = "rest-reps-bench-70-percent-2min-2022"
BENCH_80 = "one-rm-equation-crossvalidation-bench-2025"
KNEE = "rest-reps-knee-extension-80-percent-1-vs-3min-2007"
LIFTS = {
    "back-squat": 0.65,
    "barbell-bench-press": 0.75,
    "machine-row": 0.70,
    "leg-extension": 0.80,
    "cable-curl": 0.75,
}


def calls_checks(sample: Sample) -> tuple[Check, ...]:
    """Accuracy and bias of calls of repetitions in reserve."""
    squat = sample.of(
        partial(called_in_set, exercise="back-squat", fraction=0.70, calls=(5, 3, 1)),
        "intermediate",
        "male",
    )
    bench = sample.of(
        partial(called_in_set, exercise="barbell-bench-press", fraction=0.75, calls=(3, 1)),
        "intermediate",
    )
    mixed: list[Called] = []
    for lift, fraction in LIFTS.items():
        mixed += sample.of(
            partial(called_in_set, exercise=lift, fraction=fraction, calls=(5, 3, 1))
        )
    found = []
    for call, mean, sd in ((1, 2.05, 1.73), (3, 3.65, 2.46), (5, 5.15, 2.92)):
        got = [one.errors[call] for one in squat]
        what = f"squat at 70 %: real less called reserve, call of {call}"
        found.append(mean_check(SQUAT, what, "reps", mean, sd, 25, got))
        found.append(spread_check(SQUAT, what + ", SD", "reps", sd, 25, got))
    signed = [error for one in bench for error in one.errors.values()]
    what = "bench press at 75 %: real less called reserve"
    found.append(mean_check(BENCH, what, "reps", -0.17, 1.00, 24, signed))
    found.append(spread_check(BENCH, what + ", SD", "reps", 1.00, 24, signed))
    size = np.abs(signed).tolist()
    found.append(mean_check(BENCH, what + ", size", "reps", 0.65, 0.78, 24, size))
    errors = [error for one in mixed for error in one.errors.values()]
    found.append(
        range_check(
            META, "five lifts at 65 to 80 %: real less called reserve", "reps", 0.95,
            (0.17, 1.73), "95 % of the meta-analysis", float(np.mean(errors)),
        )
    )  # fmt: skip
    return tuple(found)


def repetition_checks(sample: Sample) -> tuple[Check, ...]:
    """Repetitions at a load, and their spread between people."""
    once = partial(failure_sets, rest_s=60.0, sets=1)
    at_70 = partial(once, exercise="barbell-bench-press", fraction=0.70)
    at_80 = partial(once, exercise="barbell-bench-press", fraction=0.80)
    squats = sample.of(partial(once, exercise="back-squat", fraction=0.70), "intermediate", "male")
    squat = [one[0] for one in squats]
    bench = [one[0] for one in sample.of(at_70, None, "male")]
    heavy = [one[0] for one in sample.of(at_80, None, "male")]
    knee = [one[0] for one in sample.of(partial(once, exercise="leg-extension", fraction=0.80))]
    inside = float(np.mean([4 <= one <= 11 for one in heavy]))
    return (
        mean_check(SQUAT_70, "squat at 70 %: repetitions", "reps", 16, 4, 25, squat),
        spread_check(SQUAT_70, "squat at 70 %: repetitions, SD", "reps", 4, 25, squat),
        mean_check(BENCH_70, "bench press at 70 %: repetitions", "reps", 12.5, 2.19, 30, bench),
        spread_check(BENCH_70, "bench press at 70 %: repetitions, SD", "reps", 2.19, 30, bench),
        mean_check(KNEE, "leg extension at 80 %: repetitions", "reps", 10.1, 2.7, 9, knee),
        spread_check(KNEE, "leg extension at 80 %: repetitions, SD", "reps", 2.7, 9, knee),
        range_check(
            BENCH_80,
            "bench press at 80 %: share of men with 4 to 11 repetitions", "share", 1.0,
            (0.92, 1.0), "all of 35 men: 3 / 35 at most outside, 95 %", inside,
        ),
    )  # fmt: skip
