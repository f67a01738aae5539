"""Planned against done: working sets and sessions of each week."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from setwright.handout.drawing import FAINT, INK, SOFT, STYLE, fitted, sheet
from setwright.training.facts.attendance import WeekKept

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SIZE = 8.0
# Weeks on one sheet.
WEEKS = 12
WEEK_IN, LEFT_IN, RIGHT_IN, HEAD_IN, FOOT_IN = 0.62, 0.55, 0.3, 0.75, 0.8
SETS_IN, SESSIONS_IN, BETWEEN_IN = 2.2, 0.8, 0.35


def done_picture(title: str, weeks: Sequence[WeekKept]) -> Figure:
    """Bars of the sets done inside the outline of those planned; below, the sessions.

    Args:
        title: what stands above.
        weeks: in order of time, at least one.

    Raises:
        ValueError: when there is no week.
    """
    from matplotlib import rc_context

    if not weeks:
        raise ValueError("a picture of what was done needs a week")
    width = max(LEFT_IN + len(weeks) * WEEK_IN + RIGHT_IN, 6.0)
    across = width - LEFT_IN - RIGHT_IN
    height = HEAD_IN + SETS_IN + BETWEEN_IN + SESSIONS_IN + FOOT_IN
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(width, height)
        upper = figure.add_axes(
            (
                LEFT_IN / width,
                (FOOT_IN + SESSIONS_IN + BETWEEN_IN) / height,
                across / width,
                SETS_IN / height,
            )
        )
        lower = figure.add_axes(
            (LEFT_IN / width, FOOT_IN / height, across / width, SESSIONS_IN / height)
        )
        _sets(upper, weeks)
        _sessions(lower, weeks)
        head = fitted(title, 13, width - 0.6, 1)[0]
        figure.text(0.3 / width, 1 - 0.32 / height, head, fontsize=13, va="center")
        _key(figure)
    return figure


def _sets(axes: Axes, weeks: Sequence[WeekKept]) -> None:
    at = range(len(weeks))
    axes.bar(at, [one.done_sets for one in weeks], width=0.62, color="0.35", zorder=2)
    axes.bar(
        at,
        [one.planned_sets for one in weeks],
        width=0.74,
        facecolor="none",
        edgecolor=INK,
        linewidth=0.9,
        zorder=3,
    )
    top = max(max(one.planned_sets, one.done_sets) for one in weeks)
    for place, one in enumerate(weeks):
        high = max(one.planned_sets, one.done_sets)
        axes.text(
            place,
            high + top * 0.02,
            f"{one.done_sets}/{one.planned_sets}",
            fontsize=SIZE,
            ha="center",
            va="bottom",
        )
    axes.set_ylim(0, max(top * 1.14, 1))
    axes.set_xticks([])
    axes.set_ylabel("working sets", fontsize=SIZE, family=STYLE["font.family"])
    _plain(axes, len(weeks))


def _sessions(axes: Axes, weeks: Sequence[WeekKept]) -> None:
    most = max(max(one.planned_sessions, one.done_sessions) for one in weeks)
    for place, one in enumerate(weeks):
        for number in range(max(one.planned_sessions, one.done_sessions)):
            axes.plot(
                place,
                number + 1,
                marker="o",
                markersize=5,
                color=INK,
                markerfacecolor="0.35" if number < one.done_sessions else "white",
                markeredgewidth=0.7,
            )
    axes.set_ylim(0.3, most + 0.7)
    axes.set_yticks([])
    axes.set_ylabel("sessions", fontsize=SIZE, family=STYLE["font.family"])
    axes.set_xticks(
        range(len(weeks)), [f"{one.monday.day} {one.monday:%b}" for one in weeks], fontsize=SIZE
    )
    _plain(axes, len(weeks))


def _plain(axes: Axes, weeks: int) -> None:
    axes.set_xlim(-0.6, weeks - 0.4)
    axes.tick_params(axis="both", labelsize=SIZE, length=0)
    axes.grid(axis="y", color=FAINT, linewidth=0.4)
    axes.set_axisbelow(True)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)


def _key(figure: Figure) -> None:
    from matplotlib.patches import Patch

    figure.legend(
        handles=[
            Patch(facecolor="none", edgecolor=INK, label="planned"),
            Patch(facecolor="0.35", edgecolor=SOFT, label="done"),
        ],
        loc="lower left",
        bbox_to_anchor=(0.02, 0.0),
        ncols=2,
        frameon=False,
        fontsize=SIZE,
    )
