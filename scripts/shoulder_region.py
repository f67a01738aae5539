"""Where a shoulder goes: the poses the figures are fitted on.

Declared by hand from everyday limits of the joint, wide enough for dips, rows, pull-downs,
presses at any width, crossing the body and overhead work (common practice, not a measurement).
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

# Plane of elevation (0 out to the side, 90 in front) and how far up the arm goes there, degrees.
PLANES = (-90, -45, -20, 0, 90, 130)
HIGHEST = (65, 65, 110, 173, 173, 125)

# Axial rotation (internal positive): plane, then lowest and highest at elevation 0, 90 and 175.
AXIAL = {
    -90: ((-70, 110), (-60, 80), (-60, 80)),
    -45: ((-70, 110), (-60, 70), (-90, 50)),
    0: ((-70, 110), (-105, 90), (-150, -30)),
    90: ((-70, 115), (-40, 140), (-40, 95)),
    130: ((-70, 115), (0, 155), (0, 140)),
}

# Scapula, degrees from rest; upward rotation follows the arm.
PROTRACTION = (-20.0, 20.0)
ELEVATION = (-13.0, 17.0)
UPWARD_PER_ELEVATION = 1 / 3
UPWARD_EITHER_SIDE = 20.0
UPWARD = (-14.0, 72.0)


def axial_limits(plane: Floats, elevation: Floats) -> tuple[Floats, Floats]:
    """Lowest and highest axial rotation, degrees, at planes and elevations of the arm."""
    table = np.array(list(AXIAL.values()), dtype=float)
    planes = np.array(list(AXIAL), dtype=float)
    sides = []
    for side in (0, 1):
        knots = [np.interp(plane, planes, table[:, k, side]) for k in range(3)]
        low = knots[0] + (knots[1] - knots[0]) * elevation / 90
        high = knots[1] + (knots[2] - knots[1]) * (elevation - 90) / 85
        sides.append(np.where(elevation < 90, low, high))
    return sides[0], sides[1]


def draw(number: int, seed: int) -> tuple[Floats, Floats]:
    """Poses spread over the region.

    Returns:
        Scapular coordinates (N, 3) and plane, elevation and axial rotation of the humerus (N, 3),
        degrees.
    """
    rng = np.random.default_rng(seed)
    plane = rng.uniform(-95, 135, 4 * number)
    elevation = rng.uniform(0, 173, 4 * number)
    inside = elevation <= np.interp(plane, PLANES, HIGHEST)
    plane, elevation = plane[inside][:number], elevation[inside][:number]
    low, high = axial_limits(plane, elevation)
    axial = rng.uniform(low, high)
    either = rng.uniform(-UPWARD_EITHER_SIDE, UPWARD_EITHER_SIDE, number)
    upward = np.clip(elevation * UPWARD_PER_ELEVATION + either, *UPWARD)
    scapula = [rng.uniform(*PROTRACTION, number), rng.uniform(*ELEVATION, number), upward]
    return np.stack(scapula, axis=1), np.stack([plane, elevation, axial], axis=1)
