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
    "hip internal rotation": 40.0,
    "ankle inversion": 5.0,
    "trunk side bend": 15.0,
    "trunk rotation": 15.0,
    "neck side bend": 3.0,
    "neck rotation": 3.0,
    "scapula protraction": 30.0,
    "scapula elevation": 30.0,
    "scapula upward rotation": 30.0,
    "humerus x": 8.0,
    "humerus y": 8.0,
    "humerus z": 8.0,
    "wrist flexion": 4.0,
    "finger flexion": 2.0,
}
# A forearm turned fully either way is stopped by the joint itself.
STOPPED_DEG: Final = 70.0
STOPPED_RESERVE: Final = 20.0
GRIP_RESERVE: Final = {"bar": 12.0, "handle": 4.0, "none": 0.0}
# Part of what can be held that is asked where the load is too much; all of it has no slack.
ALL_BUT: Final = 0.97
# Cost of a sideways push beside a muscle's: it is nearly free.
FREE: Final = 1e-3


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


@dataclass(frozen=True)
class BlockTask:
    """What one block has to do, before anything is shared.

    Attributes:
        crew: its muscles.
        factor: (F, M) what each muscle's largest force is multiplied by.
        moments: (F, K, M) what each muscle gives at full activation, N·m.
        own: (F, K) outer moment of the body's weight, stretched fibres taken off, N·m.
        per_load: (F, K) outer moment per unit of load, N·m.
        reserve: (F, K) largest moment that need not come from muscles, N·m.
        push: (F, K, P) moments of the largest pushes of foot or hand per newton carried, N·m.
        carried: (F, P) newtons each push may use, of the body's own weight and per unit of load.
    """

    crew: Muscles
    factor: Array
    moments: Array
    own: Array
    per_load: Array
    reserve: Array
    push: Array
    carried: tuple[Array, Array]

    def capacity(self, load: float) -> tuple[Array, Array]:
        """Moments (F, K, M + 2 P) of the muscles, then of the pushes; cost of each."""
        # A newton of muscle costs the same wherever it is, so heads that pull alike work alike.
        cost = self.crew.f0_n / self.crew.f0_n.mean()
        own, per_load = self.carried
        push = (own + load * per_load)[:, None, :] * self.push
        moments = np.concatenate((self.moments, push, -push), axis=2)
        return moments, np.concatenate((cost, np.full(2 * push.shape[2], FREE)))

    def strongest(self, load: float) -> Array:
        """The largest load at each point of the range, pushing sideways as ``load`` allows."""
        return strongest(self.capacity(load)[0], -self.own, -self.per_load, self.reserve).load


@dataclass(frozen=True)
class Task:
    """What a movement asks of the blocks of a body.

    Attributes:
        asked: the outer moments.
        ends: blocks that end the set.
        blocks: every block that works or holds.
        load_guess: load to start from, kg.
    """

    asked: Asked
    ends: tuple[Block, ...]
    blocks: Mapping[Block, BlockTask]
    load_guess: float


def task_of(
    movement: Movement,
    build: Build,
    frames: int = 20,
    stance: Mapping[str, float] | None = None,
) -> Task:
    """What a movement asks of a body, in a stance that differs from the declared by some degrees.

    Raises:
        PostureError, ValueError: for a posture no body can hold or the figures do not cover.
    """
    wanted = asked(movement, build, frames, stance)
    names = [*movement.ends, *(b for b in movement.holds if b not in movement.ends)]
    if trunk_held(movement):
        names = [name for name in names if name != "trunk"]
    blocks = {name: _task(name, movement, wanted, build) for name in names}
    return Task(wanted, movement.ends, blocks, movement.load_guess * build.mass_kg)


def _task(name: Block, movement: Movement, wanted: Asked, build: Build) -> BlockTask:
    crew = muscles(name, wanted.angles, wanted.body, build.stature_m)
    factor = strength(name, crew.parts, wanted.angles, build)
    free = [k for k, c in enumerate(COORDINATES[name]) if c not in _taken_up(movement)]
    mask = np.zeros(len(COORDINATES[name]))
    mask[free] = 1.0
    pushes = wanted.pushes.get(name, ())
    push = np.zeros((len(wanted.range_), len(mask), len(pushes)))
    carried = np.zeros((2, len(wanted.range_), len(pushes)))
    for k, one in enumerate(pushes):
        push[:, :, k] = mask * _table(one.moments, name)
        carried[:, :, k] = one.own, one.load
    return BlockTask(
        crew,
        factor,
        crew.capacity * factor[:, None, :] * mask[:, None],
        mask * (_table(wanted.own, name) + crew.stretch_moment(factor)),
        mask * _table(wanted.load, name),
        reserve_of(name, movement, wanted),
        push,
        (carried[0], carried[1]),
    )


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


def reserve_of(block: Block, movement: Movement, wanted: Asked) -> Array:
    """Largest reserve on each coordinate of a block, N·m (F, K)."""
    table = np.tile(
        [RESERVE.get(name, 0.0) for name in COORDINATES[block]], (len(wanted.range_), 1)
    )
    if block == "arm":
        turned = wanted.angles["forearm pronation"]
        column = COORDINATES[block].index("forearm pronation")
        stopped = np.abs(turned) > np.radians(STOPPED_DEG)
        table[:, column] = np.where(stopped, STOPPED_RESERVE, GRIP_RESERVE[movement.grip])
    return table


def _taken_up(movement: Movement) -> frozenset[str]:
    """Coordinates whose moment a seat or pad takes up."""
    names: list[str] = list(movement.carried)
    if movement.arms_hang is not None and "arm" not in movement.ends:
        # The legs keep a hanging bar from swinging; only grip and shoulder blades hold it.
        names += ["arm elevation", "elbow flexion", "wrist flexion"]
    taken = (HUMERUS if name.startswith("arm ") else (name,) for name in names)
    return frozenset(name for group in taken for name in group)


def _table(by_name: Mapping[str, Array], block: Block) -> Array:
    return np.stack([by_name[name] for name in COORDINATES[block]], axis=-1)
