"""Turns about the axes of a frame, for many postures at once."""

from __future__ import annotations

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Array: TypeAlias = NDArray[np.float64]


def about(axis: int, angle_rad: Array) -> Array:
    """Rotation matrices about x (0), y (1) or z (2); angles (F,), result (F, 3, 3)."""
    angle = np.asarray(angle_rad, dtype=float)
    turn = np.zeros((*angle.shape, 3, 3))
    first, second = (axis + 1) % 3, (axis + 2) % 3
    cosine, sine = np.cos(angle), np.sin(angle)
    turn[..., axis, axis] = 1.0
    turn[..., first, first] = turn[..., second, second] = cosine
    turn[..., first, second], turn[..., second, first] = -sine, sine
    return turn


def turned(rotation: Array, vector: Array) -> Array:
    """Vectors (3,) or (F, 3) of a frame in the frame above; rotation (F, 3, 3)."""
    found: Array = np.einsum("...ij,...j->...i", rotation, vector)
    return found


def mirrored(rotation: Array) -> Array:
    """The same rotation seen in the mirror of the sagittal plane (z to minus z)."""
    flip = np.array([1.0, 1.0, -1.0])
    seen: Array = rotation * flip[:, None] * flip
    return seen
