"""Orientation of the humerus against the thorax, from the words a coach uses."""

from __future__ import annotations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from setwright.mechanics.rotation import rotation_matrix

Floats = NDArray[np.float64]


def humerus_orientation(
    plane_rad: ArrayLike, elevation_rad: ArrayLike, axial_rad: ArrayLike
) -> Floats:
    """Axes of the humerus in the thorax frame (x forward, y up, z to the right).

    The long axis, shoulder to elbow, is -y of the humerus. From the hanging arm with the elbow
    bent and the forearm forward, the humerus first turns about its long axis and then swings
    straight up in its plane, without twisting on the way.

    Args:
        plane_rad: plane of elevation: 0 out to the side, pi/2 in front, -pi/2 behind.
        elevation_rad: angle between the upper arm and straight down.
        axial_rad: turn about the long axis before the swing, internal rotation positive.

    Returns:
        (..., 3, 3) rotation matrices, columns = humerus axes.
    """
    plane, elevation, axial = np.broadcast_arrays(
        *(np.asarray(a, dtype=float) for a in (plane_rad, elevation_rad, axial_rad))
    )
    zero = np.zeros_like(plane)
    swing = elevation[..., None] * np.stack([-np.cos(plane), zero, np.sin(plane)], axis=-1)
    turn = np.stack([zero, axial, zero], axis=-1)
    matrices: Floats = rotation_matrix(swing) @ rotation_matrix(turn)
    return matrices
