"""What each part gets in the week, against its target."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from setwright.anatomy.model import Part
from setwright.handout.drawing import FAINT, INK, PAPER, SOFT, STYLE, bare, fitted, sheet
from setwright.handout.parts_rows import HEAD_ROWS, MUSCLE_GAP_ROWS, groups, halves, rows_of
from setwright.handout.wording import number
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.response.model import WeekResponse
from setwright.response.targets import Band, bands

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

SIZE = 8.0
ROW_IN = 0.175
NAMES_IN, BARS_IN, GAP_IN, SIDE_IN = 2.15, 2.5, 0.4, 0.3
TOP_IN, BOTTOM_IN = 0.8, 0.6
TITLE = "fractional sets a week"


def parts_picture(plan: Plan, response: WeekResponse, intake: Intake | None = None) -> Figure:
    """Fractional weekly sets of every part as bars, grouped by muscle, in two columns.

    A bracket above a bar spans the least and the most the person's aims ask for, a notch in it
    marks where the dose is a sound one. A bar is dark inside its band, hatched below it and
    dotted above it, so that nothing hangs on colour. Parts that nobody aims at have no bracket,
    and are shown only when they can be trained directly or get something.

    Args:
        plan: the week.
        response: the response to it.
        intake: the person's aims; without it every aim is the usual one.
    """
    from matplotlib import rc_context

    weekly = dict(zip(response.parts, response.weekly_sets.tolist(), strict=True))
    targets = {ident: band for ident, band in bands(intake).items() if band.least > 0}
    left, right = halves(groups(weekly, targets))
    rows = max(rows_of(left), rows_of(right))
    width = 2 * (NAMES_IN + BARS_IN + SIDE_IN) + GAP_IN
    height = TOP_IN + rows * ROW_IN + BOTTOM_IN
    most = max([*weekly.values(), *(band.most for band in targets.values()), 1.0]) * 1.06
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(width, height)
        for column, chosen in enumerate((left, right)):
            start = SIDE_IN + column * (NAMES_IN + BARS_IN + GAP_IN) + NAMES_IN
            axes = figure.add_axes(
                (start / width, BOTTOM_IN / height, BARS_IN / width, rows * ROW_IN / height)
            )
            _column(axes, chosen, weekly, targets, rows, most)
        title = fitted(f"{plan.title}: {TITLE}", 13, width - 2 * SIDE_IN, 1)[0]
        figure.text(SIDE_IN / width, 1 - 0.32 / height, title, fontsize=13, va="center")
        _key(figure)
    return figure


def _column(
    axes: Axes,
    chosen: list[tuple[str, list[Part]]],
    weekly: Mapping[str, float],
    targets: Mapping[str, Band],
    rows: float,
    most: float,
) -> None:
    axes.set_xlim(0, most)
    axes.set_ylim(rows, 0)
    bare(axes)
    axes.set_yticks([])
    step = next(one for one in (2, 5, 10, 20, 50, 100, 1000) if most / one <= 6)
    ticks = [float(tick) for tick in range(0, int(most) + 1, step)]
    axes.set_xticks(ticks, [number(tick) for tick in ticks], fontsize=SIZE)
    axes.tick_params(axis="x", labelbottom=True, labeltop=True)
    for tick in ticks:
        axes.axvline(tick, color=FAINT, linewidth=0.5, zorder=0)
    axes.axvline(0, color=SOFT, linewidth=0.8, zorder=1)
    at = 0.0
    per_in = most / BARS_IN
    for name, members in chosen:
        if len(members) > 1:
            _label(axes, -NAMES_IN * per_in, at + 0.5, name, bold=True)
            at += HEAD_ROWS
        for one in members:
            indent = 0.12 if len(members) > 1 else 0.0
            _label(axes, (indent - NAMES_IN) * per_in, at + 0.5, one.name, bold=len(members) == 1)
            _bar(axes, at, weekly.get(one.id, 0.0), targets.get(one.id))
            at += 1
        at += MUSCLE_GAP_ROWS


def _label(axes: Axes, x: float, y: float, words: str, bold: bool) -> None:
    axes.text(
        x,
        y,
        words,
        fontsize=SIZE,
        va="center",
        fontweight="bold" if bold else "normal",
        clip_on=False,
    )


def _bar(axes: Axes, at: float, sets: float, target: Band | None) -> None:
    fill, hatch = _look(sets, target)
    if sets > 0:
        axes.barh(
            at + 0.58,
            sets,
            height=0.5,
            color=fill,
            hatch=hatch,
            edgecolor=INK,
            linewidth=0.6,
            zorder=3,
        )
    if target is not None:
        y = at + 0.14
        axes.plot([target.least, target.most], [y, y], color=INK, linewidth=1.0, zorder=4)
        for end in (target.least, target.most):
            axes.plot([end, end], [y, y + 0.26], color=INK, linewidth=1.0, zorder=4)
        axes.plot([target.good], [y], color=INK, marker="v", markersize=3, zorder=4)


def _look(sets: float, target: Band | None) -> tuple[str, str | None]:
    """Fill and hatch by where the bar ends: inside, below or above its band."""
    if target is None:
        return "0.75", None
    if round(sets, 1) < target.least:
        return PAPER, "//////"
    if round(sets, 1) > target.most:
        return PAPER, "....."
    return "0.3", None


def _key(figure: Figure) -> None:
    from matplotlib.lines import Line2D
    from matplotlib.patches import Patch

    figure.legend(
        handles=[
            Line2D(
                [0],
                [0],
                color=INK,
                linewidth=1.0,
                marker="v",
                markersize=3,
                label="target, sound dose",
            ),
            Patch(facecolor="0.3", edgecolor=INK, label="within the target"),
            Patch(facecolor=PAPER, edgecolor=INK, hatch="//////", label="below"),
            Patch(facecolor=PAPER, edgecolor=INK, hatch=".....", label="above"),
            Patch(facecolor="0.75", edgecolor=INK, label="no target"),
        ],
        loc="lower left",
        bbox_to_anchor=(SIDE_IN / figure.get_figwidth() - 0.01, 0.0),
        ncols=5,
        frameon=False,
        fontsize=SIZE,
        handlelength=1.8,
    )
