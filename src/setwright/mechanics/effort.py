"""A set near its limit: the load, which muscles share it along the range, and which one ends it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import Block, Movement
from setwright.mechanics.muscles import Muscles
from setwright.mechanics.outer_moments import Asked
from setwright.mechanics.sharing import share
from setwright.mechanics.task import BlockTask, task_of
from setwright.mechanics.turns import Array

# Part of the largest load that a set near its limit uses.
NEAR_LIMIT: Final = 0.9
# A repetition gets through this much of its range by the speed it brings along, or ends short of
# it; the load of the set is what can be held over the rest.
PASSED: Final = 0.15
EXPONENT: Final = 3.0
# Part of what can be held that is asked where the load is too much; all of it has no slack.
ALL_BUT: Final = 0.97


@dataclass(frozen=True)
class BlockWork:
    """One block of the body at the load of the set.

    Attributes:
        muscles: its elements.
        factor: (F, M) what each element's largest force is multiplied by.
        activations: (F, M) 0 to 1.
        reserve: (F, K) moment that did not come from muscles, N·m.
        moment: (F, K) moment the muscles and reserves give, N·m.
        strongest: (F,) the largest load the block could hold, infinite when it is not asked.
    """

    muscles: Muscles
    factor: Array
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

        A part of several elements has the mean by largest force; of the two sides of the trunk or
        neck the one that works harder.
        """
        sides = [rows for (name, _), rows in self.muscles.rows.items() if name == part]
        rows = max(sides, key=lambda side: float(self.activations[:, side].sum()))
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

    @property
    def held(self) -> Array:
        """Load the muscles hold at each point (F,): speed carries the set past what they cannot."""
        held: Array = np.minimum(self.load, self.strongest)
        return held


def effort(movement: Movement, build: Build, frames: int = 20) -> Effort:
    """A set of a movement near its limit, for a body.

    Raises:
        PostureError, ValueError: for a posture no body can hold or the figures do not cover.
    """
    task = task_of(movement, build, frames)
    load = task.load_guess
    # What may be pushed sideways depends on the load, which depends on what may be pushed sideways.
    for _ in range(2 if movement.side_force else 1):
        held = {name: task.blocks[name].strongest(load) for name in task.ends}
        least = np.min([held[name] for name in task.ends], axis=0)
        load = float(set_load(least))
    held |= {name: one.strongest(load) for name, one in task.blocks.items() if name not in held}
    ended_by = min(task.ends, key=lambda name: float(held[name].min()))
    blocks = {name: _shared(block, load, held[name]) for name, block in task.blocks.items()}
    return Effort(task.asked, load, least, ended_by, blocks)


def set_load(strongest_: Array) -> Array:
    """Load of a set near its limit from the largest load at each point (..., F), (...)."""
    load: Array = NEAR_LIMIT * np.quantile(strongest_, PASSED, axis=-1)
    return load


def moment_to_give(own: Array, per_load: Array, load: Array, held: Array) -> Array:
    """Moment a block gives, (B, K); where a load is too much (B,), it does what it can."""
    within = np.minimum(load, ALL_BUT * held)[:, None]
    moment: Array = -own - within * per_load
    return moment


def _shared(task: BlockTask, load: float, held: Array) -> BlockWork:
    moment = moment_to_give(task.own, task.per_load, np.full(len(held), load), held)
    capacity, cost = task.capacity(load)
    shared = share(capacity, moment, task.reserve, EXPONENT, cost)
    count = len(task.crew.f0_n)
    return BlockWork(
        task.crew, task.factor, shared.activations[:, :count], shared.reserve, moment, held
    )
