"""How far the shares of an exercise may be off: the same set with other muscles and another stance.

Each draw has its own moment arms, muscle areas, reserves and cost of sharing; a few stances stand
for how differently people place themselves.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.effort import moment_to_give, set_load
from setwright.mechanics.growth import loaded_ratio, points_weight, worth_of_motion
from setwright.mechanics.movement import Block, Movement
from setwright.mechanics.sharing import share
from setwright.mechanics.strongest import strongest
from setwright.mechanics.task import BlockTask, Task, task_of
from setwright.mechanics.turns import Array

# Standard deviations of the logarithm: moment arms against open models of each other, areas between
# people (both from memory), reserves without a basis but common practice.
ARMS_SD: Final = 0.10
AREAS_SD: Final = 0.20
RESERVES_SD: Final = 0.5
# The power of the cost of sharing: published work uses 2 to 3, and more (from memory).
EXPONENTS: Final = (2.0, 4.0)
# How differently people stand and hold, degrees (common practice), one row a stance.
STANCES: Final[tuple[Mapping[str, float], ...]] = (
    {},
    {"hip abduction": 4.0, "hip internal rotation": -5.0, "arm plane": 6.0, "arm rotation": 6.0},
    {"hip abduction": -4.0, "hip internal rotation": 5.0, "arm plane": -6.0, "arm rotation": -6.0},
    {"hip abduction": 2.0, "hip internal rotation": 4.0, "arm plane": 5.0, "arm rotation": -8.0},
    {"hip abduction": -2.0, "hip internal rotation": -4.0, "arm plane": -5.0, "arm rotation": 8.0},
)


@dataclass(frozen=True)
class Spread:
    """Shares and lengths of one part over the draws.

    Attributes:
        share: (D,) share of each draw.
        loaded_ratio: (D,) fibre length ratio where it is loaded.
    """

    share: Array
    loaded_ratio: Array


def draw(
    movement: Movement, build: Build, count: int = 200, seed: int = 1, frames: int = 8
) -> Mapping[str, Spread]:
    """Shares and lengths of every part in ``count`` draws (a multiple of the stances is best).

    Raises:
        PostureError, ValueError: as ``effort`` does, when not even the declared stance can be held.
    """
    generator = np.random.default_rng(seed)
    shares: dict[str, list[Array]] = {}
    ratios: dict[str, list[Array]] = {}
    each = -(-count // len(STANCES))
    for stance in STANCES:
        try:
            tasks = task_of(movement, build, frames, stance)
        except ValueError:
            if not stance:
                raise
            continue  # nobody can stand like that
        for part, share_, ratio in _draws(tasks, each, generator):
            shares.setdefault(part, []).append(share_)
            ratios.setdefault(part, []).append(ratio)
    return {
        part: Spread(np.concatenate(shares[part]), np.concatenate(ratios[part])) for part in shares
    }


def _draws(
    task: Task, count: int, generator: np.random.Generator
) -> Iterator[tuple[str, Array, Array]]:
    """One stance: (part, shares (D,), ratios (D,)) of every part."""
    frames = len(task.asked.range_)
    exponent = np.repeat(generator.uniform(*EXPONENTS, count), frames)
    drawn = {
        name: _drawn(block, task.load_guess, count, generator)
        for name, block in task.blocks.items()
    }
    held = {
        name: strongest(
            one.capacity,
            -np.tile(task.blocks[name].own, (count, 1)),
            -np.tile(task.blocks[name].per_load, (count, 1)),
            one.reserve,
        ).load
        for name, one in drawn.items()
    }
    least = np.min([held[name] for name in task.ends], axis=0).reshape(count, frames)
    load = np.repeat(set_load(least), frames)
    activations = {}
    for name, one in drawn.items():
        block = task.blocks[name]
        own, per_load = np.tile(block.own, (count, 1)), np.tile(block.per_load, (count, 1))
        shared = share(
            one.capacity,
            moment_to_give(own, per_load, load, held[name]),
            one.reserve,
            exponent,
            block.capacity(task.load_guess)[1],
        )
        muscles = one.areas.shape[1]
        activations[name] = shared.activations[:, :muscles].reshape(count, frames, muscles)
    yield from _by_part(task, activations, drawn)


@dataclass(frozen=True)
class _Drawn:
    """One block in D draws of F postures: capacity (D F, K, M), reserve (D F, K), areas (D, M)."""

    capacity: Array
    reserve: Array
    areas: Array


def _drawn(block: BlockTask, load: float, count: int, generator: np.random.Generator) -> _Drawn:
    base = block.capacity(load)[0]
    frames, equations, columns = base.shape
    muscles = len(block.crew.f0_n)
    arms = np.ones((count, 1, equations, columns))
    areas = np.ones((count, 1, 1, columns))
    arms[..., :muscles] = np.exp(
        ARMS_SD * generator.standard_normal((count, 1, equations, muscles))
    )
    areas[..., :muscles] = np.exp(AREAS_SD * generator.standard_normal((count, 1, 1, muscles)))
    reserves = np.exp(RESERVES_SD * generator.standard_normal((count, 1, 1)))
    return _Drawn(
        (base * arms * areas).reshape(count * frames, equations, columns),
        (block.reserve * reserves).reshape(count * frames, equations),
        areas[:, 0, 0, :muscles],
    )


def _by_part(
    task: Task, activations: Mapping[Block, Array], drawn: Mapping[Block, _Drawn]
) -> Iterator[tuple[str, Array, Array]]:
    found: dict[str, tuple[Array, Array]] = {}
    ending: list[Array] = []
    for name, block in task.blocks.items():
        for (part, _), rows in block.crew.rows.items():
            force = block.crew.f0_n[rows] * drawn[name].areas[:, rows]
            active = np.einsum("dfm,dm->df", activations[name][:, :, rows], force)
            active = active / force.sum(axis=1)[:, None]
            lengths = np.average(block.crew.ratio[:, rows], axis=1, weights=block.crew.f0_n[rows])
            if name in task.ends:
                ending.append(active)
            if part not in found or found[part][0].mean() < active.mean():
                found[part] = (active, lengths)
    largest = np.max(ending, axis=0)
    weight = points_weight(largest)
    hardest = np.max([(weight * active).sum(axis=1) for active in ending], axis=0)
    for part, (active, lengths) in found.items():
        relative = np.minimum((weight * active).sum(axis=1) / hardest, 1.0)
        share_ = relative * worth_of_motion(lengths)
        yield part, share_, loaded_ratio(active, lengths, weight)
