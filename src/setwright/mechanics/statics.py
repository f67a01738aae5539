"""What must carry the body and its load: contact forces, and the moments at the joints.

Statics at each point of the range; the moment at a joint is the work the outer forces beyond it
would do in a small turn of that joint.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.points import Place
from setwright.mechanics.skeleton import ABOVE, Skeleton
from setwright.mechanics.turns import Array, turned

GRAVITY: Final = 9.81
# Finding contact forces, a sideways newton counts as much as this many upright ones.
SIDEWAYS_COST: Final = 4.0


@dataclass(frozen=True)
class Force:
    """A force on one segment; position and force (F, 3), N."""

    segment: str
    position: Array
    force: Array


def weights(body: Skeleton) -> tuple[Force, ...]:
    """The weight of every segment."""
    return tuple(
        Force(
            name,
            one.centre,
            np.broadcast_to([0.0, -GRAVITY * one.mass_kg, 0.0], one.centre.shape),
        )
        for name, one in body.placed.items()
    )


def wrench(forces: Iterable[Force], frames: int) -> Array:
    """Sum of forces and of moments about the origin, (F, 6)."""
    total = np.zeros((frames, 6))
    for one in forces:
        total[:, :3] += one.force
        total[:, 3:] += np.cross(one.position, one.force)
    return total


def contact_forces(places: Sequence[Place], outer: Array) -> tuple[tuple[Force, ...], Array]:
    """The smallest contact forces that balance the outer wrench, and what is left over.

    Args:
        places: where the body is carried.
        outer: (F, 6) force and moment about the origin of everything else, N and N·m.

    Returns:
        One force for each place, and (F, 6) the wrench they cannot balance.
    """
    frames = len(outer)
    matrix = np.zeros((frames, 6, 3 * len(places)))
    for column, place in enumerate(places):
        for axis in range(3):
            unit = np.zeros(3)
            unit[axis] = 1.0 if axis == 1 else 1.0 / SIDEWAYS_COST
            matrix[:, :3, 3 * column + axis] = unit
            matrix[:, 3:, 3 * column + axis] = np.cross(place.position, unit)
    found = np.einsum("fij,fj->fi", np.linalg.pinv(matrix, rcond=1e-9), -outer)
    left = outer + np.einsum("fij,fj->fi", matrix, found)
    cost = np.array([1.0 / SIDEWAYS_COST, 1.0, 1.0 / SIDEWAYS_COST])
    forces = tuple(
        Force(place.segment, place.position, found[:, 3 * k : 3 * k + 3] * cost)
        for k, place in enumerate(places)
    )
    return forces, left


def beyond(joint: str) -> frozenset[str]:
    """The segments that hang on a segment, itself included."""
    found = {joint}
    # Parents stand before their children in ``ABOVE``.
    for child, parent in ABOVE.items():
        if parent in found:
            found.add(child)
    return frozenset(found)


LEG: Final = ("hip flexion", "hip abduction", "hip internal rotation", "knee flexion",
       "ankle dorsiflexion", "ankle inversion")  # fmt: skip
TRUNK: Final = ("trunk flexion", "trunk side bend", "trunk rotation")
NECK: Final = ("neck flexion", "neck side bend", "neck rotation")
BLADE: Final = ("scapula protraction", "scapula elevation", "scapula upward rotation")
HUMERUS: Final = ("humerus x", "humerus y", "humerus z")
LOWER_ARM: Final = ("elbow flexion", "forearm pronation", "wrist flexion", "finger flexion")
ARM: Final = (*BLADE, *HUMERUS, *LOWER_ARM)
# How far from the finger joints a gripped load pulls (from memory).
GRIP_LEVER_M: Final = 0.03
_ROOTS: Final = ("thigh right", "shank right", "foot right", "thorax", "head", "upper arm right",
                 "forearm right", "hand right")  # fmt: skip
# In order, so that sums come out the same to the last digit in every run.
_BEYOND: Final = {name: tuple(sorted(beyond(name))) for name in _ROOTS}


def moments(
    body: Skeleton, angles: Mapping[str, Array], forces: Sequence[Force], blade_slope: Array
) -> Mapping[str, Array]:
    """Outer moment on every coordinate of the right side, the trunk and the neck.

    Args:
        body: the body in its postures.
        angles: the angles it stands in, rad.
        forces: every outer force, contacts included.
        blade_slope: (F, 3, 3) shoulder joint centre by pose of the blade, m a radian, thorax axes.

    Returns:
        By coordinate (F,), N·m (for the blade: work by radian); positive turns the joint up.
    """
    frames = len(angles["lean"])
    by_segment: dict[str, Array] = {}
    for one in forces:
        total = by_segment.setdefault(one.segment, np.zeros((frames, 6)))
        total[:, :3] += one.force
        total[:, 3:] += np.cross(one.position, one.force)
    summed = {
        root: sum((by_segment[s] for s in names if s in by_segment), np.zeros((frames, 6)))
        for root, names in _BEYOND.items()
    }
    placed = body.placed

    def about_joint(root: str) -> Array:
        """Moment about the joint of a segment, world axes (F, 3)."""
        moment: Array = summed[root][:, 3:] - np.cross(placed[root].joint, summed[root][:, :3])
        return moment

    def on(axis: Array, moment: Array) -> Array:
        component: Array = np.einsum("fi,fi->f", axis, moment)
        return component

    found: dict[str, Array] = {}
    hip = about_joint("thigh right")
    pelvis, thigh = placed["pelvis"].rotation, placed["thigh right"].rotation
    found["hip flexion"] = on(pelvis[:, :, 2], hip)
    found["hip abduction"] = -on(_tilted(pelvis, angles["hip flexion"]), hip)
    found["hip internal rotation"] = on(thigh[:, :, 1], hip)
    found["knee flexion"] = -on(thigh[:, :, 2], about_joint("shank right"))
    found["ankle dorsiflexion"] = on(
        placed["shank right"].rotation[:, :, 2], about_joint("foot right")
    )
    # The foot presses on its inner or outer edge as it likes.
    found["ankle inversion"] = np.zeros(frames)
    for joint, below, above in (("trunk", "pelvis", "thorax"), ("neck", "thorax", "head")):
        moment, base = about_joint(above), placed[below].rotation
        found[f"{joint} flexion"] = -on(base[:, :, 2], moment)
        found[f"{joint} side bend"] = on(_tilted(base, -angles[f"{joint} flexion"]), moment)
        found[f"{joint} rotation"] = -on(placed[above].rotation[:, :, 1], moment)
    thorax = placed["thorax"].rotation
    carried = np.einsum("fji,fj->fi", thorax, summed["upper arm right"][:, :3])
    for k, name in enumerate(BLADE):
        found[name] = np.einsum("fi,fi->f", blade_slope[:, :, k], carried) * body.scale
    shoulder = np.einsum("fji,fj->fi", thorax, about_joint("upper arm right"))
    for k, name in enumerate(HUMERUS):
        found[name] = shoulder[:, k]
    elbow = about_joint("forearm right")
    forearm, hand = placed["forearm right"].rotation, placed["hand right"].rotation
    found["elbow flexion"] = on(forearm[:, :, 2], elbow)
    wrist = about_joint("hand right")
    found["forearm pronation"] = on(forearm[:, :, 1], wrist)
    # A load that pulls out of the hand hangs in the fingers: it opens them and bends the wrist
    # back. One that presses into the hand does neither.
    along = turned(hand, np.array([0.0, -1.0, 0.0]))
    out = np.einsum("fi,fi->f", along, summed["hand right"][:, :3])
    grip = GRIP_LEVER_M * np.maximum(out, 0.0)
    found["finger flexion"] = -grip
    found["wrist flexion"] = on(hand[:, :, 2], wrist) - grip
    return found


def _tilted(rotation: Array, flexion: Array) -> Array:
    """Forward axis of a frame after a turn about its z axis, world (F, 3)."""
    axis = np.stack((np.cos(flexion), np.sin(flexion), np.zeros_like(flexion)), axis=-1)
    return turned(rotation, axis)
