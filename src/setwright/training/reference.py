"""The outing that the next load is told from."""

from __future__ import annotations

from collections.abc import Sequence

from setwright.training.case import Case
from setwright.training.past import Outing

# Days within which an outing before the last one may be taken instead (our choice).
RECENT_DAYS = 28
# Repetitions outside the band at which the last outing's load was meant for something else.
FAR_OFF = 3.0


def reference(case: Case, outings: Sequence[Outing]) -> Outing:
    """The last outing, unless its load was meant for another band or slipped.

    A load that is expected to leave the band by far is not the one to go on from when a recent
    one lies much nearer: an exercise may be done heavy one day and light the next, and a whole
    outing may be written in the wrong unit.

    Args:
        case: the exercise today.
        outings: before today, in time order, at least one.
    """
    last = outings[-1]
    off = _off(case, last)
    if off <= FAR_OFF:
        return last
    others = [one for one in outings[-6:-1] if case.day - one.day <= RECENT_DAYS]
    if not others:
        return last
    best = min(reversed(others), key=lambda one: _off(case, one))
    return best if _off(case, best) < off / 2 else last


def _off(case: Case, outing: Outing) -> float:
    """Repetitions by which an outing's load is expected to miss the band today."""
    low, top = case.entry.reps
    seen = case.expected(outing.load_kg).mean
    return max(low - seen, seen - top, 0.0)
