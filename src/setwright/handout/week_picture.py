"""The week as a picture: days side by side on one scale of minutes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.handout.drawing import FAINT, INK, PAPER, SOFT, STYLE, bare, fitted, sheet
from setwright.handout.timeline import blocks
from setwright.handout.week_blocks import GAP, INCHES_A_MINUTE, SIZE, draw_block, sides
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal, RehearsedSession

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure
    from matplotlib.text import Text

COLUMN_IN = 2.35
LEFT_IN, RIGHT_IN, TOP_IN, BOTTOM_IN = 0.6, 0.2, 0.9, 0.55
ROOM_BELOW_MIN = 2.5
# Day and name above the columns, and the minutes to be had below, from the end of the scale.
DAY_IN, NAME_IN, BELOW_IN = 0.2565, 0.081, 0.047
LANES_A_COLUMN = 2
# What the name of a session may take of its column; its minutes stand beside it.
NAME_SHARE = 0.66


def week_picture(
    plan: Plan,
    rehearsal: Rehearsal,
    width_in: float | None = None,
    height_in: float | None = None,
) -> Figure:
    """Each session a column; exercises to scale, superset partners side by side.

    In a block the dark marks are working sets, the hatched band is warm-up, the dotted strip at
    its top is the change-over, and the white between the marks is rest.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed.
        width_in: of the whole picture, inches; None gives every day its usual width.
        height_in: the most it may be high, inches; long sessions are drawn on a smaller scale
            then, with words of the same size.
    """
    from matplotlib import rc_context

    longest = max(
        max(lived.total_s / 60, session.minutes or 0)
        for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True)
    )
    minutes = longest + ROOM_BELOW_MIN
    drawn = [
        blocks(session, lived)
        for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True)
    ]
    lanes = max(len(block.lanes) for row in drawn for block in row)
    column_in = COLUMN_IN * max(1.0, lanes / LANES_A_COLUMN)
    if width_in is not None:
        column_in = (width_in - LEFT_IN - RIGHT_IN) / len(plan.sessions)
    width = LEFT_IN + column_in * len(plan.sessions) + RIGHT_IN
    minute_in = INCHES_A_MINUTE
    if height_in is not None:
        minute_in = min(minute_in, (height_in - TOP_IN - BOTTOM_IN) / minutes)
    height = TOP_IN + minute_in * minutes + BOTTOM_IN
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(max(width, 5.6), height)
        axes = figure.add_axes(
            (
                LEFT_IN / figure.get_figwidth(),
                BOTTOM_IN / height,
                column_in * len(plan.sessions) / figure.get_figwidth(),
                minute_in * minutes / height,
            )
        )
        axes.set_xlim(0, len(plan.sessions))
        axes.set_ylim(minutes, 0)
        bare(axes)
        axes.set_xticks([])
        ticks = [float(tick) for tick in range(0, int(minutes) + 1, 10)]
        axes.set_yticks(ticks, [f"{tick:.0f}" for tick in ticks], fontsize=SIZE)
        for tick in ticks:
            axes.axhline(tick, color=FAINT, linewidth=0.5, zorder=0)
        axes.text(
            0, -NAME_IN / minute_in, "min ", fontsize=SIZE, color=SOFT, ha="right", va="bottom"
        )
        for column, (session, lived, row) in enumerate(
            zip(plan.sessions, rehearsal.sessions, drawn, strict=True)
        ):
            _column(axes, column, column_in, minute_in, session, lived)
            for block in row:
                draw_block(axes, column, column_in, minute_in, session, block)
        figure.text(
            LEFT_IN / figure.get_figwidth(),
            1 - 0.3 / height,
            fitted(plan.title, 13, figure.get_figwidth() - 1.0, 1)[0],
            fontsize=13,
            va="center",
        )
        _key(figure)
    return figure


def _column(
    axes: Axes,
    column: int,
    column_in: float,
    minute_in: float,
    session: Session,
    lived: RehearsedSession,
) -> None:
    left, right = sides(column)
    width_in = (right - left) * column_in
    day = session.day.capitalize()
    axes.text(left, -DAY_IN / minute_in, day, fontsize=9.5, fontweight="bold", va="bottom")
    at = -NAME_IN / minute_in
    name = fitted(session.name, SIZE, width_in * NAME_SHARE, 1)[0]
    put = axes.text(left, at, name, fontsize=SIZE, va="bottom", color=INK)
    _cut(put, width_in * NAME_SHARE)
    total = f"{lived.total_s / 60:.0f} min"
    axes.text(right, at, total, fontsize=SIZE, va="bottom", ha="right", color=INK)
    if session.minutes is not None:
        axes.plot(
            [left - GAP / 2, right + GAP / 2], [session.minutes] * 2, color=INK, linewidth=1.6
        )
        axes.text(
            right, max(session.minutes, lived.total_s / 60) + BELOW_IN / minute_in,
            f"{session.minutes} min to be had",
            fontsize=SIZE - 0.5, va="top", ha="right", style="italic",
        )  # fmt: skip


def _cut(put: Text, width_in: float) -> None:
    """Shorten words of wide letters, which an estimate by number of letters lets stand."""
    words = put.get_text().removesuffix("…")
    while len(words) > 1 and put.get_window_extent().width / put.figure.dpi > width_in:
        words = words[:-1]
        put.set_text(f"{words.rstrip()}…")


def _key(figure: Figure) -> None:
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    handles = [
        Patch(facecolor="0.3", edgecolor=INK, label="working set"),
        Patch(facecolor="0.95", edgecolor=INK, label="rest"),
        Patch(facecolor=PAPER, edgecolor=SOFT, hatch="//////", label="warm-up"),
        Patch(facecolor=PAPER, edgecolor=SOFT, hatch="....", label="change-over"),
        Line2D([0], [0], color=INK, linewidth=1.6, label="minutes to be had"),
    ]
    wide = figure.get_figwidth() > 7
    figure.legend(
        handles=handles,
        loc="lower left",
        bbox_to_anchor=(LEFT_IN / figure.get_figwidth() - 0.01, 0.0),
        ncols=5 if wide else 3,
        frameon=False,
        fontsize=SIZE,
        handlelength=1.6,
    )
