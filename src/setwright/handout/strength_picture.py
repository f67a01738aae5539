"""Strength over time: one small panel an exercise, the estimate with its interval."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from setwright.exercises import catalogue
from setwright.handout.drawing import FAINT, INK, SOFT, STYLE, fitted, sheet
from setwright.rehearsal.strength import OneRm
from setwright.training.client import Client

if TYPE_CHECKING:
    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

COLUMNS = 3
# Panels on one sheet; the exercises trained most come first.
MOST_PANELS = 12
PANEL_W_IN, PANEL_H_IN = 2.75, 1.75
LEFT_IN, GAP_IN, HEAD_IN, FOOT_IN, NAME_IN = 0.5, 0.55, 0.75, 0.55, 0.5
SIZE = 8.0
# A panel spans at least this share of the strength it shows, so that noise does not look like news.
LEAST_SPAN = 0.12
NOTE = (
    "line: 1RM-equivalent of the load the muscles move, as known that day; grey: its 80 % "
    "interval. Each panel has its own scale."
)


@dataclass(frozen=True)
class StrengthLine:
    """The strength of one exercise over time.

    Attributes:
        name: of the exercise.
        days: proleptic ordinals, rising.
        strength: the estimate on each day, kg of load the muscles move.
    """

    name: str
    days: tuple[int, ...]
    strength: tuple[OneRm, ...]


def strength_lines(client: Client, exercises: Sequence[str]) -> tuple[StrengthLine, ...]:
    """The course of strength on exercises of the log, those without any set left out."""
    found = []
    for ident in exercises[:MOST_PANELS]:
        past = client.lifter.history(ident)
        if past:
            days, strength = zip(*past, strict=True)
            found.append(StrengthLine(catalogue.exercise(ident).name, days, strength))
    return tuple(found)


def strength_picture(title: str, lines: Sequence[StrengthLine]) -> Figure:
    """Small panels over one span of dates, three in a row.

    Args:
        title: what stands above.
        lines: one an exercise, each with at least one day; their order is kept.

    Raises:
        ValueError: when there is no line or an empty one.
    """
    from matplotlib import rc_context

    if not lines or any(not line.days for line in lines):
        raise ValueError("a picture of strength needs lines with at least one day each")
    columns = min(COLUMNS, len(lines))
    rows = -(-len(lines) // columns)
    pitch_w, pitch_h = PANEL_W_IN + GAP_IN, PANEL_H_IN + NAME_IN + 0.25
    width = max(LEFT_IN + columns * pitch_w - GAP_IN + 0.25, 6.0)
    height = HEAD_IN + rows * pitch_h + FOOT_IN
    first = min(line.days[0] for line in lines)
    last = max(max(line.days[-1] for line in lines), first + 6)
    with rc_context(STYLE):  # type: ignore[arg-type]
        figure = sheet(width, height)
        for place, line in enumerate(lines):
            row, column = divmod(place, columns)
            left = LEFT_IN + column * pitch_w
            bottom = height - HEAD_IN - row * pitch_h - NAME_IN - PANEL_H_IN + 0.2
            axes = figure.add_axes(
                (left / width, bottom / height, PANEL_W_IN / width, PANEL_H_IN / height)
            )
            _panel(axes, line, first, last)
        head = fitted(title, 13, width - 0.6, 1)[0]
        figure.text(0.3 / width, 1 - 0.35 / height, head, fontsize=13, va="center")
        for at, words in enumerate(fitted(NOTE, SIZE, width - 0.6, 2)):
            figure.text(0.3 / width, (0.3 - 0.15 * at) / height, words, fontsize=SIZE, color=SOFT)
    return figure


def _panel(axes: Axes, line: StrengthLine, first: int, last: int) -> None:
    low = [one.low for one in line.strength]
    high = [one.high for one in line.strength]
    middle = [one.median for one in line.strength]
    axes.fill_between(line.days, low, high, color=FAINT, linewidth=0)
    axes.plot(line.days, middle, color=INK, linewidth=1.2, marker=".", markersize=3.5)
    centre, span = (max(high) + min(low)) / 2, max(high) - min(low)
    half = max(span * 0.56, centre * LEAST_SPAN / 2)
    axes.set_ylim(centre - half, centre + half)
    axes.set_xlim(first - 1, last + 1)
    ticks = [first + round((last - first) * part) for part in (0.0, 0.5, 1.0)]
    axes.set_xticks(ticks, [_day(tick) for tick in ticks], fontsize=SIZE)
    axes.locator_params(axis="y", nbins=4)
    axes.tick_params(axis="y", labelsize=SIZE, length=2)
    axes.tick_params(axis="x", length=2)
    axes.grid(axis="y", color=FAINT, linewidth=0.4)
    axes.set_axisbelow(True)
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)
    name = fitted(line.name, 9, PANEL_W_IN, 1)[0]
    axes.set_title(f"{name}, kg", fontsize=9, loc="left", pad=4)


def _day(ordinal: int) -> str:
    day = date.fromordinal(ordinal)
    return f"{day.day} {day:%b}"
