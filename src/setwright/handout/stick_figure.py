"""A posture as lines and joints, with its load and what carries it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.handout.drawing import INK, PAPER, SOFT
from setwright.handout.stage import HEAD_RADIUS, Stage, head_centre, limbs
from setwright.handout.stage_props import draw_load, draw_supports

if TYPE_CHECKING:
    from matplotlib.axes import Axes


def draw_posture(axes: Axes, stage: Stage, frame: int) -> None:
    """Draw one posture with its supports and its load."""
    from matplotlib.patches import Circle

    draw_supports(axes, stage, frame)
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
    draw_load(axes, stage, frame)
