"""The rest before the next set: until performance holds, within what the audit accepts."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from setwright.audit.criteria.rest import LONGEST_S
from setwright.exercises.model import Exercise
from setwright.plan.week import Entry
from setwright.rehearsal.rehearse import TOLERATED_LOSS

STEP_S = 15
# Isolations are not worth longer waits (practice-rest: most exercises two minutes or more).
LONGEST_ISOLATION_S = 180
# After a drop beyond what is tolerated the rest is at least this much longer (common practice).
LONGER_S = 30
EVIDENCE = (
    "practice-rest",
    "rest-1-vs-3-min-trained-trial-2016",
    "rest-volume-load-matched-trial-2022",
)


@dataclass(frozen=True, slots=True)
class Rest:
    """A rest.

    Attributes:
        seconds: to take.
        enough: whether the band's low end is expected after it.
        because: why it is longer than planned; empty when it is not.
    """

    seconds: int
    enough: bool
    because: str


def longest_rest_s(exercise: Exercise, entry: Entry) -> int:
    """Longest rest that is asked for, s; never under the plan's own."""
    longest = LONGEST_S if exercise.kind == "compound" else LONGEST_ISOLATION_S
    return max(int(longest), entry.rest_s[1])


def rest_before(
    expected: Callable[[float], float],
    entry: Entry,
    last: float,
    longest_s: int,
    at_least_s: float = 0.0,
) -> Rest:
    """The shortest rest that is enough.

    Args:
        expected: repetitions of the next set at the same load after a rest in s; rising.
        entry: band and rest of the plan.
        last: repetitions of the last set at the same effort.
        longest_s: not to go over.
        at_least_s: not to go under, for a drop that was seen.
    """
    low, top = entry.reps
    holds = min((1 - TOLERATED_LOSS) * last, float(top))
    shortest, planned = entry.rest_s
    start = min(max(float(shortest), at_least_s), float(longest_s))
    end = max(float(planned), start)
    wanted = max(holds, low - 0.5)
    seconds = _first(expected, wanted, start, end)
    if seconds is not None:
        return Rest(seconds, True, "" if seconds <= planned else "The last drop was too large.")
    seconds = _first(expected, wanted, end, longest_s)
    if seconds is not None:
        text = "Longer than planned, so that repetitions hold."
        return Rest(seconds, True, text)
    seconds = _first(expected, low - 0.5, end, longest_s)
    if seconds is not None:
        text = "" if seconds <= planned else f"Longer than planned, so that {low} are left."
        return Rest(seconds, True, text)
    return Rest(round(max(planned, start)), False, "")


def _first(
    expected: Callable[[float], float], wanted: float, start_s: float, end_s: float
) -> int | None:
    """Shortest rest of a grid at which enough is expected; None when none is."""
    if end_s < start_s or expected(end_s) < wanted:
        return None
    if expected(start_s) >= wanted:
        return round(start_s)
    low, high = 0, -(-int(end_s - start_s) // STEP_S)
    while high - low > 1:
        middle = (low + high) // 2
        if expected(start_s + STEP_S * middle) >= wanted:
            high = middle
        else:
            low = middle
    return round(min(start_s + STEP_S * high, end_s))
