"""Muscle-tendon lengths and moment arms as polynomials of the joint angles.

The figures lie in ``paths/*.json`` (format ``paths/1``, see ``path_figures``). The length of an
element is a sum of powers of u = (q - mid) / half, where mid and half come from each coordinate's
range; a moment arm is minus the derivative of that same sum, so that virtual work holds by
construction.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from importlib.resources import files

import numpy as np
from numpy.typing import NDArray

from setwright.mechanics.impossible import PostureError
from setwright.mechanics.path_figures import Element, Origin, PathsFile

Floats = NDArray[np.float64]

TOLERANCE_RAD = 1e-9
BLOCK = 128  # poses worked on at once, so that the powers stay in the processor's cache


@dataclass(frozen=True)
class _Batch:
    """Elements that depend on the same coordinates, over one list of terms.

    Attributes:
        members: positions of the elements.
        coordinates: positions of their coordinates.
        powers: (K, c) powers of the terms.
        weights: ((1 + c) * members, K): lengths first, then the arms coordinate by coordinate.
    """

    members: NDArray[np.intp]
    coordinates: tuple[int, ...]
    powers: NDArray[np.intp]
    weights: Floats


@dataclass(frozen=True)
class Paths:
    """Lengths and arms of the elements of one file, at any pose inside its ranges.

    Attributes:
        origin: where the figures come from.
        coordinates: the C joint coordinates, in the order of every pose.
        elements: the M elements, in the order of every result.
        low_rad: (C,) lower ends of the ranges.
        high_rad: (C,) upper ends.
    """

    origin: Origin
    coordinates: tuple[str, ...]
    elements: tuple[Element, ...]
    low_rad: Floats
    high_rad: Floats
    batches: tuple[_Batch, ...]

    def evaluate(self, q: Floats) -> tuple[Floats, Floats]:
        """Lengths and moment arms at N poses.

        Args:
            q: (N, C) joint angles, rad, in the order of ``coordinates``.

        Returns:
            Lengths (N, M) and arms (N, M, C), m. A positive arm turns its coordinate up.

        Raises:
            ValueError: for another shape.
            PostureError: for an angle outside the range, naming the coordinate.
        """
        q = np.asarray(q, dtype=float)
        if q.ndim != 2 or q.shape[1] != len(self.coordinates):
            raise ValueError(f"poses of shape (N, {len(self.coordinates)}) wanted, not {q.shape}")
        self._refuse_outside(q)
        middle, half = (self.high_rad + self.low_rad) / 2, (self.high_rad - self.low_rad) / 2
        u = ((q - middle) / half).T
        lengths = np.empty((len(q), len(self.elements)))
        arms = np.zeros((len(q), len(self.elements), len(self.coordinates)))
        for start in range(0, len(q), BLOCK):
            here = slice(start, start + BLOCK)
            self._fill(u[:, here], lengths[here], arms[here])
        return lengths, arms

    def clip(self, q: Floats) -> Floats:
        """Poses moved to the nearest ones inside the ranges, rad."""
        return np.clip(q, self.low_rad, self.high_rad)

    def _refuse_outside(self, q: Floats) -> None:
        # Written so that an angle that is not a number is refused as well.
        inside = (q >= self.low_rad - TOLERANCE_RAD) & (q <= self.high_rad + TOLERANCE_RAD)
        if inside.all():
            return
        pose, c = (int(i) for i in np.argwhere(~inside)[0])
        low, high, angle = np.degrees([self.low_rad[c], self.high_rad[c], q[pose, c]])
        raise PostureError(
            self.coordinates[c], f"{angle:.1f} degrees", f"{low:.0f} to {high:.0f} degrees"
        )

    def _fill(self, u: Floats, lengths: Floats, arms: Floats) -> None:
        highest = max(int(batch.powers.max()) for batch in self.batches)
        tables = np.ones((len(u), highest + 1, u.shape[1]))
        for power in range(1, highest + 1):
            np.multiply(tables[:, power - 1], u, out=tables[:, power])
        for batch in self.batches:
            terms = tables[batch.coordinates[0]][batch.powers[:, 0]]
            for column, c in enumerate(batch.coordinates[1:], start=1):
                terms *= tables[c][batch.powers[:, column]]
            found = (batch.weights @ terms).reshape(
                1 + len(batch.coordinates), len(batch.members), -1
            )
            lengths[:, batch.members] = found[0].T
            for column, c in enumerate(batch.coordinates, start=1):
                arms[:, batch.members, c] = found[column].T


def _lowered(row: tuple[int, ...], column: int) -> tuple[int, ...]:
    return (*row[:column], row[column] - 1, *row[column + 1 :])


def _batch(
    members: Sequence[int], elements: Sequence[Element], half: Mapping[str, tuple[int, float]]
) -> _Batch:
    names = elements[members[0]].coordinates
    terms: dict[tuple[int, ...], int] = {}
    entries: list[tuple[int, int, int, float]] = []

    def add(block: int, member: int, row: tuple[int, ...], value: float) -> None:
        entries.append((block, member, terms.setdefault(row, len(terms)), value))

    for place, member in enumerate(members):
        element = elements[member]
        for row, coefficient in zip(element.powers, element.coefficients_m, strict=True):
            add(0, place, row, coefficient)
            for column, name in enumerate(names):
                if row[column]:
                    slope = coefficient * row[column] / half[name][1]
                    add(1 + column, place, _lowered(row, column), -slope)
    weights = np.zeros((1 + len(names), len(members), len(terms)))
    for block, place, term, value in entries:
        weights[block, place, term] += value
    return _Batch(
        members=np.array(members, dtype=np.intp),
        coordinates=tuple(half[name][0] for name in names),
        powers=np.array(list(terms), dtype=np.intp),
        weights=weights.reshape(-1, len(terms)),
    )


def compile_paths(file: PathsFile) -> Paths:
    """The evaluator of a file of path figures.

    Raises:
        ValueError: when an element names a coordinate the file gives no range for.
    """
    low = np.radians([one.low_deg for one in file.coordinates])
    high = np.radians([one.high_deg for one in file.coordinates])
    half: dict[str, tuple[int, float]] = {
        one.name: (position, float(high[position] - low[position]) / 2)
        for position, one in enumerate(file.coordinates)
    }
    alike: dict[tuple[str, ...], list[int]] = {}
    for position, element in enumerate(file.elements):
        if unknown := [name for name in element.coordinates if name not in half]:
            raise ValueError(f"{element.element}: no range is given for {unknown[0]}")
        alike.setdefault(tuple(element.coordinates), []).append(position)
    return Paths(
        origin=file.model,
        coordinates=tuple(one.name for one in file.coordinates),
        elements=file.elements,
        low_rad=low,
        high_rad=high,
        batches=tuple(_batch(members, file.elements, half) for members in alike.values()),
    )


@cache
def load(name: str) -> Paths:
    """The paths of ``paths/<name>.json``, read once.

    Raises:
        FileNotFoundError: when there is no such file.
    """
    text = files("setwright.mechanics").joinpath("paths", f"{name}.json").read_text("utf-8")
    return compile_paths(PathsFile.model_validate(json.loads(text)))
