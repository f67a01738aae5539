"""What a movement asks of each block of the body, before anything is shared."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import Block, Movement
from setwright.mechanics.muscles import COORDINATES, Muscles, muscles
from setwright.mechanics.outer_moments import Asked, asked, trunk_held
from setwright.mechanics.statics import HUMERUS
from setwright.mechanics.strongest import strongest
from setwright.mechanics.trained import strength
from setwright.mechanics.turns import Array

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
# Cost of a sideways push beside a muscle's: it is nearly free.
FREE: Final = 1e-3


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
