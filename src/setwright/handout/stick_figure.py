"""A posture as lines and joints, with its load and what carries it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final, Literal

import numpy as np

from setwright.handout.drawing import FAINT, INK, PAPER, SOFT
from setwright.mechanics.body import Build
from setwright.mechanics.movement import FIXED, Movement
from setwright.mechanics.outer import load_forces, support_centre, supports
from setwright.mechanics.outer_moments import Asked
from setwright.mechanics.skeleton import Skeleton
from setwright.mechanics.turns import Array

if TYPE_CHECKING:
    from matplotlib.axes import Axes

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
PAD_AWAY: Final = 0.055
ARROW: Final = 0.17
# A support this near to the lowest point of the body stands on the ground.
GROUND: Final = 0.04
# Upright part of a thigh or pelvis from which it stands rather than sits or lies.
STANDING: Final = 0.8


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
        return _flat(points - self.origin[frame], self.view)


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


def _flat(points: Array, view: View) -> Array:
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


def draw_posture(axes: Axes, stage: Stage, frame: int) -> None:
    """Draw one posture with its supports and its load."""
    from matplotlib.patches import Circle

    _supports(axes, stage, frame)
    behind = stage.view == "side" or stage.movement.side == "one"
    for side, points in limbs(stage.body, frame):
        flat = stage.flat(points, frame)
        faint = side == "left" and behind
        colour, width, level = (SOFT, 1.0, 3) if faint else (INK, 2.2, 5)
        axes.plot(*flat.T, color=colour, linewidth=width, solid_capstyle="round",
                  solid_joinstyle="round", zorder=level)  # fmt: skip
        axes.plot(*flat[1:4].T, linestyle="none", marker="o", markersize=width * 1.6,
                  markerfacecolor=PAPER, markeredgecolor=colour, markeredgewidth=0.9,
                  zorder=level + 1)  # fmt: skip
    centre = tuple(head_centre(stage, frame))
    radius = HEAD_RADIUS * stage.stature_m
    axes.add_patch(Circle(centre, radius, fill=False, edgecolor=INK, linewidth=1.6, zorder=5))
    _load(axes, stage, frame)


def head_centre(stage: Stage, frame: int) -> Array:
    """Middle of the ring that stands for the head, on the sheet (2,)."""
    above = 1.35 * HEAD_RADIUS * stage.stature_m
    return stage.flat(stage.body.placed["head"].at(0.0, above)[frame], frame)


def _load(axes: Axes, stage: Stage, frame: int) -> None:
    movement, asked = stage.movement, stage.asked
    pulls = load_forces(movement, stage.body, stage.stature_m, asked.range_, 1.0)
    kinds = [one for one in movement.load if one.kind != "torque" for _ in _places(stage, one.at)]
    drawn: list[Array] = []
    for force, load in zip(pulls, kinds, strict=True):
        at = stage.flat(force.position[frame], frame)
        if any(np.hypot(*(at - other)) < 0.02 for other in drawn):
            continue
        drawn.append(at)
        towards = _flat(force.force[frame], stage.view)
        size = float(np.linalg.norm(force.force[frame]))
        _arrow(axes, at, towards / (size or 1.0) * ARROW * stage.stature_m)
        if load.pulley is not None:
            cable = np.stack((at, stage.flat(np.array(load.pulley), frame)))
            axes.plot(*cable.T, color=SOFT, linewidth=0.8, linestyle=(0, (4, 3)), zorder=2)
        if load.kind == "weight":
            axes.plot(*at, marker="o", markersize=9, color=INK, zorder=7)
    for load in movement.load:
        if load.kind == "torque" and load.about is not None:
            _turn(axes, stage, load.about, frame)
    if movement.bodyweight:
        total = sum(one.mass_kg for one in stage.body.placed.values())
        centre = sum(one.mass_kg * one.centre[frame] for one in stage.body.placed.values()) / total
        at = stage.flat(np.asarray(centre), frame)
        axes.plot(*at, marker="o", markersize=6, markerfacecolor=PAPER, markeredgecolor=INK,
                  markeredgewidth=1.2, zorder=7)  # fmt: skip
        _arrow(axes, at, np.array([0.0, -ARROW * stage.stature_m]))


def _places(stage: Stage, at: str | None) -> tuple[int, ...]:
    from setwright.mechanics.points import places

    here = len(places(stage.body, str(at), stage.stature_m))
    return tuple(range(1 if stage.movement.side == "one" else here))


def _arrow(axes: Axes, start: Array, along: Array) -> None:
    if np.hypot(*along) < 0.03:
        return
    axes.annotate(
        "", xy=tuple(start + along), xytext=tuple(start),
        arrowprops={"arrowstyle": "-|>", "color": INK, "linewidth": 1.1, "shrinkA": 0,
                    "shrinkB": 0, "mutation_scale": 9}, zorder=7,
    )  # fmt: skip


_JOINTS: Final = {"hip": "thigh right", "knee": "shank right", "ankle": "foot right",
                  "trunk": "thorax", "neck": "head", "arm": "upper arm right",
                  "elbow": "forearm right", "forearm": "forearm right", "wrist": "hand right",
                  "finger": "hand right", "scapula": "upper arm right"}  # fmt: skip


def _turn(axes: Axes, stage: Stage, about: str, frame: int) -> None:
    """A ring round the joint that a machine turns."""
    segment = _JOINTS[about.removeprefix("other ").split()[0]]
    at = stage.flat(stage.body.placed[segment].joint[frame], frame)
    axes.plot(*at, marker="o", markersize=17, fillstyle="none", markeredgecolor=INK,
              markeredgewidth=1.2, zorder=7)  # fmt: skip
    axes.plot(*at, marker="o", markersize=5, color=INK, zorder=7)


def _supports(axes: Axes, stage: Stage, frame: int) -> None:
    size = stage.stature_m
    points = np.concatenate([stage.flat(line, frame) for _, line in limbs(stage.body, frame)])
    lowest = points[:, 1].min()
    for name in set(FIXED) & set(stage.movement.support):
        if not (name == "pelvis" and _stands(stage, frame)):
            _pad(axes, stage, name, frame)
    standing = bool({"feet", "foot"} & set(stage.movement.support))
    for place in supports(stage.movement, stage.body, size):
        at = stage.flat(place.position[frame], frame)
        ground = at[1] - lowest < GROUND or (standing and place.segment.startswith("foot"))
        if stage.view != "above" and ground:
            left, right = points[:, 0].min() - 0.1, points[:, 0].max() + 0.1
            axes.fill_between([left, right], at[1] - 0.05, at[1], facecolor=PAPER,
                              edgecolor=FAINT, hatch="/////", linewidth=0.0, zorder=1)  # fmt: skip
            axes.plot([left, right], [at[1], at[1]], color=SOFT, linewidth=1.2, zorder=1)
        else:
            axes.plot(*at, marker="s", markersize=8, color=SOFT, zorder=2)


def _stands(stage: Stage, frame: int) -> bool:
    """Whether hips that something holds are over the legs, so that no seat can be under them."""
    thigh = stage.body.placed["thigh right"].rotation[frame][1, 1]
    return bool(thigh > STANDING and stage.body.placed["pelvis"].rotation[frame][1, 1] > STANDING)


def _pad(axes: Axes, stage: Stage, name: str, frame: int) -> None:
    """A seat under the hips, or a bench or pad along the trunk on the side that faces down."""
    segment = stage.body.placed["pelvis" if name == "pelvis" else "thorax"]
    axis = segment.rotation[frame][:, 1]
    down = np.array([0.0, -1.0, 0.0])
    sideways = down - axis * (down @ axis)
    lying = np.linalg.norm(sideways) > 0.35
    behind = -segment.rotation[frame][:, 0]
    away = sideways / np.linalg.norm(sideways) if lying else behind
    start = segment.joint[frame]
    if name == "pelvis" and not lying:
        ahead = 0.1 * stage.stature_m * segment.rotation[frame][:, 0]
        ends = np.stack((start - 0.6 * ahead, start + 1.4 * ahead))
        ends = ends + down * PAD_AWAY * stage.stature_m
    else:
        far = start + axis * segment.length_m
        ends = np.stack((start, far)) + away * PAD_AWAY * stage.stature_m
    axes.plot(*stage.flat(ends, frame).T, color=FAINT, linewidth=6, solid_capstyle="butt", zorder=1)
