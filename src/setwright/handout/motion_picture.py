"""A movement as a picture: parts along the range, moments, strength, and three postures."""

from __future__ import annotations

from typing import TYPE_CHECKING, Final

import numpy as np

from setwright.anatomy.atlas import part
from setwright.exercises.for_body import ForBody, PartRow
from setwright.handout.drawing import INK, SOFT, STYLE, bare, fitted, sheet
from setwright.handout.for_body_text import body_words, load_words
from setwright.handout.stage import HEAD_RADIUS, VIEWS, Stage, head_centre, limbs, stage
from setwright.handout.stick_figure import draw_posture
from setwright.mechanics.turns import Array

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SIZE: Final = 8.0
MOST_PARTS: Final = 14
MOST_JOINTS: Final = 4
ROW_IN: Final = 0.3
SIDE_IN, NAMES_IN, RANGE_IN, FIGURES_IN, GAP_IN = 0.3, 2.3, 2.9, 1.15, 0.75
CURVES_IN: Final = 2.35
TOP_IN, BOTTOM_IN, KEY_IN, HEAD_IN = 1.0, 0.35, 0.7, 0.5
POSTURES_IN: Final = (1.0, 3.0)
LEAST_ROWS: Final = 10
WIDTH_IN: Final = SIDE_IN * 2 + NAMES_IN + RANGE_IN + FIGURES_IN + GAP_IN + CURVES_IN
# A row is as high as this span of fibre length ratio.
RATIO_SPAN: Final = 1.1
THIN, THICK = 0.5, 6.0
FINE: Final = 121
# The strength curve is cut where it is this many times the load of the set.
CUT: Final = 3.0
ONE_SET: Final = "one set near its limit"
KEY: Final = (
    "thicker, darker: more active.  Line above the dots: fibres longer than optimal, below: "
    "shorter.  Bold: ends the set.",
    "length: fibre length over optimal length where the part is loaded.  long, short: the working "
    "muscles.  Dashed: sticking point.",
)
DASHES: Final = ("-", (0, (5, 2)), (0, (1.5, 1.5)), (0, (6, 2, 1.5, 2)))


def motion_picture(found: ForBody, title: str) -> Figure:
    """One movement for one body.

    A row is a part: its line is as high as its fibres are long (dotted: optimal length) and as
    thick and dark as it is active. Beside it stand the moments at the joints and the largest load
    at each point of the range; below, the body where the muscles are long, at the sticking point
    and where they are short.

    Args:
        found: the movement, computed.
        title: the name on top.
    """
    from matplotlib import rc_context

    rows = found.parts[:MOST_PARTS]
    high = ROW_IN * max(len(rows), LEAST_ROWS)
    drawn = stage(found.movement, found.effort.asked, found.build)
    shown = _points_shown(found)
    extent = _extent(drawn, [frame for frame, _ in shown])
    wide = (WIDTH_IN - 2 * SIDE_IN) / len(shown)
    tall = float(np.clip(wide * np.ptp(extent[1]) / np.ptp(extent[0]), *POSTURES_IN))
    below = BOTTOM_IN + tall + HEAD_IN + KEY_IN
    height = TOP_IN + high + below
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(WIDTH_IN, height)

        def box(left: float, bottom: float, across: float, up: float) -> Axes:
            return figure.add_axes(
                (left / WIDTH_IN, bottom / height, across / WIDTH_IN, up / height)
            )

        left = SIDE_IN + NAMES_IN
        _parts(box(left, below + high - ROW_IN * len(rows), RANGE_IN, ROW_IN * len(rows)), rows,
               found)  # fmt: skip
        left += RANGE_IN + FIGURES_IN + GAP_IN
        each = (high - 0.75) / 2
        _moments(box(left, below + each + 0.75, CURVES_IN, each), found)
        _strength(box(left, below, CURVES_IN, each), found)
        for line, words in enumerate(KEY):
            figure.text(SIDE_IN / WIDTH_IN, (below - 0.4 - 0.17 * line) / height, words,
                        fontsize=SIZE - 0.5, color=SOFT, va="center")  # fmt: skip
        for column, (frame, words) in enumerate(shown):
            axes = box(SIDE_IN + column * wide, BOTTOM_IN, wide, tall)
            _posture(axes, drawn, frame, extent)
            axes.set_title(words, fontsize=SIZE + 0.5, pad=6)
        left_edge = SIDE_IN / WIDTH_IN
        seen, body = _seen_words(found, drawn), f"computed for {body_words(found)}; {ONE_SET}"
        figure.text(left_edge, 0.16 / height, seen, fontsize=SIZE - 0.5, color=SOFT, va="center")
        figure.text(left_edge, 1 - 0.58 / height, body, fontsize=SIZE, color=SOFT, va="center")
        words = fitted(title, 13, WIDTH_IN - 2 * SIDE_IN, 1)[0]
        figure.text(left_edge, 1 - 0.32 / height, words, fontsize=13, va="center")
    return figure


def _range_axis(axes: Axes, found: ForBody) -> None:
    """The range across, long to short, with the sticking point."""
    axes.set_xlim(0, 1)
    axes.set_xticks([0, 1], ["long", "short"], fontsize=SIZE)
    left, right = axes.get_xticklabels()
    left.set_horizontalalignment("left")
    right.set_horizontalalignment("right")
    axes.tick_params(length=0)
    axes.axvline(found.hardest, color=SOFT, linewidth=0.8, linestyle=(0, (4, 3)), zorder=1)


def _parts(axes: Axes, rows: tuple[PartRow, ...], found: ForBody) -> None:
    from matplotlib.collections import LineCollection

    bare(axes)
    _range_axis(axes, found)
    axes.set_ylim(max(len(rows), 1), 0)
    axes.set_yticks([])
    range_ = found.effort.asked.range_
    fine = np.linspace(0.0, 1.0, FINE)
    per_in = 1.0 / RANGE_IN
    columns = ((0.5, "share"), (1.05, "length"))
    for inches, words in columns:
        axes.text(1 + inches * per_in, -0.12, words, fontsize=SIZE, ha="right", va="bottom",
                  color=SOFT)  # fmt: skip
    side = "left" if found.hardest < 0.3 else "right" if found.hardest > 0.7 else "center"
    axes.text(found.hardest, -0.12, "sticking point", fontsize=SIZE, color=SOFT, va="bottom",
              ha=side)  # fmt: skip
    for row, one in enumerate(rows):
        middle = row + 0.5
        axes.plot([0, 1], [middle, middle], color=SOFT, linewidth=0.6, linestyle=(0, (1, 2)),
                  zorder=1)  # fmt: skip
        ratio = np.interp(fine, range_, one.ratio)
        line = np.stack((fine, middle - (ratio - 1.0) / RATIO_SPAN), axis=-1)
        active = np.interp((fine[:-1] + fine[1:]) / 2, range_, one.along)
        # Each stroke runs on under the next, so that no seam shows.
        until = np.minimum(np.arange(2, FINE + 1), FINE - 1)
        strokes = LineCollection(
            list(np.stack((line[:-1], line[until]), axis=1)),
            linewidths=THIN + (THICK - THIN) * active,
            colors=[str(0.78 - 0.7 * a) for a in np.clip(active, 0, 1)],
            capstyle="butt",
            zorder=3,
            clip_on=False,
        )
        axes.add_collection(strokes)
        bold = "bold" if one.part in found.ends else "normal"
        axes.text(-0.12 * per_in, middle, part(one.part).name, fontsize=SIZE, ha="right",
                  va="center", fontweight=bold)  # fmt: skip
        figures = (f"{one.share:.2f}", f"{one.loaded_ratio:.2f}")
        for (inches, _), words in zip(columns, figures, strict=True):
            axes.text(1 + inches * per_in, middle, words, fontsize=SIZE, ha="right", va="center")


def _moments(axes: Axes, found: ForBody) -> None:
    """Moments the muscles hold at the largest joints."""
    _boxed(axes, found, "joint moments, N·m (limbs: one side)")
    joints = found.joints[:MOST_JOINTS]
    for joint, dash in zip(joints, DASHES, strict=False):
        axes.plot(found.effort.asked.range_, joint.along, color=INK, linewidth=1.3, linestyle=dash,
                  label=joint.action)  # fmt: skip
    axes.set_ylim(0, 1.45 * max(joint.moment for joint in joints))
    tight = {"borderaxespad": 0.1, "columnspacing": 0.8, "labelspacing": 0.3, "handletextpad": 0.5}
    axes.legend(
        loc="upper right", fontsize=SIZE - 1.5, frameon=False, ncols=2, handlelength=2.0, **tight
    )


def _strength(axes: Axes, found: ForBody) -> None:
    """The largest load at each point of the range, and the load of the set."""
    unit = "× body" if found.unit == "bodyweights" else found.unit
    _boxed(axes, found, f"largest load that can be held, {unit}")
    strongest = found.effort.strongest
    top = CUT * found.load
    axes.plot(found.effort.asked.range_, np.minimum(strongest, 2 * top), color=INK, linewidth=1.6)
    axes.axhline(found.load, color=INK, linewidth=1.1, linestyle=(0, (5, 2)))
    at, side = (0.98, "right") if found.hardest < 0.5 else (0.02, "left")
    past = "\nspeed carries it past the dot" if strongest.min() < found.load else ""
    axes.text(at, found.load - 0.03 * top, f"the set: {load_words(found)}{past}", fontsize=SIZE,
              ha=side, va="top")  # fmt: skip
    axes.plot(
        [found.hardest], [strongest.min()], marker="o", markersize=5, color=INK, clip_on=False
    )
    axes.set_ylim(0, top)


def _boxed(axes: Axes, found: ForBody, title: str) -> None:
    _range_axis(axes, found)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    axes.locator_params(axis="y", nbins=4)
    axes.tick_params(axis="y", labelsize=SIZE)
    axes.set_title(title, fontsize=SIZE, loc="left", color=INK, pad=4)


def _points_shown(found: ForBody) -> list[tuple[int, str]]:
    """The points of the range that are drawn, and what they are called."""
    last = len(found.effort.asked.range_) - 1
    at = found.effort.sticking
    first, end = "muscles long", "muscles short"
    if at <= 1:
        return [(0, f"{first}: sticking point"), (last // 2, "halfway"), (last, end)]
    if at >= last - 1:
        return [(0, first), (last // 2, "halfway"), (last, f"{end}: sticking point")]
    return [(0, first), (at, "sticking point"), (last, end)]


def _posture(axes: Axes, drawn: Stage, frame: int, extent: Array) -> None:
    bare(axes)
    axes.set_xticks([])
    axes.set_yticks([])
    draw_posture(axes, drawn, frame)
    axes.set_xlim(*extent[0])
    axes.set_ylim(*extent[1])
    axes.set_aspect("equal", adjustable="box")


def _seen_words(found: ForBody, drawn: Stage) -> str:
    kinds = {load.kind for load in found.movement.load}
    words = [f"seen {VIEWS[drawn.view]}"]
    if "weight" in kinds:
        words.append("black dot: the load")
    if "pull" in kinds:
        words.append("arrow: the pull of the load")
    if "torque" in kinds:
        words.append("ring: the joint the machine turns about")
    if found.movement.bodyweight:
        words.append("white dot with an arrow: the body's weight")
    return ";  ".join(words)


def _extent(drawn: Stage, frames: list[int]) -> Array:
    """Lowest and highest, across and up, of the postures with room about them, (2, 2)."""
    lines = [drawn.flat(line, frame) for frame in frames for _, line in limbs(drawn.body, frame)]
    radius = HEAD_RADIUS * drawn.stature_m
    heads = np.stack([head_centre(drawn, frame) for frame in frames])
    points = np.concatenate((*lines, heads - radius, heads + radius))
    room = 0.06 * drawn.stature_m
    return np.stack((points.min(axis=0) - room, points.max(axis=0) + room), axis=-1)
