"""Length polynomials fitted to measured poses, lengths and arms together, jumps left out."""

from __future__ import annotations

import itertools
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.mechanics.rotation import left_jacobian, rotation_vector
from shoulder_samples import Measured

Floats = NDArray[np.float64]
Powers = NDArray[np.intp]

ARM_WEIGHT = 0.15  # weight of a metre of arm against a metre of length
JUMP_LENGTH_M = 4e-3
JUMP_ARM_M = 15e-3


@dataclass(frozen=True)
class Sight:
    """Measured poses seen in the coordinates of the figures.

    Attributes:
        values: coordinates (N, c) by kind of path: "scapula", "joint", "thorax", "clavicle".
        arms: (N, M, c) minus the change of length by those coordinates.
    """

    lengths: Floats
    values: dict[str, Floats]
    arms: dict[str, Floats]
    scapular_arms: Floats
    humeral_arms: Floats
    turns: dict[str, Floats]
    bone_turn: Floats


def see(found: Measured, humerus_middle: Floats, joint_middle: Floats, bone_turn: Floats) -> Sight:
    """The poses in scapular angles and rotation vectors.

    Args:
        found: measured poses.
        humerus_middle: (3, 3) orientation the humerus is counted from.
        joint_middle: (3, 3) orientation of humerus against scapula counted from.
        bone_turn: (N, 3, 3) turn of the scapula by its angles.
    """
    of_humerus = rotation_vector(humerus_middle.T @ found.humerus)
    between = np.swapaxes(found.bone, -1, -2) @ found.humerus
    of_joint = rotation_vector(joint_middle.T @ between)
    from_thorax = humerus_middle @ left_jacobian(of_humerus)
    from_bone = found.bone @ joint_middle @ left_jacobian(of_joint)
    by_thorax, by_bone = found.humeral_arms @ from_thorax, found.humeral_arms @ from_bone
    at_joint = found.scapular_arms + found.humeral_arms @ bone_turn
    join = np.concatenate
    return Sight(
        lengths=found.lengths,
        values={
            "scapula": found.scapula,
            "joint": of_joint,
            "thorax": join([found.scapula, of_humerus], axis=-1),
            "clavicle": join([found.scapula, of_joint], axis=-1),
        },
        arms={
            "scapula": found.scapular_arms,
            "joint": by_bone,
            "thorax": join([found.scapular_arms, by_thorax], axis=-1),
            "clavicle": join([at_joint, by_bone], axis=-1),
        },
        scapular_arms=found.scapular_arms,
        humeral_arms=found.humeral_arms,
        turns={"joint": from_bone, "thorax": from_thorax, "clavicle": from_bone},
        bone_turn=bone_turn,
    )


def powers(degree: int, coordinates: int, scapular: int | None = None) -> Powers:
    """Rows of powers up to a total degree; the first three together up to ``scapular``."""
    rows = itertools.product(range(degree + 1), repeat=coordinates)
    most = degree if scapular is None else scapular
    return np.array([r for r in rows if sum(r) <= degree and sum(r[:3]) <= max(most, 0)])


def terms(u: Floats, rows: Powers) -> Floats:
    """(N, T) values of the terms at u (N, c)."""
    raised = u[:, None, :] ** np.arange(rows.max() + 1)[None, :, None]
    found = np.ones((len(u), len(rows)))
    for c in range(u.shape[1]):
        found *= raised[:, rows[:, c], c]
    return found


def slopes(u: Floats, rows: Powers, c: int) -> Floats:
    """(N, T) derivatives of the terms by u's coordinate c."""
    lower = rows.copy()
    lower[:, c] = np.maximum(lower[:, c] - 1, 0)
    return terms(u, lower) * rows[:, c]


@dataclass(frozen=True)
class Polynomial:
    """A length polynomial over a box of coordinates."""

    kind: str
    rows: Powers
    coefficients: Floats
    middle: Floats
    half: Floats
    left_out: float

    def lengths(self, q: Floats) -> Floats:
        """Lengths (N,), m, at coordinates (N, c)."""
        found: Floats = terms((q - self.middle) / self.half, self.rows) @ self.coefficients
        return found

    def arms(self, q: Floats) -> Floats:
        """Arms (N, c), m."""
        u = (q - self.middle) / self.half
        columns = [
            -slopes(u, self.rows, c) @ self.coefficients / self.half[c] for c in range(q.shape[1])
        ]
        return np.stack(columns, axis=-1)


def fit(
    sight: Sight, muscle: int, kind: str, rows: Powers, low: Floats, high: Floats
) -> Polynomial:
    """Least squares on lengths and arms; poses where the path has jumped are found and left out."""
    q, arms = sight.values[kind], sight.arms[kind][:, muscle]
    middle, half = (low + high) / 2, (high - low) / 2
    u = (q - middle) / half
    blocks = [terms(u, rows)]
    goals = [sight.lengths[:, muscle]]
    for c in range(q.shape[1]):
        blocks.append(-ARM_WEIGHT * slopes(u, rows, c) / half[c])
        goals.append(ARM_WEIGHT * arms[:, c])
    design, goal = np.stack(blocks), np.stack(goals)
    keep = np.abs(arms).max(axis=-1) < 0.4
    for step in range(5):
        matrix, wanted = design[:, keep].reshape(-1, len(rows)), goal[:, keep].ravel()
        normal = matrix.T @ matrix + 1e-9 * np.eye(len(rows))
        coefficients = np.linalg.solve(normal, matrix.T @ wanted)
        error = design @ coefficients - goal
        slack = max(1.0, 4.0 - step)
        keep = (np.abs(error[0]) < slack * JUMP_LENGTH_M) & (
            np.abs(error[1:]).max(axis=0) < slack * JUMP_ARM_M * ARM_WEIGHT
        )
    return Polynomial(kind, rows, coefficients, middle, half, 1 - float(keep.mean()))


@dataclass(frozen=True)
class Errors:
    """Errors on poses kept out of the fit; arms about space axes and by scapular angles."""

    rms_mm: float
    max_mm: float
    arm_rms_mm: float
    jumped: float


def held_out(polynomial: Polynomial, sight: Sight, muscle: int) -> Errors:
    """Errors over the poses where the path has not jumped, and the share where it has."""
    kind = polynomial.kind
    q = sight.values[kind]
    length = polynomial.lengths(q) - sight.lengths[:, muscle]
    arms = polynomial.arms(q)
    if kind == "scapula":
        off = arms - sight.scapular_arms[:, muscle]
    else:
        turned = np.linalg.inv(sight.turns[kind])
        humeral = np.einsum("nc,nck->nk", arms[:, -3:], turned)
        scapular = arms[:, :3] if arms.shape[1] > 3 else np.zeros_like(humeral)
        if kind != "thorax":
            scapular = scapular - np.einsum("nk,nkc->nc", humeral, sight.bone_turn)
        off = np.concatenate(
            [humeral - sight.humeral_arms[:, muscle], scapular - sight.scapular_arms[:, muscle]],
            axis=-1,
        )
    jumped = (np.abs(length) > JUMP_LENGTH_M) | (np.abs(off).max(axis=-1) > JUMP_ARM_M)
    good = ~jumped

    def rms(errors: Floats) -> float:
        return 1000 * float(np.sqrt(np.mean(errors[good] ** 2)))

    worst = 1000 * float(np.abs(length[good]).max())
    return Errors(rms(length), worst, rms(off), float(jumped.mean()))
