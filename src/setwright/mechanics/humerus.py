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


def arm_angles(humerus: Floats) -> tuple[Floats, Floats, Floats]:
    """Plane, elevation and axial rotation, rad, of orientations (..., 3, 3)."""
    x, y, z = np.moveaxis(-humerus[..., :, 1], -1, 0)
    plane = np.arctan2(x, z)
    elevation = np.arctan2(np.hypot(x, z), -y)
    swung = np.swapaxes(humerus_orientation(plane, elevation, 0.0), -1, -2) @ humerus
    axial = np.arctan2(swung[..., 0, 2], swung[..., 0, 0])
    return plane, elevation, axial


def arm_words(humerus: Floats) -> str:
    """One orientation (3, 3) in words for messages."""
    plane, elevation, axial = (float(np.degrees(a)) for a in arm_angles(humerus))
    return (
        f"an arm {elevation:.0f} degrees up in plane {plane:.0f} "
        f"(0 out to the side, 90 in front), turned in by {axial:.0f}"
    )
