"""Fits muscle-tendon lengths with polynomials: the arithmetic shared by the fitting scripts.

Lengths and moment arms are fitted together, by least squares, as one polynomial of
u = (q - mid) / half and minus its derivative. The degree is the smallest that is good enough on
poses the fit did not see; terms too small to matter are dropped; errors are then measured on a
third set of poses.
"""

from __future__ import annotations

import hashlib
import itertools
import json
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np

ARM_WEIGHT = 0.3  # weight of an error of arm against one of length
GOOD_RMS_M, GOOD_MAX_M = 1.5e-4, 8e-4
GOOD_ARM_RMS_M = (2e-4, 2e-4, 4.5e-4, 4.5e-4)  # by number of coordinates: few cost few terms
SMALL_M = 2e-5  # a term that moves length less than this, anywhere, may go
SMALL_ARM_M = 1e-4
MIXED = 5  # highest total degree of terms that mix joints
DECIMALS = 6  # of the coefficients, m


@dataclass(frozen=True)
class Samples:
    """Lengths and arms of one element at N poses.

    Attributes:
        u: (N, c) scaled coordinates the element depends on.
        half: (c,) half ranges, rad.
        lengths: (N,) m.
        arms: (N, c) m.
        arm_known: (N, c) True where the arm is to be fitted.
    """

    u: np.ndarray
    half: np.ndarray
    lengths: np.ndarray
    arms: np.ndarray
    arm_known: np.ndarray


@dataclass(frozen=True)
class Fit:
    """A fitted polynomial and its errors on poses nobody fitted."""

    powers: np.ndarray
    coefficients: np.ndarray
    rms_mm: float
    max_mm: float
    arm_rms_mm: float


def full_powers(coordinates: int, degree: int) -> np.ndarray:
    """(K, c) powers of every term up to a total degree."""
    rows = itertools.product(range(degree + 1), repeat=coordinates)
    return np.array([row for row in rows if sum(row) <= degree])


def powers_over(joints: Sequence[str], degree: int) -> np.ndarray:
    """(K, c) powers: each joint alone up to a degree, joints together up to a lower one.

    What one joint does to a path is often independent of the next, and then mixed terms of a high
    degree are wasted. A joint of one coordinate beside others may have a higher degree.

    Args:
        joints: the joint each coordinate belongs to.
        degree: total degree within one joint.
    """
    if len(set(joints)) == 1:
        return full_powers(len(joints), degree)
    rows = {tuple(map(int, row)) for row in full_powers(len(joints), min(degree - 1, MIXED))}
    for joint in sorted(set(joints)):
        columns = [column for column, name in enumerate(joints) if name == joint]
        own = full_powers(len(columns), degree + 3 if len(columns) == 1 else degree)
        spread = np.zeros((len(own), len(joints)), dtype=int)
        spread[:, columns] = own
        rows |= {tuple(map(int, row)) for row in spread}
    return np.array(sorted(rows, key=lambda row: (sum(row), row)))


def terms(u: np.ndarray, powers: np.ndarray) -> np.ndarray:
    """(N, K) values of the terms."""
    table = np.stack([u**power for power in range(int(powers.max()) + 1)])
    value = np.ones((len(u), len(powers)))
    for column in range(u.shape[1]):
        value *= table[powers[:, column], :, column].T
    return value


def arm_terms(u: np.ndarray, half: np.ndarray, powers: np.ndarray, column: int) -> np.ndarray:
    """(N, K) moment arm each term gives about one coordinate, per unit of its coefficient."""
    lowered = powers.copy()
    lowered[:, column] = np.maximum(lowered[:, column] - 1, 0)
    return -terms(u, lowered) * powers[:, column] / half[column]


def solve(samples: Samples, powers: np.ndarray) -> np.ndarray:
    """Coefficients by least squares over lengths and arms."""
    rows, wanted = [terms(samples.u, powers)], [samples.lengths]
    for column in range(samples.u.shape[1]):
        known = samples.arm_known[:, column]
        rows.append(ARM_WEIGHT * arm_terms(samples.u[known], samples.half, powers, column))
        wanted.append(ARM_WEIGHT * samples.arms[known, column])
    return np.linalg.lstsq(np.vstack(rows), np.concatenate(wanted), rcond=None)[0]


def errors(samples: Samples, powers: np.ndarray, coefficients: np.ndarray) -> tuple[float, ...]:
    """Root mean square and largest error of length, and root mean square of the arms, m."""
    length = terms(samples.u, powers) @ coefficients - samples.lengths
    arm = [
        (
            arm_terms(samples.u, samples.half, powers, column) @ coefficients
            - samples.arms[:, column]
        )
        for column in range(samples.u.shape[1])
    ]
    rms = float(np.sqrt(np.mean(length**2)))
    return rms, float(np.abs(length).max()), float(np.sqrt(np.mean(np.square(arm))))


def without_small(samples: Samples, powers: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
    """Powers and coefficients after the terms too small to matter are gone."""
    coefficients = solve(samples, powers)
    while True:
        size = np.abs(coefficients)
        swing = size * (powers / samples.half).max(axis=1)
        keep = (size > SMALL_M) | (swing > SMALL_ARM_M)
        keep[0] = True
        if keep.all():
            return powers, coefficients
        powers = powers[keep]
        coefficients = solve(samples, powers)


def fit(
    fitted: Samples,
    chosen_on: Samples,
    tested_on: Samples,
    joints: Sequence[str],
    most_terms: int = 340,
) -> Fit:
    """The smallest polynomial good enough, or the best one within ``most_terms``."""
    best: tuple[float, np.ndarray, np.ndarray] | None = None
    coordinates = fitted.u.shape[1]
    good_arm = GOOD_ARM_RMS_M[coordinates - 1]
    for degree in range(3, 13):
        powers = powers_over(joints, degree)
        if len(powers) > most_terms:
            break
        powers, coefficients = without_small(fitted, powers)
        rms, worst, arm_rms = errors(chosen_on, powers, coefficients)
        if best is None or arm_rms < 0.9 * best[0]:
            best = (arm_rms, powers, coefficients)
        if rms <= GOOD_RMS_M and worst <= GOOD_MAX_M and arm_rms <= good_arm:
            break
    assert best is not None
    _, powers, coefficients = best
    coefficients = np.round(coefficients, DECIMALS)
    rms, worst, arm_rms = errors(tested_on, powers, coefficients)
    return Fit(powers, coefficients, *(round(value * 1e3, 2) for value in (rms, worst, arm_rms)))


def sha256(path: Path) -> str:
    """Hash of a file."""
    return hashlib.sha256(path.read_bytes()).hexdigest()


def write(path: Path, head: dict[str, object], elements: Sequence[dict[str, object]]) -> None:
    """Writes a file of path figures, one element a line."""
    lines = ["{"]
    lines += [f"{json.dumps(key)}: {json.dumps(value)}," for key, value in head.items()]
    body = ",\n".join(json.dumps(element, separators=(",", ":")) for element in elements)
    path.write_text("\n".join([*lines, '"elements": [', body, "]}", ""]), encoding="utf-8")
