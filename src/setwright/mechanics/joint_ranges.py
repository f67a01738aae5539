"""How far each joint may go for its muscles to be known: the ranges of the path figures."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

import numpy as np

from setwright.mechanics.movement import ANGLES, Block
from setwright.mechanics.paths import load

# Path figures of each block; the arm's place has no range by angle and is refused as a whole.
FIGURES: Final[Mapping[Block, tuple[str, ...]]] = {
    "leg": ("leg",),
    "trunk": ("trunk",),
    "arm": ("shoulder", "arm"),
    "neck": ("neck",),
}


def joint_ranges(blocks: Iterable[Block]) -> Mapping[str, tuple[float, float]]:
    """By angle of a movement, the lowest and highest degrees its figures cover."""
    found = {}
    for block in blocks:
        for name in FIGURES[block]:
            paths = load(name)
            ends = zip(np.degrees(paths.low_rad), np.degrees(paths.high_rad), strict=True)
            for coordinate, (low, high) in zip(paths.coordinates, ends, strict=True):
                if coordinate in ANGLES:
                    found[coordinate] = (round(float(low), 6), round(float(high), 6))
    return found
