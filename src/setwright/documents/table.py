"""A table as text: what stands in every cell, and where."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Final

MAX_ROWS: Final = 5000
MAX_COLUMNS: Final = 200
MAX_CELL: Final = 2000


@dataclass(frozen=True)
class Table:
    """One sheet of a workbook, or a CSV file.

    Attributes:
        name: of the sheet; empty for CSV.
        rows: text of every cell as it is read on screen, all rows equally long; numbers without
            needless digits, dates and times in ISO form, empty text for an empty cell. Of merged
            cells the first holds the text.
        merged: merged areas by their first cell: (row, column) to (last row, last column), from 0.
        dates: cells that hold a date or a time of day, (row, column) from 0.
        lines: line of the file on which each row starts, from 1; empty for a workbook.
    """

    name: str
    rows: tuple[tuple[str, ...], ...]
    merged: Mapping[tuple[int, int], tuple[int, int]] = field(default_factory=dict)
    dates: frozenset[tuple[int, int]] = frozenset()
    lines: tuple[int, ...] = ()

    @property
    def columns(self) -> int:
        """How many columns there are."""
        return len(self.rows[0]) if self.rows else 0

    def filled(self) -> Iterator[tuple[int, int, str]]:
        """Every cell with content: row and column from 0, and its text."""
        for row, cells in enumerate(self.rows):
            for column, text in enumerate(cells):
                if text:
                    yield row, column, text

    def spread(self) -> tuple[tuple[str, ...], ...]:
        """The rows with the text of merged cells in each of their cells."""
        grid = [list(row) for row in self.rows]
        for (top, left), (bottom, right) in self.merged.items():
            for row in range(top, min(bottom + 1, len(grid))):
                for column in range(left, min(right + 1, len(grid[row]))):
                    grid[row][column] = self.rows[top][left]
        return tuple(tuple(row) for row in grid)


def cell_name(row: int, column: int) -> str:
    """A cell's name, from row and column counted from 0.

    >>> cell_name(6, 27)
    'AB7'
    """
    letters = ""
    column += 1
    while column:
        column, rest = divmod(column - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return f"{letters}{row + 1}"


def squared(rows: list[list[str]]) -> tuple[tuple[str, ...], ...]:
    """Rows made equally long; empty rows and columns at the end dropped."""
    width = max(
        (at + 1 for row in rows for at, text in enumerate(row) if text),
        default=0,
    )
    height = max((at + 1 for at, row in enumerate(rows) if any(row)), default=0)
    return tuple(tuple((row + [""] * width)[:width]) for row in rows[:height])
