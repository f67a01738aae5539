"""A set that stopped short without a word about its reserve: at least so many, and how far more."""

from __future__ import annotations

import numpy as np

from setwright.training.reading import Reading

# Grid of the strength of the moment, in SD of what was expected.
GRID = np.linspace(-4.0, 6.0, 81)
# A set that did more than could be expected at failure may have been helped by rounding.
GRACE = 0.5
UNLIKELY = 1e-4


def believed(at_failure: Reading, reps: float, usual_left: float) -> tuple[float, float]:
    """What the set says about strength over load.

    Any reserve from 0 up is possible, half of them below the usual one, with a long tail: a
    censored observation that says much when more was done than expected, little when less.

    Args:
        at_failure: what was expected of the set, had it gone to failure.
        reps: repetitions done.
        usual_left: median of repetitions left in such sets.

    Returns:
        Change of the mean of ``u``, and what is left of its variance, as a share.
    """
    sd = at_failure.spread**0.5
    strength = at_failure.u + sd * GRID
    possible = at_failure.kept * (1.0 + at_failure.a * (np.exp(strength) - 1.0))
    left = possible - reps
    chance = np.where(left > -GRACE, 1.0 / (1.0 + (left / usual_left) ** 2), UNLIKELY)
    weight = chance * np.exp(-0.5 * GRID**2)
    weight /= weight.sum()
    mean = float(weight @ GRID)
    share = float(weight @ (GRID - mean) ** 2)
    return mean * sd, min(share, 1.0)
