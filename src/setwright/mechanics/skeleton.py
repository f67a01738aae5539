"""Where every segment of the body is in a posture.

A tree of segments rooted at the middle of the hips. World axes: x forward, y up, z to the right.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build, Landmarks, Segment, landmarks, segments
from setwright.mechanics.shoulder import glenohumeral_centre, humerus_orientation
from setwright.mechanics.turns import Array, about, mirrored, turned

# Stature of the body the shoulder figures were taken from (from memory).
SHOULDER_STATURE_M: Final = 1.77
# Degrees of arm elevation before the shoulder blade turns along, and the share it then takes
# (from memory: about one degree for every two at the shoulder joint).
BLADE_FROM_DEG: Final = 15.0
BLADE_SHARE: Final = 1 / 3
DOWN: Final = np.array([0.0, -1.0, 0.0])
UP: Final = -DOWN
FORWARD: Final = np.array([1.0, 0.0, 0.0])
ABOVE: Final[Mapping[str, str]] = {
    "thorax": "pelvis",
    "head": "thorax",
    **{
        f"{segment} {side}": parent if parent in ("pelvis", "thorax") else f"{parent} {side}"
        for side in ("right", "left")
        for segment, parent in (
            ("thigh", "pelvis"),
            ("shank", "thigh"),
            ("foot", "shank"),
            ("upper arm", "thorax"),
            ("forearm", "upper arm"),
            ("hand", "forearm"),
        )
    },
}


@dataclass(frozen=True)
class Placed:
    """One segment in F postures.

    Attributes:
        joint: (F, 3) the joint it hangs on, m; for the pelvis the middle of the hips.
        rotation: (F, 3, 3) its axes in the world.
        centre: (F, 3) its centre of mass, m.
        mass_kg: its mass.
        length_m: from the joint to its far end.
    """

    joint: Array
    rotation: Array
    centre: Array
    mass_kg: float
    length_m: float

    @property
    def far(self) -> Array:
        """(F, 3) far end of a limb segment."""
        return self.joint + turned(self.rotation, DOWN * self.length_m)

    def at(self, ahead_m: float, above_m: float, right_m: float = 0.0) -> Array:
        """(F, 3) a point fixed to the segment, from its joint."""
        return self.joint + turned(self.rotation, np.array([ahead_m, above_m, right_m]))


@dataclass(frozen=True)
class Skeleton:
    """A body in F postures.

    Attributes:
        placed: every segment by name, paired ones as ``thigh right``.
        marks: the distances that are no segment's length.
        blade: (F, 3) protraction, elevation and upward rotation of the shoulder blade, rad.
        humerus: (F, 3, 3) right upper arm in the axes of the thorax.
        scale: size beside the body the shoulder figures were taken from.
    """

    placed: Mapping[str, Placed]
    marks: Landmarks
    blade: Array
    humerus: Array
    scale: float

    @property
    def mass_kg(self) -> float:
        """Body mass."""
        return sum(one.mass_kg for one in self.placed.values())


Angles = Mapping[str, Array]


def _of(angles: Angles, name: str, side: str = "right") -> Array:
    return angles[f"other {name}"] if side == "left" and f"other {name}" in angles else angles[name]


def blade_of(angles: Angles, side: str = "right") -> Array:
    """Pose of the shoulder blade, rad (F, 3); its upward rotation follows the arm.

    A declared upward rotation is added to the rhythm.
    """
    elevation = np.abs(_of(angles, "arm elevation", side))
    follows = BLADE_SHARE * np.maximum(elevation - np.radians(BLADE_FROM_DEG), 0.0)
    return np.stack(
        (
            angles["scapula protraction"],
            angles["scapula elevation"],
            angles["scapula upward rotation"] + follows,
        ),
        axis=-1,
    )


def skeleton(angles: Angles, build: Build) -> Skeleton:
    """The body in the postures of ``angles`` (each (F,) rad, all names of ``movement.ANGLES``)."""
    table, marks = segments(build), landmarks(build)
    frames = len(angles["lean"])
    pelvis = about(0, angles["roll"]) @ about(2, -angles["lean"])
    hips = np.zeros((frames, 3))
    placed = {"pelvis": _upward(table["pelvis"], hips, pelvis)}
    lumbar = placed["pelvis"].at(0.0, table["pelvis"].length_m)
    thorax = pelvis @ _spine(angles, "trunk")
    placed["thorax"] = _upward(table["thorax"], lumbar, thorax)
    neck = placed["thorax"].at(0.0, table["thorax"].length_m)
    placed["head"] = _upward(table["head"], neck, thorax @ _spine(angles, "neck"))
    for side in ("right", "left"):
        _leg(placed, table, marks, angles, side)
    scale = build.stature_m / SHOULDER_STATURE_M
    for side in ("right", "left"):
        _arm(placed, table, marks, angles, side, scale)
    return Skeleton(placed, marks, blade_of(angles), _humerus(angles, "right"), scale)


def _spine(angles: Angles, joint: str) -> Array:
    return (
        about(2, -angles[f"{joint} flexion"])
        @ about(0, angles[f"{joint} side bend"])
        @ about(1, -angles[f"{joint} rotation"])
    )


def _upward(segment: Segment, joint: Array, rotation: Array) -> Placed:
    centre = joint + turned(rotation, UP * segment.com_fraction * segment.length_m)
    return Placed(joint, rotation, centre, segment.mass_kg, segment.length_m)


def _downward(segment: Segment, joint: Array, rotation: Array) -> Placed:
    centre = joint + turned(rotation, DOWN * segment.com_fraction * segment.length_m)
    return Placed(joint, rotation, centre, segment.mass_kg, segment.length_m)


def _sided(turn: Array, side: str) -> Array:
    return turn if side == "right" else mirrored(turn)


def _leg(
    placed: dict[str, Placed],
    table: Mapping[str, Segment],
    marks: Landmarks,
    angles: Angles,
    side: str,
) -> None:
    outward = 1.0 if side == "right" else -1.0
    pelvis = placed["pelvis"]
    hip = pelvis.at(0.0, 0.0, outward * marks.hip_half_breadth_m)
    turn = (
        about(2, _of(angles, "hip flexion", side))
        @ about(0, -_of(angles, "hip abduction", side))
        @ about(1, angles["hip internal rotation"])
    )
    thigh = _downward(table["thigh"], hip, pelvis.rotation @ _sided(turn, side))
    # A turn about the sideways axis is its own mirror image.
    knee = about(2, -_of(angles, "knee flexion", side))
    shank = _downward(table["shank"], thigh.far, thigh.rotation @ knee)
    ankle = about(2, _of(angles, "ankle dorsiflexion", side))
    rotation = shank.rotation @ ankle
    foot = table["foot"]
    along = foot.com_fraction * foot.length_m - marks.heel_behind_ankle_m
    centre = shank.far + turned(rotation, np.array([along, -0.6 * marks.ankle_height_m, 0.0]))
    placed[f"thigh {side}"], placed[f"shank {side}"] = thigh, shank
    placed[f"foot {side}"] = Placed(shank.far, rotation, centre, foot.mass_kg, foot.length_m)


def _humerus(angles: Angles, side: str) -> Array:
    return humerus_orientation(
        _of(angles, "arm plane", side),
        _of(angles, "arm elevation", side),
        _of(angles, "arm rotation", side),
    )


def _arm(
    placed: dict[str, Placed],
    table: Mapping[str, Segment],
    marks: Landmarks,
    angles: Angles,
    side: str,
    scale: float,
) -> None:
    outward = 1.0 if side == "right" else -1.0
    thorax = placed["thorax"]
    blade = blade_of(angles, side)
    moved = (glenohumeral_centre(blade) - glenohumeral_centre(np.zeros((1, 3)))) * scale
    rest = np.array(
        [0.0, table["thorax"].length_m - marks.shoulder_below_neck_m, marks.shoulder_half_breadth_m]
    )
    local = (rest + moved) * np.array([1.0, 1.0, outward])
    shoulder = thorax.joint + turned(thorax.rotation, local)
    humerus = thorax.rotation @ _sided(_humerus(angles, side), side)
    upper = _downward(table["upper arm"], shoulder, humerus)
    elbow = about(2, _of(angles, "elbow flexion", side))
    bent = humerus @ elbow
    lower = _downward(table["forearm"], upper.far, bent)
    # The palm faces the thigh at 0 and forwards when the forearm is turned out by a right angle.
    turned_out = about(1, angles["forearm pronation"] + np.pi / 2)
    hand_turn = turned_out @ about(2, angles["wrist flexion"])
    hand = _downward(table["hand"], lower.far, bent @ _sided(hand_turn, side))
    placed[f"upper arm {side}"], placed[f"forearm {side}"] = upper, lower
    placed[f"hand {side}"] = hand
