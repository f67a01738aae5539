"""A set near its limit: the load, which muscles share it along the range, and which one ends it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import Block, Movement
from setwright.mechanics.muscles import COORDINATES, Muscles, muscles
from setwright.mechanics.outer_moments import Asked, asked, trunk_held
from setwright.mechanics.sharing import share
from setwright.mechanics.statics import HUMERUS
from setwright.mechanics.strongest import strongest
from setwright.mechanics.trained import strength
from setwright.mechanics.turns import Array

# Part of the largest load that a set near its limit uses.
NEAR_LIMIT: Final = 0.9
# A repetition gets through this much of its range by the speed it brings along, or ends short of
# it; the load of the set is what can be held over the rest.
PASSED: Final = 0.15
EXPONENT: Final = 3.0
# Moments, N·m, that need not come from the modelled muscles: joint and passive structures, and
# what the models' frontal and turning planes are not to be trusted with.
RESERVE: Final[Mapping[str, float]] = {
    "hip abduction": 40.0,
    "hip internal rotation": 100.0,
    "ankle inversion": 5.0,
    "trunk side bend": 15.0,
    "trunk rotation": 15.0,
    "neck side bend": 3.0,
    "neck rotation": 3.0,
    "scapula protraction": 12.0,
    "scapula elevation": 12.0,
    "scapula upward rotation": 12.0,
    "humerus x": 3.0,
    "humerus y": 3.0,
    "humerus z": 3.0,
    "wrist flexion": 4.0,
    "finger flexion": 2.0,
}
# A palm turned fully up is stopped by the joint itself.
PALM_UP_DEG: Final = 20.0
PALM_UP_RESERVE: Final = 20.0
GRIP_RESERVE: Final = {"bar": 12.0, "handle": 4.0, "none": 0.0}
# Part of what can be held that is asked where the load is too much; all of it has no slack.
ALL_BUT: Final = 0.995
# Cost of a sideways push beside a muscle's: it is nearly free.
FREE: Final = 1e-3
# What holding blocks fall back on when the load is more than they could move by themselves.
HOLDING_RESERVE: Final = 4.0


@dataclass(frozen=True)
class BlockWork:
    """One block of the body at the load of the set.

    Attributes:
        muscles: its elements.
        activations: (F, M) 0 to 1.
        reserve: (F, K) moment that did not come from muscles, N·m.
        moment: (F, K) moment the muscles and reserves give, N·m.
        strongest: (F,) the largest load the block could hold, infinite when it is not asked.
    """

    muscles: Muscles
    activations: Array
    reserve: Array
    moment: Array
    strongest: Array

    @cached_property
    def parts(self) -> tuple[str, ...]:
        """Parts of the atlas in this block."""
        return tuple(dict.fromkeys(part for part in self.muscles.parts if part is not None))

    def of(self, part: str) -> tuple[Array, Array]:
        """Activation and fibre length ratio of a part along the range, (F,) each.

        A part of several elements has the mean by largest force.
        """
        rows = [k for k, name in enumerate(self.muscles.parts) if name == part]
        weight = self.muscles.f0_n[rows]
        activation = self.activations[:, rows] @ weight / weight.sum()
        at = self.activations[:, rows] * weight + 1e-9 * weight
        ratio = (at * self.muscles.ratio[:, rows]).sum(axis=1) / at.sum(axis=1)
        return activation, ratio


@dataclass(frozen=True)
class Effort:
    """A set near its limit.

    Attributes:
        asked: the outer moments.
        load: load of the set, in ``asked.unit``.
        strongest: (F,) largest load at each point of the range.
        ended_by: block that ends the set.
        blocks: every block that works or holds.
    """

    asked: Asked
    load: float
    strongest: Array
    ended_by: Block
    blocks: Mapping[Block, BlockWork]

    @property
    def sticking(self) -> int:
        """Point of the range where the least load can be held."""
        return int(self.strongest.argmin())


def effort(movement: Movement, build: Build, frames: int = 20) -> Effort:
    """A set of a movement near its limit, for a body.

    Raises:
        PostureError, ValueError: for a posture no body can hold or the figures do not cover.
    """
    wanted = asked(movement, build, frames)
    names = [*movement.ends, *(b for b in movement.holds if b not in movement.ends)]
    if trunk_held(movement):
        names = [name for name in names if name != "trunk"]
    crew: dict[Block, Muscles] = {
        name: muscles(name, wanted.angles, wanted.body, build.stature_m) for name in names
    }
    load = movement.load_guess * build.mass_kg
    held: dict[Block, Array] = {}
    # What may be pushed sideways depends on the load, which depends on what may be pushed sideways.
    for _ in range(2 if movement.side_force else 1):
        held = {name: _strongest(name, movement, wanted, crew[name], load) for name in names}
        least = np.array([held[name] for name in movement.ends]).min(axis=0)
        load = NEAR_LIMIT * float(np.quantile(least, PASSED))
    ended_by = min(movement.ends, key=lambda name: float(held[name].min()))
    blocks = {name: _shared(name, movement, wanted, crew[name], load, held[name]) for name in names}
    return Effort(wanted, load, least, ended_by, blocks)


def _strongest(name: Block, movement: Movement, wanted: Asked, crew: Muscles, load: float) -> Array:
    own = _own(name, movement, wanted, crew)
    per_load = _asked_of(name, movement, wanted.load)
    capacity, _ = _capacity(name, movement, wanted, crew, load)
    return strongest(capacity, -own, -per_load, reserve_of(name, movement, wanted)).load


def _shared(
    name: Block, movement: Movement, wanted: Asked, crew: Muscles, load: float, held: Array
) -> BlockWork:
    # Where the load is more than the block can hold, it does what it can.
    within = np.minimum(load, ALL_BUT * held)[:, None]
    moment = -_own(name, movement, wanted, crew) - within * _asked_of(name, movement, wanted.load)
    reserve = reserve_of(name, movement, wanted) * (
        1.0 if name in movement.ends else HOLDING_RESERVE
    )
    capacity, weight = _capacity(name, movement, wanted, crew, load)
    shared = share(capacity, moment, reserve, EXPONENT, weight)
    count = len(crew.f0_n)
    return BlockWork(crew, shared.activations[:, :count], shared.reserve, moment, held)


def _capacity(
    name: Block, movement: Movement, wanted: Asked, crew: Muscles, load: float
) -> tuple[Array, Array]:
    """Moments of the muscles, then of a sideways push in and out; and the cost of each."""
    capacity = crew.capacity * strength(name, crew.parts, wanted.angles)[:, None, :]
    capacity[:, _carried(name, movement)] = 0.0
    cost = np.ones(len(crew.f0_n))
    if movement.side_force and name in wanted.sideways:
        push = wanted.sideways[name]
        size = movement.side_force * np.abs(push.own + load * push.load)
        moment = size[:, None] * np.stack([push.moments[c] for c in COORDINATES[name]], axis=-1)
        both = np.stack((moment, -moment), axis=-1)
        capacity = np.concatenate((capacity, both), axis=2)
        cost = np.concatenate((cost, [FREE, FREE]))
    return capacity, cost


def reserve_of(block: Block, movement: Movement, wanted: Asked) -> Array:
    """Largest reserve on each coordinate of a block, N·m (F, K)."""
    table = np.tile(
        [RESERVE.get(name, 0.0) for name in COORDINATES[block]], (len(wanted.range_), 1)
    )
    if block == "arm":
        turned = wanted.angles["forearm pronation"]
        column = COORDINATES[block].index("forearm pronation")
        stopped = turned < np.radians(PALM_UP_DEG)
        table[:, column] = np.where(stopped, PALM_UP_RESERVE, GRIP_RESERVE[movement.grip])
    return table


def _carried(block: Block, movement: Movement) -> list[int]:
    """Coordinates of a block that a seat or pad carries."""
    taken = {HUMERUS if name.startswith("arm ") else (name,) for name in movement.carried}
    names = {name for group in taken for name in group}
    return [k for k, name in enumerate(COORDINATES[block]) if name in names]


def _own(block: Block, movement: Movement, wanted: Asked, crew: Muscles) -> Array:
    """Moment of the body's own weight less what stretched fibres carry, N·m (F, K)."""
    by_stretch = crew.stretch_moment(strength(block, crew.parts, wanted.angles))
    by_stretch[:, _carried(block, movement)] = 0.0
    return _asked_of(block, movement, wanted.own) + by_stretch


def _asked_of(block: Block, movement: Movement, by_name: Mapping[str, Array]) -> Array:
    table = np.stack([by_name[name] for name in COORDINATES[block]], axis=-1)
    table[:, _carried(block, movement)] = 0.0
    return table
