"""What stands around a stick figure: its load, and the ground, seats and pads that carry it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from setwright.handout.drawing import FAINT, INK, PAPER, SOFT
from setwright.handout.stage import Stage, flattened, limbs
from setwright.mechanics.movement import FIXED
from setwright.mechanics.outer import load_forces, supports
from setwright.mechanics.points import Place, places
from setwright.mechanics.turns import Array

if TYPE_CHECKING:
    from matplotlib.axes import Axes

SEAT: Final = "seat"
PAD_AWAY: Final = 0.055
ARROW: Final = 0.17
# A support this near to the lowest point of the body stands on the ground.
GROUND: Final = 0.04
# Upright part of a thigh and pelvis from which they stand, of a pelvis from which it sits; level
# part of a trunk from which it lies.
STANDING, SITTING, LYING = 0.8, 0.5, 0.35


def draw_load(axes: Axes, stage: Stage, frame: int) -> None:
    """The load where it acts, with its direction; for bodyweight work the body's own."""
    movement, asked = stage.movement, stage.asked
    pulls = load_forces(movement, stage.body, stage.stature_m, asked.range_, 1.0)
    kinds = [one for one in movement.load if one.kind != "torque" for _ in _places(stage, one.at)]
    drawn: list[Array] = []
    for force, load in zip(pulls, kinds, strict=True):
        at = stage.flat(force.position[frame], frame)
        if any(np.hypot(*(at - other)) < 0.02 for other in drawn):
            continue
        drawn.append(at)
        towards = flattened(force.force[frame], stage.view)
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


def draw_supports(axes: Axes, stage: Stage, frame: int) -> None:
    """The ground, seat, pads and handholds."""
    size = stage.stature_m
    points = np.concatenate([stage.flat(line, frame) for _, line in limbs(stage.body, frame)])
    lowest = points[:, 1].min()
    for name in {*FIXED, SEAT} & set(stage.movement.support):
        if name == FIXED[1] or not _stands(stage, frame):
            _pad(axes, stage, name, frame)
    standing = bool({"feet", "foot"} & set(stage.movement.support))
    for place in supports(stage.movement, stage.body, size):
        at = stage.flat(place.position[frame], frame)
        if place.segment in ("pelvis", "thorax"):
            _rest(axes, stage, place, frame)
            continue
        ground = at[1] - lowest < GROUND or (standing and place.segment.startswith("foot"))
        if stage.view != "above" and ground:
            left, right = points[:, 0].min() - 0.1, points[:, 0].max() + 0.1
            axes.fill_between([left, right], at[1] - 0.05, at[1], facecolor=PAPER,
                              edgecolor=FAINT, hatch="/////", linewidth=0.0, zorder=1)  # fmt: skip
            axes.plot([left, right], [at[1], at[1]], color=SOFT, linewidth=1.2, zorder=1)
        else:
            axes.plot(*at, marker="s", markersize=8, color=SOFT, zorder=2)


def _rest(axes: Axes, stage: Stage, place: Place, frame: int) -> None:
    """A short pad that presses on the back; under the hips a seat is drawn instead."""
    segment = stage.body.placed[place.segment]
    here = place.position[frame]
    if np.allclose(here, segment.joint[frame]):
        return
    reach = 0.06 * stage.stature_m * segment.rotation[frame][:, 1]
    ends = stage.flat(np.stack((here - reach, here + reach)), frame)
    axes.plot(*ends.T, color=FAINT, linewidth=6, solid_capstyle="butt", zorder=1)


def _stands(stage: Stage, frame: int) -> bool:
    """Whether hips that something holds are over the legs, so that no seat can be under them."""
    thigh = stage.body.placed["thigh right"].rotation[frame][1, 1]
    return bool(thigh > STANDING and stage.body.placed["pelvis"].rotation[frame][1, 1] > STANDING)


def _pad(axes: Axes, stage: Stage, name: str, frame: int) -> None:
    """A seat under the hips, or a bench or pad along the trunk on the side that faces down."""
    segment = stage.body.placed["thorax" if name == FIXED[1] else "pelvis"]
    forward, axis = segment.rotation[frame][:, 0], segment.rotation[frame][:, 1]
    start = segment.joint[frame]
    if name == SEAT or (name == FIXED[0] and axis[1] > SITTING):
        ahead = forward * np.array([1.0, 0.0, 1.0])
        ahead *= 0.1 * stage.stature_m / np.linalg.norm(ahead)
        ends = np.stack((start - 0.6 * ahead, start + 1.4 * ahead))
        away = np.array([0.0, -1.0, 0.0])
    else:
        ends = np.stack((start, start + axis * segment.length_m))
        below = np.array([0.0, -1.0, 0.0]) + axis * axis[1]
        size = float(np.linalg.norm(below))
        away = below / size if size > LYING else -forward
    ends = stage.flat(ends + away * PAD_AWAY * stage.stature_m, frame)
    axes.plot(*ends.T, color=FAINT, linewidth=6, solid_capstyle="butt", zorder=1)
