"""An exercise computed for one body: what works, how hard, at what length, and at what cost."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.exercises.joint_moments import JointRow, joint_moments
from setwright.mechanics.body import Build
from setwright.mechanics.effort import Effort, effort
from setwright.mechanics.growth import share_of
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.movement import Movement
from setwright.mechanics.spine import Spine, spinal
from setwright.mechanics.turns import Array
from setwright.mechanics.uncertainty import Spread, draw

FRAMES: Final = 20
# Below this share a part is not told from nothing.
SHOWN_FROM: Final = 0.1
# A part can end the set when its share is this large and its activation this near to the largest.
ENDS_FROM: Final = 0.3
ENDS_WITHIN: Final = 0.1
# Blocks whose largest loads differ by less end the set together.
ALIKE: Final = 1.1
# The draws leave out what the models themselves may have wrong (from memory).
MODEL_SPREAD: Final = 0.08
# 5 % and 95 % points of the normal distribution.
NINETY: Final = 1.645


@dataclass(frozen=True)
class PartRow:
    """One part in one set near its limit.

    Attributes:
        part: part id.
        share: 0 to 1, how much of a working set counts for it.
        low: lower end of the 90 % interval, or None when nothing was drawn.
        high: upper end of it.
        activation: 0 to 1 at the sticking point.
        loaded_ratio: fibre length over optimal length, where it is loaded.
        along: (F,) activation along the range.
        ratio: (F,) fibre length ratio along the range.
    """

    part: str
    share: float
    low: float | None
    high: float | None
    activation: float
    loaded_ratio: float
    along: Array
    ratio: Array


@dataclass(frozen=True)
class ForBody:
    """An exercise for one body.

    Attributes:
        movement: the movement that was computed.
        build: the body.
        effort: the set near its limit.
        parts: parts with a share worth showing, largest first.
        ends: parts that end the set.
        joints: joints that hold something, largest moment first.
        spine: the lower back along the range.
    """

    movement: Movement
    build: Build
    effort: Effort
    parts: tuple[PartRow, ...]
    ends: tuple[str, ...]
    joints: tuple[JointRow, ...]
    spine: Spine

    @property
    def hardest(self) -> float:
        """Where in the range the least load can be held, 0 stretched to 1 shortened."""
        return float(self.effort.asked.range_[self.effort.sticking])

    @property
    def load(self) -> float:
        """Load of the set, in ``unit``."""
        return self.effort.load

    @property
    def unit(self) -> str:
        """``kg``, ``N·m`` or ``bodyweights``."""
        return self.effort.asked.unit


def for_body(movement: Movement, build: Build, draws: int = 0) -> ForBody:
    """Compute a movement for a body.

    Args:
        movement: what is done.
        build: who does it.
        draws: how many bodies and stances the intervals are taken from; 0 for no intervals.

    Raises:
        PostureError, ValueError: for a posture no body can hold or the figures do not cover.
    """
    found = effort(movement, build, FRAMES)
    at = found.sticking
    if found.load <= 0:
        raise PostureError(
            "load",
            f"a body that is too much for its muscles at {100 * found.asked.range_[at]:.0f} % of "
            "the range, without any load",
            "a shorter range, more support, or a load that helps",
        )
    spread = draw(movement, build, draws) if draws else {}
    parts = [
        PartRow(
            part,
            work.share,
            *_interval(work.share, spread.get(part)),
            activation=float(work.activation[at]),
            loaded_ratio=work.loaded_ratio,
            along=work.activation,
            ratio=work.ratio,
        )
        for part, work in share_of(found).items()
        if work.share >= SHOWN_FROM
    ]
    parts.sort(key=lambda row: (-row.share, row.part))
    ends, joints = _ends(found, movement, parts), joint_moments(found, movement, build)
    return ForBody(movement, build, found, tuple(parts), ends, joints, spinal(found))


def _interval(share: float, spread: Spread | None) -> tuple[float | None, float | None]:
    """The 90 % interval: the spread of the draws, and what the models may have wrong."""
    if spread is None:
        return None, None
    give = NINETY * float(np.hypot(spread.share.std(), MODEL_SPREAD))
    return max(share - give, 0.0), min(share + give, 1.0)


def _ends(found: Effort, movement: Movement, parts: list[PartRow]) -> tuple[str, ...]:
    """Parts near their limit at the sticking point, of blocks that can hold little more."""
    at = found.sticking
    least = ALIKE * found.strongest[at]
    own = {
        part
        for name in movement.ends
        if name in found.blocks and found.blocks[name].strongest[at] <= least
        for part in found.blocks[name].parts
    }
    there = [row for row in parts if row.part in own and row.share >= ENDS_FROM]
    most = max((row.activation for row in there), default=0.0)
    return tuple(row.part for row in there if row.activation >= most - ENDS_WITHIN)
