"""The blocks of the week's picture: an exercise or a superset, to scale."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from setwright.exercises import catalogue
from setwright.handout.canvas import INK, PAPER, SOFT, Canvas, Hatch
from setwright.handout.fitted_words import fitted
from setwright.handout.letter_widths import measured
from setwright.handout.timeline import Block, Lane, Span
from setwright.handout.wording import rir_words, span
from setwright.plan.week import Entry, Session

SIZE = 7.5
LINE = SIZE * 1.22
# The strip with the sets, as a share of the column; room around the words beside it, points.
STRIP, INSET, BASELINE = 0.07, 2.5, 0.98
WORK, GROUND = "#4d4d4d", "#f2f2f2"
# From this width on repetitions and effort share a line.
ONE_LINE = 100.0
MOST_LINES_OF_NAME = 4


@dataclass(frozen=True)
class Column:
    """Where a day stands on the sheet, points.

    Attributes:
        left: its left edge.
        width: of its blocks.
        top: where its session starts.
        minute: height of a minute.
    """

    left: float
    width: float
    top: float
    minute: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.left + self.width

    def y(self, at_s: float) -> float:
        """Where a moment of the session stands."""
        return self.top + at_s / 60 * self.minute


def draw_block(board: Canvas, column: Column, block: Block) -> None:
    """The shapes of one exercise or superset.

    Args:
        board: to draw on.
        column: of its day.
        block: what is drawn.
    """
    _box(board, column, column.left, column.width, block.whole, GROUND, INK)
    change = Span(block.whole.start_s, block.opens_s)
    if block.opens_s > block.whole.start_s:
        _box(board, column, column.left, column.width, change, PAPER, SOFT, "above")
    for place, (lane, left, _) in enumerate(_lanes(column, block)):
        if place:
            line = [(left, column.y(block.opens_s)), (left, column.y(block.whole.end_s))]
            board.line(line, SOFT, 0.6, "3 2")
        strip = STRIP * column.width
        for warm in lane.warm_up:
            _box(board, column, left, strip, warm, PAPER, SOFT, "below")
        for work in lane.sets:
            _box(board, column, left, strip, work, WORK, INK)


def write_block(board: Canvas, column: Column, session: Session, block: Block) -> None:
    """The words of one exercise or superset, on their own ground where a line may cross them.

    Args:
        board: to draw on.
        column: of its day.
        session: the day's session.
        block: what is written.
    """
    room = (block.whole.end_s - block.opens_s) / 60 * column.minute
    most = max(int((room - INSET) / LINE), 1)
    for lane, left, width in _lanes(column, block):
        x = left + STRIP * column.width + INSET
        lines = _lines(session.exercises[lane.position], left + width - x - INSET, most)
        for number, (words, ink) in enumerate(lines):
            y = column.y(block.opens_s) + INSET / 2 + number * LINE
            board.box(x - 1, y, measured(words, SIZE) + 1, min(LINE, room - INSET), GROUND)
            board.text(x, y + SIZE * BASELINE, words, SIZE, ink=ink)


def _lines(entry: Entry, room: float, most: int) -> list[tuple[str, str]]:
    """Name and dose of an exercise in the lines there are room for, with their ink."""
    letter = f"{entry.superset}  " if entry.superset else ""
    dose, effort = f"{entry.sets} × {span(*entry.reps)}", f"RIR {rir_words(entry)}"
    told = [f"{dose}, {effort}"] if room > ONE_LINE else [dose, effort]
    for_name = min(max(most - len(told), 1), MOST_LINES_OF_NAME)
    name = fitted(letter + catalogue.exercise(entry.exercise).name, SIZE, room, for_name)
    return [*((one, INK) for one in name), *((one, SOFT) for one in told)][:most]


def _lanes(column: Column, block: Block) -> Iterator[tuple[Lane, float, float]]:
    """Exercises side by side: each with its left edge and width."""
    width = column.width / len(block.lanes)
    for place, lane in enumerate(block.lanes):
        yield lane, column.left + place * width, width


def _box(
    board: Canvas, column: Column, left: float, width: float, time: Span, fill: str, edge: str,
    hatch: Hatch | None = None,
) -> None:  # fmt: skip
    top = column.y(time.start_s)
    board.box(left, top, width, column.y(time.end_s) - top, fill, edge, hatch)
