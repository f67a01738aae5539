"""The blocks of the week's picture: an exercise or a superset, to scale."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.exercises import catalogue
from setwright.handout.drawing import INK, PAPER, SOFT, fitted
from setwright.handout.timeline import Block, Lane, Span
from setwright.handout.wording import rir_words, span
from setwright.plan.week import Session

if TYPE_CHECKING:
    from matplotlib.axes import Axes

INCHES_A_MINUTE = 0.135
# Shares of a column's width: the gap between columns, and the strip with the sets.
GAP, STRIP = 0.07, 0.07
SIZE = 8.0
GROUND = "0.95"
LINE_IN = SIZE * 1.22 / 72


def sides(column: int) -> tuple[float, float]:
    """Left and right edge of a column, in columns."""
    return column + GAP / 2, column + 1 - GAP / 2


def draw_block(
    axes: Axes,
    column: int,
    column_in: float,
    minute_in: float,
    session: Session,
    block: Block,
) -> None:
    """One exercise or superset of a column, to scale.

    Args:
        axes: days across, minutes down.
        column: which day.
        column_in: width of a column, inches.
        minute_in: height of a minute, inches.
        session: the day's session.
        block: what is drawn.
    """
    left, right = sides(column)
    _box(axes, left, right, block.whole, fill=GROUND, edge=INK, order=1)
    _box(
        axes,
        left,
        right,
        Span(block.whole.start_s, block.opens_s),
        fill=PAPER,
        hatch="....",
        edge=SOFT,
        order=2,
    )
    width = (right - left) / len(block.lanes)
    for place, lane in enumerate(block.lanes):
        start = left + place * width
        if place:
            axes.plot(
                [start, start],
                [block.opens_s / 60, block.whole.end_s / 60],
                color=SOFT,
                linewidth=0.6,
                linestyle=(0, (4, 2)),
                zorder=3,
            )
        _lane(axes, session, block, lane, (start, start + width), column_in, minute_in)


def _lane(
    axes: Axes,
    session: Session,
    block: Block,
    lane: Lane,
    edges: tuple[float, float],
    column_in: float,
    minute_in: float,
) -> None:
    from matplotlib.patheffects import withStroke

    left, right = edges
    strip = left + STRIP
    for warm in lane.warm_up:
        _box(axes, left, strip, warm, fill=PAPER, hatch="//////", edge=SOFT, order=3)
    for work in lane.sets:
        _box(axes, left, strip, work, fill="0.3", edge=INK, order=4)
    entry = session.exercises[lane.position]
    letter = f"{entry.superset}  " if entry.superset else ""
    room = (block.whole.end_s - block.opens_s) / 60 * minute_in
    most = max(int((room - 0.03) / LINE_IN), 1)
    width_in = (right - strip) * column_in - 0.1
    dose = f"{entry.sets} x {span(*entry.reps)}"
    lines = [dose, f"RIR {rir_words(entry)}"]
    if width_in > 1.4:
        lines = [f"{dose}, RIR {rir_words(entry)}"]
    room_for_name = min(max(most - len(lines), 1), 4)
    name = fitted(letter + catalogue.exercise(entry.exercise).name, SIZE, width_in, room_for_name)
    shown = [*name, *lines][:most]
    top = block.opens_s / 60 + 0.035 / minute_in
    had_s = 60 * session.minutes if session.minutes is not None else None
    crossed = had_s is not None and block.whole.start_s < had_s < block.whole.end_s
    for number, line in enumerate(shown):
        axes.text(
            strip + 0.02,
            top + number * LINE_IN / minute_in,
            line,
            fontsize=SIZE,
            va="top",
            color=INK if number < len(name) else "0.25",
            zorder=5,
            path_effects=[withStroke(linewidth=3, foreground=GROUND)] if crossed else None,
        )


def _box(
    axes: Axes,
    left: float,
    right: float,
    time: Span,
    fill: str,
    edge: str,
    order: int,
    hatch: str | None = None,
) -> None:
    from matplotlib.patches import Rectangle

    axes.add_patch(
        Rectangle(
            (left, time.start_s / 60),
            right - left,
            (time.end_s - time.start_s) / 60,
            facecolor=fill,
            edgecolor=edge,
            linewidth=0.6,
            hatch=hatch,
            zorder=order,
        )
    )
