"""Published figures, and what the virtual lifters do in the same protocol."""

from __future__ import annotations

import numpy as np

from setwright.lab.check import Check, Sample, mean_check, range_check, spread_check
from setwright.lab.protocols import (
    Called,
    called_in_set,
    failure_sets,
    lost_after,
    ten_rm_total,
    trained,
)

META = "rir-accuracy-meta-2022"
SQUAT = "rir-accuracy-squat-70-percent-2021"
BENCH = "rir-accuracy-bench-75-percent-2023"
BENCH_70 = "rest-reps-bench-70-percent-2min-2022"
TEN_RM = "rest-reps-bench-10rm-men-women-2010"
KNEE = "rest-reps-knee-extension-80-percent-1-vs-3min-2007"
AFTER = "recovery-reps-single-vs-multi-joint-24-48h-2015"
RATES = "rate-of-gain-by-status-open-data"
LOADS = "load-low-25-35-vs-8-12-reps-trained-2015"
VOLUME = "volume-trial-1-3-5-sets-trained-2019"
REGAIN = "layoff-regain"
LIFTS = ("back-squat", "barbell-bench-press", "machine-row", "leg-extension", "cable-curl")


def published_checks(people: int = 300, seed: int = 1) -> tuple[Check, ...]:
    """Every check, on so many lifters a protocol."""
    sample = Sample(people, seed)
    return (
        *calls_checks(sample),
        *repetition_checks(sample),
        *rest_checks(sample),
        *recovery_checks(sample),
        *gain_checks(sample),
        *break_checks(sample),
    )


def calls_checks(sample: Sample) -> tuple[Check, ...]:
    """Accuracy and bias of calls of repetitions in reserve."""
    squat = sample.of(
        lambda t, r: called_in_set(t, r, "back-squat", 0.70, (5, 3, 1)), "intermediate", "male"
    )
    bench = sample.of(
        lambda t, r: called_in_set(t, r, "barbell-bench-press", 0.75, (3, 1)), "intermediate"
    )
    mixed: list[Called] = []
    for number, lift in enumerate(LIFTS):
        fraction = (0.65, 0.75, 0.70, 0.80, 0.75)[number]
        mixed += sample.of(
            lambda t, r, lift=lift, fraction=fraction: called_in_set(  # type: ignore[misc]
                t, r, lift, fraction, (5, 3, 1)
            )
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
    squat = sample.of(
        lambda t, r: failure_sets(t, r, "back-squat", 0.70, 60, 1)[0], "intermediate", "male"
    )
    bench = sample.of(
        lambda t, r: failure_sets(t, r, "barbell-bench-press", 0.70, 60, 1)[0], None, "male"
    )
    knee = sample.of(lambda t, r: failure_sets(t, r, "leg-extension", 0.80, 60, 1)[0])
    heavy = sample.of(
        lambda t, r: failure_sets(t, r, "barbell-bench-press", 0.80, 60, 1)[0], None, "male"
    )
    inside = float(np.mean([4 <= one <= 11 for one in heavy]))
    source = "reps-at-70-percent-squat-trained"
    return (
        mean_check(source, "squat at 70 %: repetitions", "reps", 16, 4, 25, squat),
        spread_check(source, "squat at 70 %: repetitions, SD", "reps", 4, 25, squat),
        mean_check(BENCH_70, "bench press at 70 %: repetitions", "reps", 12.5, 2.19, 30, bench),
        spread_check(BENCH_70, "bench press at 70 %: repetitions, SD", "reps", 2.19, 30, bench),
        mean_check(KNEE, "leg extension at 80 %: repetitions", "reps", 10.1, 2.7, 9, knee),
        spread_check(KNEE, "leg extension at 80 %: repetitions, SD", "reps", 2.7, 9, knee),
        range_check(
            "one-rm-equation-crossvalidation-bench-2025",
            "bench press at 80 %: share of men with 4 to 11 repetitions", "share", 1.0,
            (0.92, 1.0), "all of 35 men: 3 / 35 at most outside, 95 %", inside,
        ),
    )  # fmt: skip


def rest_checks(sample: Sample) -> tuple[Check, ...]:
    """What rest gives back within a session."""
    found = []
    for sex, minutes, mean, sd, n in (
        ("male", 1, 18.0, 3.8, 21),
        ("male", 2, 21.4, 3.8, 21),
        ("male", 3, 23.5, 5.1, 21),
        ("female", 1, 23.3, 3.8, 16),
        ("female", 2, 27.1, 2.6, 16),
        ("female", 3, 28.7, 1.5, 16),
    ):
        got = sample.of(
            lambda t, r, rest=60.0 * minutes: ten_rm_total(  # type: ignore[misc]
                t, r, "barbell-bench-press", rest
            ),
            "intermediate",
            sex,
        )
        what = f"three sets with the 10RM, {minutes} min rest, {sex}: repetitions"
        found.append(mean_check(TEN_RM, what, "reps", mean, sd, n, got))
    return tuple(found)


def recovery_checks(sample: Sample) -> tuple[Check, ...]:
    """What is still lost a day and two days after."""
    multi = [
        one
        for lift in ("barbell-bench-press", "back-squat", "lat-pulldown")
        for one in sample.of(
            lambda t, r, lift=lift: lost_after(t, r, lift, 1),  # type: ignore[misc]
            "intermediate",
            "male",
        )
    ]
    later = [
        one
        for lift in ("back-squat", "lat-pulldown", "machine-row")
        for one in sample.of(
            lambda t, r, lift=lift: lost_after(t, r, lift, 2),  # type: ignore[misc]
            "intermediate",
            "male",
        )
    ]
    near = float(np.mean([one >= -1 for one in later]))
    return (
        mean_check(
            AFTER, "compound lifts 24 h after eight sets to failure: change", "reps", -1.7, 1.5,
            10, multi,
        ),
        range_check(
            AFTER, "48 h after: share within a repetition", "share", 0.80, (0.60, 1.0),
            "four in five of 10 people, give or take two", near,
        ),
    )  # fmt: skip


def gain_checks(sample: Sample) -> tuple[Check, ...]:
    """Gain of strength by training status, and by load."""
    found = []
    for status, words, mean, ends in (
        ("beginner", "untrained", 1.60, (0.94, 2.78)),
        ("intermediate", "trained", 1.04, (0.63, 2.03)),
    ):
        got = sample.of(
            lambda t, r: trained(t, "back-squat", [True] * 12)[-1],
            status,  # type: ignore[arg-type]
        )
        rate = float(np.median([100 * (one - 1) / 12 for one in got]))
        what = f"strength over 12 weeks, {words}, median"
        found.append(
            range_check(RATES, what, "% a week", mean, ends, "quartiles of the trials", rate)
        )
    heavy = sample.of(lambda t, r: trained(t, "back-squat", [True] * 8, 0.75)[-1], "intermediate")
    light = sample.of(lambda t, r: trained(t, "back-squat", [True] * 8, 0.50)[-1], "intermediate")
    ratio = (np.mean(light) - 1) / (np.mean(heavy) - 1)
    found.append(
        range_check(
            LOADS, "gain with 25-35 over gain with 8-12 repetitions, squat", "ratio", 8.8 / 19.6,
            (0.3, 0.7), "judged: no interval was read", float(ratio),
        )
    )  # fmt: skip
    one = sample.of(lambda t, r: trained(t, "back-squat", [True] * 8, sets=1)[-1], "intermediate")
    five = sample.of(lambda t, r: trained(t, "back-squat", [True] * 8, sets=5)[-1], "intermediate")
    found.append(
        range_check(
            VOLUME, "gain with one set a session over gain with five, squat", "ratio", 1.0,
            (0.6, 1.1), "judged: 'equal', no interval was read",
            float((np.mean(one) - 1) / (np.mean(five) - 1)),
        )
    )  # fmt: skip
    return tuple(found)


def break_checks(sample: Sample) -> tuple[Check, ...]:
    """What a break takes and how fast it comes back."""
    course = [True] * 10 + [False] * 10 + [True] * 10
    broken = sample.of(lambda t, r: trained(t, "leg-press", course, a_week=2), "beginner")
    steady = sample.of(lambda t, r: trained(t, "leg-press", [True] * 20, a_week=2), "beginner")
    mean = np.mean(broken, axis=0)
    back = next((week for week in range(20, 30) if mean[week] >= mean[9]), 40) - 19
    full = np.mean(steady, axis=0)
    return (
        range_check(
            REGAIN, "weeks to earlier strength after a 10-week break", "weeks", 5, (2, 6),
            "'within about 5 weeks'", float(back),
        ),
        range_check(
            REGAIN, "strength after 20 trained weeks with a break, over without", "ratio", 1.0,
            (0.96, 1.04), "'no worse': 4 % either way", float(mean[-1] / full[-1]),
        ),
    )  # fmt: skip
