"""Places on the body where loads act and supports carry.

Distances are fractions of stature, from memory, measured from the joint of the carrying segment.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from setwright.mechanics.skeleton import Skeleton
from setwright.mechanics.turns import Array

BAR_BEHIND: Final = 0.045
LOW_BAR_BEHIND: Final = 0.055
LOW_BAR_BELOW: Final = 0.035
BAR_IN_FRONT: Final = 0.05
SHOULDERS_BELOW_NECK: Final = 0.02
CHEST_BELOW_NECK: Final = 0.10
CHEST_AHEAD: Final = 0.065
HIPS_AHEAD: Final = 0.055
UPPER_BACK_BELOW_NECK: Final = 0.08
LOW_BACK_BEHIND: Final = 0.05
LOW_BACK_ABOVE: Final = 0.07
HEAD_HALF: Final = 0.055
GRIP_ALONG_HAND: Final = 0.85
PAD_ALONG_SHANK: Final = 0.9
PAD_ALONG_THIGH: Final = 0.88
PAD_ALONG_UPPER_THIGH: Final = 0.2
PAD_AHEAD_OF_THIGH: Final = 0.05
KNEE_AHEAD: Final = 0.03
KNEE_BEHIND: Final = 0.02
# Where on the foot, from the heel, a steady stance presses.
OVER_FOOT: Final = 0.42


@dataclass(frozen=True)
class Place:
    """A point of the body in F postures.

    Attributes:
        segment: name of the segment it lies on.
        position: (F, 3) world, m.
    """

    segment: str
    position: Array


def places(body: Skeleton, name: str, stature_m: float) -> tuple[Place, ...]:
    """The places meant by a name, right before left; a place on the midline once.

    Raises:
        KeyError: when there is no such place.
    """
    if name in _MIDLINE:
        segment, ahead, above = _MIDLINE[name]
        carrier = body.placed[segment]
        base = carrier.length_m if segment == "thorax" else 0.0
        return (Place(segment, carrier.at(ahead * stature_m, base + above * stature_m)),)
    return tuple(_paired(body, name, side, stature_m) for side in ("right", "left"))


# Segment, ahead and above its joint (for the thorax: above the neck joint).
_MIDLINE: Final = {
    "upper back": ("thorax", -BAR_BEHIND, -SHOULDERS_BELOW_NECK),
    "low on the back": ("thorax", -LOW_BAR_BEHIND, -SHOULDERS_BELOW_NECK - LOW_BAR_BELOW),
    "front of the shoulders": ("thorax", BAR_IN_FRONT, -SHOULDERS_BELOW_NECK - 0.01),
    "chest": ("thorax", CHEST_AHEAD, -CHEST_BELOW_NECK),
    "shoulder blades": ("thorax", -BAR_BEHIND, -UPPER_BACK_BELOW_NECK),
    "pelvis": ("pelvis", 0.0, 0.0),
    "low back": ("pelvis", -LOW_BACK_BEHIND, LOW_BACK_ABOVE),
    "hips front": ("pelvis", HIPS_AHEAD, 0.015),
    "forehead": ("head", HEAD_HALF, 0.1),
    "back of the head": ("head", -HEAD_HALF, 0.1),
}


def _paired(body: Skeleton, name: str, side: str, stature_m: float) -> Place:
    marks = body.marks
    if name in ("balls of the feet", "heels", "mid feet"):
        segment = f"foot {side}"
        foot = body.placed[segment]
        ahead = {
            "balls of the feet": marks.ball_ahead_of_ankle_m,
            "heels": -marks.heel_behind_ankle_m,
            "mid feet": OVER_FOOT * foot.length_m - marks.heel_behind_ankle_m,
        }[name]
        return Place(segment, foot.at(ahead, -marks.ankle_height_m))
    segment, along, ahead = _LIMB[name]
    carrier = body.placed[f"{segment} {side}"]
    return Place(f"{segment} {side}", carrier.at(ahead * stature_m, -along * carrier.length_m))


_LIMB: Final = {
    "hands": ("hand", GRIP_ALONG_HAND, 0.0),
    "elbows": ("upper arm", 1.0, 0.0),
    "knees": ("shank", 0.0, KNEE_AHEAD),
    "ankles": ("shank", 1.0, 0.0),
    "shins at the ankle": ("shank", PAD_ALONG_SHANK, 0.0),
    "backs of the knees": ("shank", 0.08, -KNEE_BEHIND),
    "upper thighs": ("thigh", PAD_ALONG_UPPER_THIGH, PAD_AHEAD_OF_THIGH),
    "thighs above the knee": ("thigh", PAD_ALONG_THIGH, KNEE_AHEAD),
}
