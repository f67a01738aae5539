"""The week as a picture: days side by side on one scale of minutes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.exercises import catalogue
from setwright.handout.drawing import FAINT, INK, PAPER, SOFT, STYLE, bare, fitted, sheet
from setwright.handout.timeline import Block, Lane, Span, blocks
from setwright.handout.wording import rir_words, span
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal, RehearsedSession

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

COLUMN_IN = 2.35
LEFT_IN, RIGHT_IN, TOP_IN, BOTTOM_IN = 0.6, 0.2, 0.9, 0.55
INCHES_A_MINUTE = 0.135
ROOM_BELOW_MIN = 2.5
# Shares of a column's width: the gap between columns, and the strip with the sets.
GAP, STRIP = 0.07, 0.07
SIZE = 8.0
LINE_IN = SIZE * 1.22 / 72


def week_picture(plan: Plan, rehearsal: Rehearsal) -> Figure:
    """Each session a column; exercises to scale, superset partners side by side.

    In a block the dark marks are working sets, the hatched band is warm-up, the dotted strip at
    its top is the change-over, and the white between the marks is rest.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed.
    """
    from matplotlib import rc_context

    longest = max(
        max(lived.total_s / 60, session.minutes or 0)
        for session, lived in zip(plan.sessions, rehearsal.sessions, strict=True)
    )
    minutes = longest + ROOM_BELOW_MIN
    width = LEFT_IN + COLUMN_IN * len(plan.sessions) + RIGHT_IN
    height = TOP_IN + INCHES_A_MINUTE * minutes + BOTTOM_IN
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(max(width, 5.6), height)
        axes = figure.add_axes(
            (
                LEFT_IN / figure.get_figwidth(),
                BOTTOM_IN / height,
                COLUMN_IN * len(plan.sessions) / figure.get_figwidth(),
                INCHES_A_MINUTE * minutes / height,
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
        axes.text(0, -0.6, "min ", fontsize=SIZE, color=SOFT, ha="right", va="bottom")
        for column, (session, lived) in enumerate(
            zip(plan.sessions, rehearsal.sessions, strict=True)
        ):
            _column(axes, column, session, lived)
        figure.text(
            LEFT_IN / figure.get_figwidth(),
            1 - 0.3 / height,
            fitted(plan.title, 13, figure.get_figwidth() - 1.0, 1)[0],
            fontsize=13,
            va="center",
        )
        _key(figure)
    return figure


def _column(axes: Axes, column: int, session: Session, lived: RehearsedSession) -> None:
    left, right = column + GAP / 2, column + 1 - GAP / 2
    width_in = (right - left) * COLUMN_IN
    day = session.day.capitalize()
    axes.text(left, -1.9, day, fontsize=9.5, fontweight="bold", va="bottom")
    name = fitted(session.name, SIZE, width_in * 0.66, 1)[0]
    axes.text(left, -0.6, name, fontsize=SIZE, va="bottom", color=INK)
    total = f"{lived.total_s / 60:.0f} min"
    axes.text(right, -0.6, total, fontsize=SIZE, va="bottom", ha="right", color=INK)
    for block in blocks(session, lived):
        _block(axes, session, block, left, right)
    if session.minutes is not None:
        axes.plot(
            [left - GAP / 2, right + GAP / 2], [session.minutes] * 2, color=INK, linewidth=1.6
        )
        axes.text(
            right, session.minutes + 0.35, f"{session.minutes} min to be had",
            fontsize=SIZE - 0.5, va="top", ha="right", style="italic",
        )  # fmt: skip


def _block(axes: Axes, session: Session, block: Block, left: float, right: float) -> None:
    _box(axes, left, right, block.whole, fill="0.95", edge=INK, order=1)
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
        _lane(axes, session, block, lane, start, start + width)


def _lane(
    axes: Axes, session: Session, block: Block, lane: Lane, left: float, right: float
) -> None:
    strip = left + STRIP
    for warm in lane.warm_up:
        _box(axes, left, strip, warm, fill=PAPER, hatch="//////", edge=SOFT, order=3)
    for work in lane.sets:
        _box(axes, left, strip, work, fill="0.3", edge=INK, order=4)
    entry = session.exercises[lane.position]
    letter = f"{entry.superset}  " if entry.superset else ""
    room = (block.whole.end_s - block.opens_s) / 60 * INCHES_A_MINUTE
    most = max(int((room - 0.03) / LINE_IN), 1)
    width_in = (right - strip) * COLUMN_IN - 0.1
    dose = f"{entry.sets} x {span(*entry.reps)}"
    lines = [dose, f"RIR {rir_words(entry)}"]
    if width_in > 1.4:
        lines = [f"{dose}, RIR {rir_words(entry)}"]
    name = fitted(letter + catalogue.exercise(entry.exercise).name, SIZE, width_in, 3)
    if len(name) + len(lines) > most:
        name = name[: max(most - 1, 1)]
    shown = [*name, *lines][:most]
    top = block.opens_s / 60 + 0.035 / INCHES_A_MINUTE
    for number, line in enumerate(shown):
        axes.text(
            strip + 0.02,
            top + number * LINE_IN / INCHES_A_MINUTE,
            line,
            fontsize=SIZE,
            va="top",
            color=INK if number < len(name) else "0.25",
            zorder=5,
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
