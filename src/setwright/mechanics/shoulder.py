"""Lengths and moment arms of the muscles of shoulder and scapula.

A pose is three scapular angles (protraction, elevation, upward rotation; 0 at the model's rest)
and the orientation of the humerus against the thorax, of which any is allowed: it is held as a
rotation vector from a middle orientation, so that no angle of it runs into a singularity. Paths
from scapula to humerus depend on the orientation between those two alone, paths of the thorax on
both bones. Arms are exact derivatives of the shipped length polynomials.
"""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.typing import NDArray

from setwright.mechanics.fibre import Fibres, fibres
from setwright.mechanics.humerus import arm_words, humerus_orientation
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.path_figures import Element
from setwright.mechanics.paths import TOLERANCE_RAD, Paths, load
from setwright.mechanics.rotation import inverse_left_jacobian, rotation_vector
from setwright.mechanics.shoulder_frame import (
    frame,
    glenohumeral_centre,
    glenohumeral_slope,
    scapula_orientation,
    scapula_turn,
)

__all__ = [
    "elements",
    "figures",
    "glenohumeral_centre",
    "glenohumeral_slope",
    "humerus_orientation",
    "lengths_and_arms",
    "rotation_vector",
    "scapula_orientation",
    "within",
]

Floats = NDArray[np.float64]
# The region the figures hold for has no simple border.
COVERED = "an arm less far behind the body, across it, or turned"


@cache
def figures() -> tuple[Paths, Fibres]:
    """The shipped paths and the fibres of their elements."""
    paths = _paths()
    return paths, fibres(paths)


def elements() -> tuple[Element, ...]:
    """The M muscle-tendon elements, in the order of every result here."""
    return _paths().elements


def lengths_and_arms(scapula: Floats, humerus: Floats) -> tuple[Floats, Floats, Floats]:
    """Muscle-tendon lengths and moment arms at N poses.

    Args:
        scapula: (N, 3) protraction, elevation and upward rotation from rest, rad.
        humerus: (N, 3, 3) orientation of the humerus in the thorax frame.

    Returns:
        Lengths (N, M), m; scapular arms (N, M, 3), m, the humerus keeping its orientation in
        space; humeral arms (N, M, 3), m, about thorax x, y and z, the scapula held still.

    Raises:
        PostureError: outside the range the figures hold for, naming the angle or the arm's place.
    """
    scapula, humerus = np.asarray(scapula, dtype=float), np.asarray(humerus, dtype=float)
    q = coordinates(scapula, humerus)
    _refuse_outside(q, humerus)
    lengths, arms = _paths().evaluate(q)
    of_scapula, of_humerus, of_joint = arms[..., :3], arms[..., 3:6], arms[..., 6:]
    held = frame()
    from_thorax = inverse_left_jacobian(q[:, 3:6]) @ held.humerus_middle.T
    bone = scapula_orientation(scapula)
    from_bone = inverse_left_jacobian(q[:, 6:]) @ np.swapaxes(
        bone @ held.glenohumeral_middle, -1, -2
    )
    # A small turn of the scapula is, for the joint, the opposite turn of the humerus.
    about_joint = of_joint @ from_bone
    humeral = of_humerus @ from_thorax + about_joint
    return lengths, of_scapula - about_joint @ scapula_turn(scapula), humeral


def within(scapula: Floats, humerus: Floats) -> NDArray[np.bool_]:
    """Which of N poses lie inside the ranges the figures hold for, (N,)."""
    return _inside(coordinates(np.asarray(scapula, dtype=float), np.asarray(humerus, dtype=float)))


def coordinates(scapula: Floats, humerus: Floats) -> Floats:
    """The (N, 9) coordinates of the path figures: scapula, humerus, joint between them."""
    held = frame()
    of_humerus = rotation_vector(held.humerus_middle.T @ humerus)
    between = np.swapaxes(scapula_orientation(scapula), -1, -2) @ humerus
    of_joint = rotation_vector(held.glenohumeral_middle.T @ between)
    return np.concatenate([scapula, of_humerus, of_joint], axis=-1)


def _inside(q: Floats) -> NDArray[np.bool_]:
    paths = _paths()
    over, under = q - paths.high_rad, paths.low_rad - q
    return np.asarray(np.all(np.maximum(over, under) <= TOLERANCE_RAD, axis=-1))


def _refuse_outside(q: Floats, humerus: Floats) -> None:
    # The scapula is refused by name later on; a component of a rotation vector tells nobody much.
    turns = q.copy()
    turns[:, :3] = 0.0
    bad = np.flatnonzero(~_inside(turns))
    if bad.size:
        raise PostureError("arm elevation", arm_words(humerus[bad[0]]), COVERED)


def _paths() -> Paths:
    return load("shoulder")
