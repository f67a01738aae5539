"""The muscles of one block of the body in its postures: arms, fibre lengths, what they can give."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from typing import Final

import numpy as np

from setwright.mechanics.areas import largest_forces
from setwright.mechanics.fibre import Fibres, fibre_state, fibres
from setwright.mechanics.movement import Block
from setwright.mechanics.paths import Paths, load
from setwright.mechanics.shoulder import lengths_and_arms
from setwright.mechanics.skeleton import Skeleton
from setwright.mechanics.statics import ARM, BLADE, HUMERUS, LEG, NECK, TRUNK
from setwright.mechanics.turns import Array

# Stature of the bodies the path figures were taken from (from memory).
MODEL_STATURE_M: Final[Mapping[Block, float]] = {
    "leg": 1.70, "trunk": 1.75, "neck": 1.75, "arm": 1.77,
}  # fmt: skip
COORDINATES: Final[Mapping[Block, tuple[str, ...]]] = {
    "leg": LEG, "trunk": TRUNK, "neck": NECK, "arm": ARM,
}  # fmt: skip


@dataclass(frozen=True)
class Muscles:
    """The M elements of a block in F postures over its K coordinates.

    Attributes:
        coordinates: names of the K coordinates.
        parts: (M,) part of each element, or None.
        elements: (M,) its name.
        f0_n: (M,) largest force, N.
        l0_m: (M,) optimal fibre length, m.
        arms: (F, M, K) moment arms, m; positive turns the coordinate up.
        ratio: (F, M) fibre length over optimal length.
        force: (F, M) share of the largest force that full activation brings.
        passive: (F, M) share of the largest force that stretch alone brings.
    """

    coordinates: tuple[str, ...]
    parts: tuple[str | None, ...]
    elements: tuple[str, ...]
    f0_n: Array
    l0_m: Array
    arms: Array
    ratio: Array
    force: Array
    passive: Array

    @property
    def capacity(self) -> Array:
        """Moment of each element at full activation, N·m (F, K, M)."""
        moment: Array = np.swapaxes(self.arms * (self.f0_n * self.force)[:, :, None], 1, 2)
        return moment

    @property
    def rows(self) -> Mapping[tuple[str, str], list[int]]:
        """Rows of the elements of every part; of trunk and neck, right and left apart."""
        found: dict[tuple[str, str], list[int]] = {}
        for k, (part, element) in enumerate(zip(self.parts, self.elements, strict=True)):
            if part is not None:
                side = "left" if element.endswith("_l") else "right"
                found.setdefault((part, side), []).append(k)
        return found

    def stretch_moment(self, factor: Array) -> Array:
        """Moment of the stretched fibres alone, N·m (F, K), forces times a factor (F, M)."""
        moment: Array = np.einsum("fmk,fm->fk", self.arms, self.f0_n * self.passive * factor)
        return moment


def muscles(block: Block, angles: Mapping[str, Array], body: Skeleton, stature_m: float) -> Muscles:
    """The muscles of a block.

    Raises:
        ValueError: when a posture lies outside what the figures cover, naming the joint.
    """
    size = stature_m / MODEL_STATURE_M[block]
    found = _arm(angles, body) if block == "arm" else _simple(block, angles)
    return replace(found, arms=found.arms * size)


@cache
def _figures(name: str) -> tuple[Paths, Fibres]:
    paths = load(name)
    return paths, fibres(paths)


def _simple(block: str, angles: Mapping[str, Array]) -> Muscles:
    paths, fibre = _figures(block)
    lengths, arms = paths.evaluate(np.stack([angles[c] for c in paths.coordinates], axis=-1))
    return _muscles(paths, lengths, arms, fibre)


def _muscles(paths: Paths, lengths: Array, arms: Array, fibre: Fibres) -> Muscles:
    state = fibre_state(lengths, fibre)
    return Muscles(
        paths.coordinates,
        tuple(e.part for e in paths.elements),
        tuple(e.element for e in paths.elements),
        np.array([e.f0_n for e in paths.elements]),
        fibre.l0_m,
        arms,
        state.ratio,
        state.force,
        state.passive,
    )


def _arm(angles: Mapping[str, Array], body: Skeleton) -> Muscles:
    """Shoulder and lower arm; a muscle that crosses both has one path along both."""
    upper, fibre_upper = _figures("shoulder")
    lengths, blade, humerus = lengths_and_arms(body.blade, body.humerus)
    lower, fibre_lower = _figures("arm")
    pose = lower.clip(np.stack([angles[c] for c in lower.coordinates], axis=-1))
    below, below_arms = lower.evaluate(pose)
    places = {c: k for k, c in enumerate(ARM)}
    shoulder_arms = np.zeros((*lengths.shape, len(ARM)))
    shoulder_arms[:, :, : len(BLADE)] = blade
    shoulder_arms[:, :, len(BLADE) : len(BLADE) + len(HUMERUS)] = humerus
    columns = [places[c] for c in lower.coordinates]
    both: dict[int, int] = {}
    lower_parts = [e.part for e in lower.elements]
    for row, element in enumerate(upper.elements):
        if element.part in lower_parts and element.part is not None:
            both[row] = lower_parts.index(element.part)
    for row, other in both.items():
        lengths[:, row] += below[:, other]
        shoulder_arms[:, row, columns] += below_arms[:, other]
    above = _muscles(upper, lengths, shoulder_arms, fibre_upper)
    alone = [k for k in range(len(lower.elements)) if k not in both.values()]
    lower_arms = np.zeros((len(pose), len(lower.elements), len(ARM)))
    lower_arms[:, :, columns] = below_arms
    rest = _muscles(lower, below, lower_arms, fibre_lower)
    whole = joined(ARM, (above, _picked(rest, alone)))
    return replace(whole, f0_n=largest_forces(whole.parts, whole.f0_n, whole.l0_m))


def _picked(of: Muscles, rows: Sequence[int]) -> Muscles:
    return Muscles(
        of.coordinates,
        tuple(of.parts[k] for k in rows),
        tuple(of.elements[k] for k in rows),
        of.f0_n[rows],
        of.l0_m[rows],
        of.arms[:, rows],
        of.ratio[:, rows],
        of.force[:, rows],
        of.passive[:, rows],
    )


def joined(coordinates: tuple[str, ...], several: Sequence[Muscles]) -> Muscles:
    """Several groups of muscles over the same coordinates as one."""
    return Muscles(
        coordinates,
        tuple(part for one in several for part in one.parts),
        tuple(element for one in several for element in one.elements),
        np.concatenate([one.f0_n for one in several]),
        np.concatenate([one.l0_m for one in several]),
        np.concatenate([one.arms for one in several], axis=1),
        np.concatenate([one.ratio for one in several], axis=1),
        np.concatenate([one.force for one in several], axis=1),
        np.concatenate([one.passive for one in several], axis=1),
    )
