"""When a lighter week is due, from the log.

The evidence is thin. Athletes ease off about every 5.6 weeks, SD 2.3 (deload-survey-2024, what is
done, not what works); a week off in mid-block left growth as it was and cost some strength
(deload-week-off-trial-2024); weeks with a fraction of the sets cost novices nothing
(deload-reduced-volume-untrained-2026). So a lighter week is offered for a reason seen in the log,
never by the calendar alone before the survey's usual span has passed.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from setwright.training.lifter import Lifter
from setwright.training.past import Past
from setwright.training.trouble import CARRY_ON

# Exercises trained within these days are looked at.
RECENT_DAYS = 14
# A fall is told from a mark at least so old, and not older than that.
EARLIER_DAYS = 10
OLDEST_DAYS = 42
LEAST_EXERCISES = 3
# "Most exercises": more than half; with time on its side a third is enough (common practice).
MOST = 0.5
SOME = 1 / 3
# The survey's mean, and its mean and one SD, in days.
USUAL_DAYS = 39
LONG_DAYS = 55
# Exercises with pain beyond carrying on, within a week (common practice).
PAIN_DAYS = 7
PAINFUL_EXERCISES = 2
EVIDENCE = (
    "deload-survey-2024",
    "deload-week-off-trial-2024",
    "deload-reduced-volume-untrained-2026",
)


@dataclass(frozen=True)
class Ease:
    """Whether a lighter week is due.

    Attributes:
        due: it is.
        falling: exercises whose strength fell beyond noise.
        looked_at: exercises trained lately for which that can be told.
        painful: exercises with pain above the level to carry on with, this last week.
        days: since the block began, a lighter week or a break.
        because: in plain words.
        evidence: ids of findings.
    """

    due: bool
    falling: tuple[str, ...]
    looked_at: int
    painful: tuple[str, ...]
    days: int
    because: tuple[str, ...]
    evidence: tuple[str, ...]


def ease_due(lifter: Lifter, past: Past, day: int, since: int) -> Ease:
    """Whether the log asks for a lighter week.

    Args:
        lifter: with everything up to ``day`` folded in.
        past: what was done and reported.
        day: proleptic ordinal of today.
        since: first day of the block, or after the last lighter week or break.
    """
    recent = [
        name
        for name, outings in past.outings.items()
        if outings and day - outings[-1].day <= RECENT_DAYS
    ]
    told = {name: fell for name in recent if (fell := fell_beyond_noise(lifter, name)) is not None}
    falling = tuple(sorted(name for name, fell in told.items() if fell))
    painful = tuple(sorted(_painful(past, day)))
    days = max(day - since, 0)
    share = len(falling) / len(told) if len(told) >= LEAST_EXERCISES else 0.0
    because = []
    if share > MOST:
        because.append(f"Strength fell beyond noise on {len(falling)} of {len(told)} exercises.")
    elif share >= SOME and days >= USUAL_DAYS:
        because.append(
            f"Strength fell beyond noise on {len(falling)} of {len(told)} exercises, "
            f"{days // 7} weeks after the last lighter week or the start."
        )
    if len(painful) >= PAINFUL_EXERCISES:
        because.append(f"Pain above {CARRY_ON} of 10 on {len(painful)} exercises this week.")
    if days >= LONG_DAYS:
        because.append(
            f"{days // 7} weeks without a lighter week; lifters take one about every five or six."
        )
    due = bool(because)
    if due:
        because.append("The evidence for lighter weeks is thin: they cost little and may help.")
    return Ease(due, falling, len(told), painful, days, tuple(because), EVIDENCE)


def fell_beyond_noise(lifter: Lifter, exercise: str) -> bool | None:
    """Whether the 1RM now lies below what it was, interval and all; None when it cannot be told."""
    history = lifter.history(exercise)
    if not history:
        return None
    last, now = history[-1]
    earlier = [one.median for day, one in history if EARLIER_DAYS <= last - day <= OLDEST_DAYS]
    return now.high < max(earlier) if earlier else None


def _painful(past: Past, day: int) -> Iterable[str]:
    for name, by_day in past.reports.items():
        if any(0 <= day - on <= PAIN_DAYS and one.pain > CARRY_ON for on, one in by_day.items()):
            yield name
