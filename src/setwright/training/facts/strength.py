"""Changes of strength that exceed noise, and exercises that stall."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, log, sqrt

from setwright.rehearsal.strength import Z80
from setwright.training.after_break import coming_back
from setwright.training.client import Client
from setwright.training.constants import CONSTANTS
from setwright.training.lifter import Trend

# A change is told over about four weeks, from the estimate nearest to that, at least so old.
SPAN_DAYS = 28
LEAST_DAYS = 14
OLDEST_DAYS = 42
# Outings over which an exercise that gained nothing is said to stall (common practice).
STALL_OUTINGS = 6
STALL_SPAN_DAYS, STALL_LEAST_DAYS, STALL_OLDEST_DAYS = 42, 35, 56
# "Nothing": less than this share of what people of that status gain on average.
STALL_SHARE = 1 / 3
# Correlation of the errors of two estimates weeks apart: the person's curve and bias err alike in
# both. Our choice; `docs/review.md` says how often the interval holds the true change.
SHARED = 0.75


@dataclass(frozen=True)
class Change:
    """Change of the 1RM of an exercise.

    Attributes:
        exercise: id.
        days: over which.
        outings: days on which it was done since, the first one left out.
        percent: change.
        low: lower end of the 80 % interval.
        high: upper end.
        trend: gain under way, percent a week, with its 80 % interval; it draws on all exercises.
    """

    exercise: str
    days: int
    outings: int
    percent: float
    low: float
    high: float
    trend: Trend

    @property
    def rose(self) -> bool:
        """It rose, and an interval, of the change or of the trend, leaves out zero."""
        return self.percent > 0 and (self.low > 0 or self.trend.low > 0)

    @property
    def fell(self) -> bool:
        """It fell: an interval leaves out zero, and the trend is no sure rise."""
        sure = self.high < 0 or self.trend.high < 0
        return self.percent < 0 and sure and self.trend.low < 0


def changes(client: Client) -> tuple[Change, ...]:
    """Change of every exercise trained in the last two weeks that has an estimate to start from."""
    found = []
    for exercise, outings in client.past.outings.items():
        if client.day - outings[-1].day < LEAST_DAYS:
            change = change_of(client, exercise)
            if change is not None:
                found.append(change)
    return tuple(sorted(found, key=lambda one: (-one.percent, one.exercise)))


def change_of(
    client: Client,
    exercise: str,
    span: int = SPAN_DAYS,
    least: int = LEAST_DAYS,
    oldest: int = OLDEST_DAYS,
) -> Change | None:
    """Change of one exercise over about so many days; None when nothing is old enough."""
    history = client.lifter.history(exercise)
    if not history:
        return None
    last, now = history[-1]
    earlier = [row for row in history if least <= last - row[0] <= oldest]
    if not earlier:
        return None
    first, then = min(earlier, key=lambda row: abs(last - row[0] - span))
    step = log(now.median / then.median)
    one, other = now.sd / now.median, then.sd / then.median
    half = Z80 * sqrt(one**2 + other**2 - 2 * SHARED * one * other)
    percent, low, high = (100 * (exp(one) - 1) for one in (step, step - half, step + half))
    outings = sum(first < day <= last for day, _ in history)
    trend = client.lifter.trend(exercise, client.day)
    return Change(exercise, last - first, outings, percent, low, high, trend)


def stalls(client: Client, found: tuple[Change, ...]) -> tuple[Change, ...]:
    """Changes over about six weeks of exercises that gained next to nothing, worst first.

    Not those that come back from a break, whose loads are held back on purpose, and not those
    whose block has had a lighter week in the time.
    """
    usual = CONSTANTS.trend[client.folder.intake.experience]
    rows = []
    for recent in found:
        one = change_of(
            client, recent.exercise, STALL_SPAN_DAYS, STALL_LEAST_DAYS, STALL_OLDEST_DAYS
        )
        if one is None or one.outings < STALL_OUTINGS or one.low > 0:
            continue
        if coming_back(client.past.before(one.exercise, client.day), client.day, client.past.days):
            continue
        if any(client.day - one.days <= monday <= client.day for monday in client.block.eased):
            continue
        if one.percent <= 100 * usual * STALL_SHARE * one.days / 7:
            rows.append(one)
    return tuple(sorted(rows, key=lambda one: (one.percent, one.exercise)))
