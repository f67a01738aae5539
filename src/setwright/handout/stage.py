"""A movement ready to be drawn: seen from where it shows, its limbs as lines."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import Movement
from setwright.mechanics.outer import support_centre, supports
from setwright.mechanics.outer_moments import Asked
from setwright.mechanics.skeleton import Skeleton
from setwright.mechanics.turns import Array

View = Literal["side", "front", "above"]
VIEWS: Final[dict[View, str]] = {
    "side": "from the right side",
    "front": "from the front",
    "above": "from above",
}
# How much more a view must show of the movement before it replaces the one from the side.
RATHER_SIDE: Final = 1.3
# What a view of the movement is still worth when it looks along the body.
END_ON: Final = 0.3
HEAD_RADIUS: Final = 0.055


@dataclass(frozen=True)
class Stage:
    """A movement ready to be drawn in one view.

    Attributes:
        movement: the movement.
        asked: its postures.
        stature_m: size of the body.
        view: where it is seen from.
        origin: (F, 3) point that is drawn at the same place in every posture.
    """

    movement: Movement
    asked: Asked
    stature_m: float
    view: View
    origin: Array

    @property
    def body(self) -> Skeleton:
        """The body in its postures."""
        return self.asked.body

    def flat(self, points: Array, frame: int) -> Array:
        """World points of a posture on the sheet, (..., 2)."""
        return flattened(points - self.origin[frame], self.view)


def stage(movement: Movement, asked: Asked, build: Build) -> Stage:
    """The movement seen from where most of it shows."""
    body = asked.body
    if supports(movement, body, build.stature_m):
        origin = support_centre(movement, body, build.stature_m)
    else:
        origin = body.placed["pelvis"].joint
    head = body.placed["head"]
    ends = (body.placed["hand right"].far, body.placed["foot right"].far, head.at(0.0, 0.2))
    near = [one.joint for name, one in body.placed.items() if not name.endswith("left")]
    points = np.stack([*near, *ends]) - origin
    moved, posed = points.var(axis=1).sum(axis=0), points.var(axis=0).mean(axis=0)
    planes = {"side": [0, 1], "front": [1, 2], "above": [0, 2]}
    shown = {
        name: moved[axes].sum() * (END_ON + posed[axes].sum() / posed.sum())
        for name, axes in planes.items()
    }
    shown["side"] *= RATHER_SIDE
    view = max(VIEWS, key=lambda one: float(shown[one]))
    return Stage(movement, asked, build.stature_m, view, origin)


def flattened(points: Array, view: View) -> Array:
    """World points or directions (..., 3) as a view shows them, (..., 2)."""
    x, y, z = points[..., 0], points[..., 1], points[..., 2]
    across, up = {"side": (x, y), "front": (-z, y), "above": (z, x)}[view]
    flat: Array = np.stack((across, up), axis=-1)
    return flat


def limbs(body: Skeleton, frame: int) -> list[tuple[str, Array]]:
    """The lines of a posture, far side first: a side word, and points (K, 3)."""
    placed, marks = body.placed, body.marks
    found: list[tuple[str, Array]] = []
    for side in ("left", "right"):
        foot = placed[f"foot {side}"]
        heel = foot.at(-marks.heel_behind_ankle_m, -marks.ankle_height_m)
        toe = foot.at(foot.length_m - marks.heel_behind_ankle_m, -marks.ankle_height_m)
        thigh, shank = placed[f"thigh {side}"], placed[f"shank {side}"]
        upper, lower = placed[f"upper arm {side}"], placed[f"forearm {side}"]
        leg = (placed["pelvis"].joint, thigh.joint, thigh.far, shank.far, toe, heel, shank.far)
        hand = placed[f"hand {side}"]
        arm = (placed["head"].joint, upper.joint, upper.far, lower.far, hand.far)
        found += [(side, _at(leg, frame)), (side, _at(arm, frame))]
    spine = (placed["pelvis"].joint, placed["thorax"].joint, placed["head"].joint)
    return [*found, ("middle", _at(spine, frame))]


def _at(points: tuple[Array, ...], frame: int) -> Array:
    return np.stack([point[frame] for point in points])


def head_centre(stage: Stage, frame: int) -> Array:
    """Middle of the ring that stands for the head, on the sheet (2,)."""
    above = 1.35 * HEAD_RADIUS * stage.stature_m
    return stage.flat(stage.body.placed["head"].at(0.0, above)[frame], frame)
