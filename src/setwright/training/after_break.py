"""Back after a break or an illness: a reduced restart, then steps up.

Figures: layoff-load-reset (common practice, from memory): 2 weeks off, 5 to 10 % less load and
half to two thirds of the sets; 4 weeks, 10 to 20 % and half; 8 weeks, 30 to 40 %. A transition of
2 to 4 weeks: layoff-transition. After 10 weeks off what was lost came back in about 5:
layoff-regain.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from setwright.training.past import Outing

BREAK_DAYS = 14
LONG_BREAK_DAYS = 56
# (days off, share taken off the load), straight lines between.
CUT = ((14, 0.075), (28, 0.15), (56, 0.35), (84, 0.40))
SETS = ((14, 0.6), (28, 0.5))
# A long break restarts at least this far from failure.
LONG_BREAK_RIR = 3.0
SHORTEST_WEEKS = 2
LONGEST_WEEKS = 5
WEEKS_PER_DAY_OFF = 1 / 21
ILL_DAYS = 14
ILL_SETS = 0.5
EVIDENCE = ("layoff-load-reset", "layoff-transition", "layoff-regain")
ILL_EVIDENCE = ("layoff-illness",)


@dataclass(frozen=True)
class Return:
    """A restart under way.

    Attributes:
        days_off: length of the break.
        first_day: of the return.
        week: of the transition, from 1.
        weeks: of the transition.
        before_kg: load before the break.
        most_share: share of that load not to go over now.
        sets_share: share of the sets to do.
        rir_least: repetitions in reserve not to go under.
    """

    days_off: int
    first_day: int
    week: int
    weeks: int
    before_kg: float
    most_share: float
    sets_share: float
    rir_least: float


def _line(points: Sequence[tuple[int, float]], days: float) -> float:
    """Straight lines between points, level outside them."""
    if days <= points[0][0]:
        return points[0][1]
    for (left, low), (right, high) in pairwise(points):
        if days <= right:
            return low + (high - low) * (days - left) / (right - left)
    return points[-1][1]


def load_cut(days_off: int) -> float:
    """Share taken off the load in the first session back; 0 for less than two weeks off."""
    return 0.0 if days_off < BREAK_DAYS else _line(CUT, days_off)


def sets_kept(days_off: int) -> float:
    """Share of the sets in the first week back; 1 for less than two weeks off."""
    return 1.0 if days_off < BREAK_DAYS else _line(SETS, days_off)


def transition_weeks(days_off: int) -> int:
    """Weeks until the old loads are allowed again."""
    weeks = SHORTEST_WEEKS + int((days_off - BREAK_DAYS) * WEEKS_PER_DAY_OFF)
    return min(weeks, LONGEST_WEEKS)


def coming_back(outings: Sequence[Outing], day: int, trained: Sequence[int] = ()) -> Return | None:
    """The restart that a day is part of, or None.

    Args:
        outings: of one exercise, in time order, all before ``day``.
        day: of the session to come.
        trained: days on which anything was trained, rising.
    """
    later = day
    for outing in reversed(outings):
        if later - outing.day >= BREAK_DAYS:
            days_off = _days_off(outing.day, later, trained)
            if days_off >= BREAK_DAYS:
                return _at(days_off, outing.load_kg, later, day)
        later = outing.day
        if day - later >= 7 * LONGEST_WEEKS:
            return None
    return None


def _days_off(last: int, back: int, trained: Sequence[int]) -> int:
    """Days that count as off between two outings of an exercise.

    The longest stretch without any training; or half the time without the exercise, for other
    work holds part of it (common practice).
    """
    between = [last, *(one for one in trained if last < one < back), back]
    longest = max(later - earlier for earlier, later in pairwise(between))
    return max(longest, (back - last) // 2)


def _at(days_off: int, before_kg: float, first_day: int, day: int) -> Return | None:
    weeks = transition_weeks(days_off)
    week = (day - first_day) // 7
    if week >= weeks:
        return None
    left = 1 - week / weeks
    return Return(
        days_off,
        first_day,
        week + 1,
        weeks,
        before_kg,
        1 - load_cut(days_off) * left,
        1 - (1 - sets_kept(days_off)) * left,
        LONG_BREAK_RIR if days_off >= LONG_BREAK_DAYS else 0.0,
    )


def after_illness(ill_until: int | None, trained: Sequence[int], day: int) -> bool:
    """Whether this is the first session after an illness of the last two weeks.

    Args:
        ill_until: last day on which illness was reported.
        trained: days trained, rising.
        day: of the session to come.
    """
    if ill_until is None or not 0 <= day - ill_until <= ILL_DAYS:
        return False
    return not any(ill_until < one < day for one in trained)
