"""What a set does for each part: how hard it works, how long it is then, and how far that grows it.

A part grows in proportion to how hard it works beside the hardest-working part, and 1.2 per cent
more for every per cent that its fibres are longer than their best length while they are loaded, or
1.2 per cent less for every per cent that they are shorter. Both are fitted to and held against
trials in docs/growth.md.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.effort import Effort
from setwright.mechanics.turns import Array

# Growth for each optimal fibre length beyond the best, fitted to trials by scripts/fit_growth.py;
# its standard deviation over resampled trials.
LENGTH_WEIGHT: Final = 1.2
LENGTH_WEIGHT_SD: Final = 0.35

# A muscle that only holds counts for this much of one that moves (common practice: a stabiliser
# counts for about half a set); it moves when its fibres change by a tenth of their best length.
HELD_WORTH: Final = 0.6
MOVES_FROM: Final = 0.1


@dataclass(frozen=True)
class PartWork:
    """The work of one part in a set near its limit.

    Attributes:
        share: mean activation by weight, relative to the hardest-working part, 0 to 1.
        loaded_ratio: fibre length over optimal length, mean by load.
        mean_activation: mean activation by weight, 0 to 1.
        activation: (F,) activation along the range.
        ratio: (F,) fibre length over optimal length along the range.
        weight: (F,) what each point of the range counts for; sums to 1.
    """

    share: float
    loaded_ratio: float
    mean_activation: float
    activation: Array
    ratio: Array
    weight: Array

    @property
    def growth(self) -> float:
        """Growth figure of the part."""
        return growth_index(self.share, self.loaded_ratio)


def growth_index(share: float, loaded_ratio: float) -> float:
    """Growth that a set gives a part; 1 for the hardest-working one at its best length."""
    return max(share * (1.0 + LENGTH_WEIGHT * (loaded_ratio - 1.0)), 0.0)


def points_weight(largest: Array) -> Array:
    """What each point of the range counts for, from the largest activation there; (..., F)."""
    weight: Array = largest**2 / (largest**2).sum(axis=-1, keepdims=True)
    return weight


def worth_of_motion(ratio: Array) -> Array:
    """What work counts for by how far the fibres move, fibre ratios (..., F) to (...)."""
    moves = np.minimum(np.ptp(ratio, axis=-1) / MOVES_FROM, 1.0)
    worth: Array = HELD_WORTH + (1.0 - HELD_WORTH) * moves
    return worth


def loaded_ratio(activation: Array, ratio: Array, weight: Array) -> Array:
    """Fibre length over optimal length, mean by load over the range; (..., F) to (...)."""
    load = weight * (activation + 1e-9)
    mean: Array = (load * ratio).sum(axis=-1) / load.sum(axis=-1)
    return mean


def share_of(effort: Effort) -> Mapping[str, PartWork]:
    """The work of every part in a set near its limit.

    A point of the range counts by the square of the largest activation there, among the parts that
    end the set. A part that lies in two blocks has the one in which it works harder.
    """
    ending = effort.blocks[effort.ended_by]
    largest = np.max([ending.of(part)[0] for part in ending.parts], axis=0)
    weight = points_weight(largest)
    hardest = max(float(weight @ ending.of(part)[0]) for part in ending.parts)
    found: dict[str, PartWork] = {}
    for block in effort.blocks.values():
        for part in block.parts:
            activation, ratio = block.of(part)
            mean = float(weight @ activation)
            share = min(mean / hardest, 1.0) * float(worth_of_motion(ratio))
            work = PartWork(
                share,
                float(loaded_ratio(activation, ratio, weight)),
                mean,
                activation,
                ratio,
                weight,
            )
            if part not in found or found[part].mean_activation < mean:
                found[part] = work
    return found
