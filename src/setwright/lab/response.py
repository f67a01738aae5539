"""What a set does to strength, from published effects of effort, load and volume.

Nothing here knows who wrote the set.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

FULL_LOAD, NO_LOAD = 0.75, 0.25
"""Fractions of 1RM: a set at 50 % is worth half of one at 75 %, as in
load-low-25-35-vs-8-12-reps-trained-2015 (squat 1RM 8.8 against 19.6 %)."""

SIZE_WEIGHT = 0.2

HALF_SETS = 1.5
"""Weekly sets, indirect ones in part, that give half of what sets can give: strength saturates
(volume-trial-1-3-5-sets-trained-2019, sets-per-week-strength-meta-2017)."""

REFERENCE_SETS = 6.0


def load_worth(fraction: float) -> float:
    """Worth of a set by its load over 1RM, 0 to 1."""
    return min(max((fraction - NO_LOAD) / (FULL_LOAD - NO_LOAD), 0.0), 1.0)


def effort_worth(left: float) -> float:
    """Worth of a set by the repetitions really left.

    A fifth of it follows muscle size, which falls from failure on (rir-meta-regression-2024,
    failure-thickness-women-curl-2017); the rest does not depend on effort over the studied range
    (failure-vs-nonfailure-meta-2022: strength, not failure at least as good) and falls only
    beyond it.
    """
    reserve = max(left, 0.0)
    size = 1.0 / (1.0 + (reserve / 6.0) ** 2)
    skill = 1.0 / (1.0 + (max(reserve - 4.0, 0.0) / 4.0) ** 2)
    return SIZE_WEIGHT * size + (1.0 - SIZE_WEIGHT) * skill


def dose_worth(weekly_sets: Floats) -> Floats:
    """Share of the full gain that so many weekly sets give; 1 at the reference."""
    full = REFERENCE_SETS / (REFERENCE_SETS + HALF_SETS)
    return weekly_sets / (weekly_sets + HALF_SETS) / full
