"""Published figures of rest, recovery, gain and breaks, and the lifters in their protocols."""

from __future__ import annotations

from functools import partial

import numpy as np

from setwright.lab.check import Check, Sample, mean_check, range_check
from setwright.lab.protocols import lost_after, ten_rm_total, trained
from setwright.lab.traits import Experience

TEN_RM = "rest-reps-bench-10rm-men-women-2010"
AFTER = "recovery-reps-single-vs-multi-joint-24-48h-2015"
RATES = "rate-of-gain-by-status-open-data"
LOADS = "load-low-25-35-vs-8-12-reps-trained-2015"
EFFORT = "failure-vs-nonfailure-meta-2022"
VOLUME = "volume-trial-1-3-5-sets-trained-2019"
REGAIN = "layoff-regain"
STATUS: tuple[tuple[Experience, str, float, tuple[float, float]], ...] = (
    ("beginner", "untrained", 1.60, (0.94, 2.78)),
    ("intermediate", "trained", 1.04, (0.63, 2.03)),
)


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
            partial(ten_rm_total, exercise="barbell-bench-press", rest_s=60.0 * minutes),
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
            partial(lost_after, exercise=lift, days=1),
            "intermediate",
            "male",
        )
    ]
    later = [
        one
        for lift in ("back-squat", "lat-pulldown", "machine-row")
        for one in sample.of(
            partial(lost_after, exercise=lift, days=2),
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


def _end(
    sample: Sample,
    status: Experience,
    weeks: int,
    fraction: float = 0.75,
    sets: int = 3,
    left: float = 0.5,
) -> list[float]:
    """Squat 1RM after so many weeks over that before."""
    course = partial(
        trained,
        exercise="back-squat",
        weeks=[True] * weeks,
        fraction=fraction,
        sets=sets,
        left=left,
    )
    return [one[-1] for one in sample.of(course, status)]


def gain_checks(sample: Sample) -> tuple[Check, ...]:
    """Gain of strength by training status, and by load."""
    found = []
    for status, words, mean, ends in STATUS:
        got = _end(sample, status, 12)
        rate = float(np.median([100 * (one - 1) / 12 for one in got]))
        what = f"strength over 12 weeks, {words}, median"
        found.append(
            range_check(RATES, what, "% a week", mean, ends, "quartiles of the trials", rate)
        )
    heavy = _end(sample, "intermediate", 8, fraction=0.75)
    light = _end(sample, "intermediate", 8, fraction=0.50)
    ratio = (np.mean(light) - 1) / (np.mean(heavy) - 1)
    found.append(
        range_check(
            LOADS, "gain with 25-35 over gain with 8-12 repetitions, squat", "ratio", 8.8 / 19.6,
            (0.3, 0.7), "judged: no interval was read", float(ratio),
        )
    )  # fmt: skip
    hard = _end(sample, "intermediate", 8, left=0.0)
    short = _end(sample, "intermediate", 8, left=3.0)
    found.append(
        range_check(
            EFFORT, "gain stopping with 3 left over gain to failure, squat", "ratio", 1.09,
            (0.95, 1.22), "ES -0.09 (-0.22 to 0.05) over a gain of about 1, judged",
            float((np.mean(short) - 1) / (np.mean(hard) - 1)),
        )
    )  # fmt: skip
    one = _end(sample, "intermediate", 8, sets=1)
    five = _end(sample, "intermediate", 8, sets=5)
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
    broken = sample.of(partial(trained, exercise="leg-press", weeks=course, a_week=2), "beginner")
    steady = sample.of(
        partial(trained, exercise="leg-press", weeks=[True] * 20, a_week=2), "beginner"
    )
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
