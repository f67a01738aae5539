"""Rotation vectors: the logarithm and exponential of rotations, and their derivatives.

A rotation vector points along the axis of a rotation and is as long as its angle in radians.
All functions are vectorised over leading dimensions.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_SMALL = 1e-6


def skew(vectors: Floats) -> Floats:
    """Cross-product matrices (..., 3, 3) of vectors (..., 3)."""
    x, y, z = np.moveaxis(vectors, -1, 0)
    zero = np.zeros_like(x)
    rows = [[zero, -z, y], [z, zero, -x], [-y, x, zero]]
    return np.stack([np.stack(row, axis=-1) for row in rows], axis=-2)


def rotation_matrix(vectors: Floats) -> Floats:
    """Rotation matrices (..., 3, 3) of rotation vectors (..., 3)."""
    angle = np.linalg.norm(vectors, axis=-1)[..., None, None]
    turned = skew(vectors)
    half = np.sinc(angle / (2 * np.pi))
    matrices: Floats = np.eye(3) + np.sinc(angle / np.pi) * turned + half**2 / 2 * turned @ turned
    return matrices


def rotation_vector(matrices: Floats) -> Floats:
    """Rotation vectors (..., 3) of rotation matrices (..., 3, 3); angles up to just under pi.

    Raises:
        ValueError: when a rotation is a half turn, whose axis has no sign.
    """
    axis = np.stack(
        [
            matrices[..., 2, 1] - matrices[..., 1, 2],
            matrices[..., 0, 2] - matrices[..., 2, 0],
            matrices[..., 1, 0] - matrices[..., 0, 1],
        ],
        axis=-1,
    )
    double_sine = np.linalg.norm(axis, axis=-1)
    double_cosine = np.trace(matrices, axis1=-2, axis2=-1) - 1
    angle = np.arctan2(double_sine, double_cosine)
    if np.any(angle > np.pi - _SMALL):
        raise ValueError("a half turn has no single rotation vector")
    vectors: Floats = axis / (2 * np.sinc(angle / np.pi))[..., None]
    return vectors


def left_jacobian(vectors: Floats) -> Floats:
    """How a change of the vector turns the rotation: exp(v + dv) = exp(J dv) exp(v).

    Returns:
        J, shape (..., 3, 3).
    """
    angle = np.linalg.norm(vectors, axis=-1)[..., None, None]
    turned = skew(vectors)
    first = np.sinc(angle / (2 * np.pi)) ** 2 / 2
    small = angle < 1e-3
    safe = np.where(small, 1.0, angle)
    second = np.where(small, 1 / 6 - angle**2 / 120, (safe - np.sin(safe)) / safe**3)
    jacobian: Floats = np.eye(3) + first * turned + second * turned @ turned
    return jacobian


def inverse_left_jacobian(vectors: Floats) -> Floats:
    """How a small turn in front changes the vector: exp(v + K t) = exp(t) exp(v) to first order."""
    angle = np.linalg.norm(vectors, axis=-1)[..., None, None]
    turned = skew(vectors)
    small = angle < 1e-3
    safe = np.where(small, 1.0, angle)
    second = np.where(small, 1 / 12 + angle**2 / 720, (1 - safe / 2 / np.tan(safe / 2)) / safe**2)
    jacobian: Floats = np.eye(3) - turned / 2 + second * turned @ turned
    return jacobian
