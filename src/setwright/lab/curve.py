"""Repetitions at a load: an exponential approach to a load that can be repeated without end.

``fraction(n) = floor + (1 - floor) exp(-(n - 1) / pace)``; both constants are the lifter's own. The
estimate assumes a hyperbola with one constant.
"""

from __future__ import annotations

from math import exp, log

MOST_REPS = 60.0


def capacity(fraction: float, floor: float, pace: float) -> float:
    """Repetitions to failure, not rounded, at a fraction of the present 1RM; 0 above it."""
    if fraction > 1.0:
        # Just above the 1RM a part of a repetition is done, which counts as none.
        return max(1.0 - (fraction - 1.0) * 20.0, 0.0)
    if fraction <= floor + 0.01:
        return MOST_REPS
    return min(1.0 + pace * log((1.0 - floor) / (fraction - floor)), MOST_REPS)


def fraction_for(reps: float, floor: float, pace: float) -> float:
    """Fraction of the 1RM that can be lifted so often; the inverse of ``capacity``."""
    return floor + (1.0 - floor) * exp(-(max(reps, 1.0) - 1.0) / pace)
