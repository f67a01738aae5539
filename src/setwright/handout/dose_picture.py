"""What each part gets in the week, against its target."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from setwright.anatomy.model import Part
from setwright.handout.canvas import FAINT, INK, SIZE, SOFT, Canvas, Hatch, Scale, shortened, ticks
from setwright.handout.parts_rows import HEAD_ROWS, MUSCLE_GAP_ROWS, groups, halves, rows_of
from setwright.plan.intake import Intake
from setwright.response.model import WeekResponse
from setwright.response.targets import Band, bands

WIDTH, NAMES, GAP, EDGE = 520.0, 136.0, 16.0, 6.0
PART_SIZE = 7.0
BARS = (WIDTH - 2 * EDGE - GAP) / 2 - NAMES
ROW, TOP, FOOT = 10.6, 20.0, 40.0
INSIDE, OTHER = "#4d4d4d", "#bfbfbf"
TITLE_ROOM = 18.0
TITLE = "fractional sets a week"


def dose_picture(
    response: WeekResponse, intake: Intake | None = None, title: str = "", name: str = "dose"
) -> str:
    """Fractional weekly sets of every part as bars, grouped by muscle, in two columns, as SVG.

    A bracket above a bar spans the least and the most the person's aims ask for, a notch in it
    marks where the dose is a sound one. A bar is dark inside its band, hatched below it and
    dotted above it, so that nothing hangs on colour. Parts that nobody aims at have no bracket,
    and are shown only when they can be trained directly or get something.

    Args:
        response: the response to the week.
        intake: the person's aims; without it every aim is the usual one.
        title: above the picture; none when empty.
        name: of the picture.
    """
    weekly = dict(zip(response.parts, response.weekly_sets.tolist(), strict=True))
    targets = {ident: band for ident, band in bands(intake).items() if band.least > 0}
    columns = halves(groups(weekly, targets))
    rows = max(rows_of(column) for column in columns)
    top = TOP + (TITLE_ROOM if title else 0)
    board = Canvas(name, WIDTH, top + rows * ROW + FOOT)
    if title:
        board.text(EDGE, 14, shortened(title, WIDTH - 2 * EDGE, 10.5, True), 10.5, bold=True)
    most = max([*weekly.values(), *(band.most for band in targets.values()), 1.0]) * 1.04
    for place, chosen in enumerate(columns):
        left = EDGE + place * (NAMES + BARS + GAP)
        _column(board, left, top, rows, chosen, weekly, targets, most)
    _key(board)
    return board.svg()


def _column(
    board: Canvas, left: float, top: float, rows: float, chosen: Sequence[tuple[str, list[Part]]],
    weekly: Mapping[str, float], targets: Mapping[str, Band], most: float,
) -> None:  # fmt: skip
    x = Scale(0, most, left + NAMES, left + NAMES + BARS)
    foot = top + rows * ROW
    for tick in ticks(0, most, 6):
        board.line([(x(tick), top), (x(tick), foot)], SOFT if tick == 0 else FAINT, 0.5)
        for y in (top - 3, foot + 9):
            board.text(x(tick), y, f"{tick:g}", SIZE - 0.5, "middle")
    y = top
    for name, members in chosen:
        alone = len(members) == 1
        if not alone:
            board.text(left, y + 7.8, shortened(name, NAMES, SIZE, True), SIZE, bold=True)
            y += HEAD_ROWS * ROW
        for one in members:
            indent = 0 if alone else 6
            size = SIZE if alone else PART_SIZE
            words = shortened(one.name, NAMES - indent - 2, size, alone)
            board.text(left + indent, y + 8.2, words, size, bold=alone)
            _bar(board, x, y, weekly.get(one.id, 0.0), targets.get(one.id))
            y += ROW
        y += MUSCLE_GAP_ROWS * ROW


def _bar(board: Canvas, x: Scale, y: float, sets: float, target: Band | None) -> None:
    fill, hatch = _look(sets, target)
    if sets > 0:
        board.box(x(0), y + 3.8, x(sets) - x(0), 5.0, fill, INK, hatch)
    if target is not None:
        least, most, up = x(target.least), x(target.most), y + 1.4
        board.line([(least, up + 2.2), (least, up), (most, up), (most, up + 2.2)], INK, 0.8)
        good = x(target.good)
        board.area([(good - 1.6, up - 1.1), (good + 1.6, up - 1.1), (good, up + 2.0)], INK)


def _look(sets: float, target: Band | None) -> tuple[str, Hatch | None]:
    """Fill and hatch by where the bar ends: inside, below or above its band."""
    if target is None:
        return OTHER, None
    if round(sets, 1) < target.least:
        return "", "below"
    if round(sets, 1) > target.most:
        return "", "above"
    return INSIDE, None


def _key(board: Canvas) -> None:
    y = board.height - 12
    board.text(EDGE, y - 11, TITLE, SIZE, ink=SOFT)
    board.line([(EDGE, y - 2), (EDGE, y - 4.5), (EDGE + 18, y - 4.5), (EDGE + 18, y - 2)], INK, 0.8)
    board.area([(EDGE + 7, y - 6), (EDGE + 11, y - 6), (EDGE + 9, y - 2.4)], INK)
    board.text(EDGE + 22, y, "target, sound dose", SIZE)
    x = EDGE + 122.0
    looks: tuple[tuple[str, str, Hatch | None], ...] = (
        ("within the target", INSIDE, None),
        ("below", "", "below"),
        ("above", "", "above"),
        ("no target", OTHER, None),
    )
    for words, fill, hatch in looks:
        board.box(x, y - 6, 14, 6, fill, INK, hatch)
        board.text(x + 18, y, words, SIZE)
        x += 34 + 4.6 * len(words)
