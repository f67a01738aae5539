"""Ramp sets: how many, how heavy.

Findings warm-ramp-loads (40 and 80 % of the working load before a heavy press, 6 repetitions) and
warm-count-by-load (common practice); one more set is enough once the area is warm.
"""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises.model import Exercise

HEAVY = 0.65
LIGHT_ISOLATION = 0.8
# An area counts as warm when earlier work reached this far into the exercise.
WARM = 0.3


@dataclass(frozen=True)
class Ramp:
    """One warm-up set: share of the working load, repetitions, rest after it in s."""

    of_working: float
    reps: int
    rest_s: float


LIGHT = Ramp(0.4, 6, 30.0)
FIRM = Ramp(0.8, 4, 60.0)
EASY = Ramp(0.5, 8, 45.0)


def ramp(exercise: Exercise, fraction: float, warm: bool) -> tuple[Ramp, ...]:
    """Warm-up sets before the first working set.

    Args:
        exercise: what follows.
        fraction: working load as a fraction of 1RM.
        warm: earlier work has already warmed the area.
    """
    if exercise.kind == "isolation":
        return (EASY,) if not warm or fraction > LIGHT_ISOLATION else ()
    if warm:
        return (FIRM,) if fraction >= HEAVY else ()
    return (LIGHT, FIRM) if fraction >= HEAVY else (EASY,)
