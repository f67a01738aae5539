"""A table of sets as it stands in the file: rows of cells, each with its line."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.documents.table import Table as Sheet
from setwright.documents.table_file import chosen, read_tables

# Ten years of daily training.
MAX_ROWS = 100_000


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a table that is not blank.

    Attributes:
        line: line (CSV) or row (XLSX) number from 1.
        cells: text of each; dates and times in ISO form, '' for an empty one.
    """

    line: int
    cells: tuple[str, ...]


@dataclass(frozen=True)
class Table:
    """A table.

    Attributes:
        name: of the file, for messages.
        rows: lines that are not blank, in order.
        blank: how many lines are blank.
        sheet: of a workbook; '' for CSV.
        others: names of sheets that were not read.
    """

    name: str
    rows: tuple[Row, ...]
    blank: int = 0
    sheet: str = ""
    others: tuple[str, ...] = ()


def read_table(raw: bytes, name: str, sheet: str | None = None) -> Table:
    """Read a CSV or an XLSX file.

    Args:
        raw: the file.
        name: for messages.
        sheet: of a workbook; the first one with something in it when not said.

    Raises:
        DocumentError: when the file cannot be read at all.
    """
    sheets = read_tables(raw, name, MAX_ROWS)
    first = chosen(sheets, sheet, name)[0]
    others = tuple(one.name for one in sheets if one is not first)
    return _table(first, name, others)


def _table(sheet: Sheet, name: str, others: tuple[str, ...]) -> Table:
    lines = sheet.lines or range(1, len(sheet.rows) + 1)
    rows = tuple(
        Row(line, tuple(" ".join(cell.split()) for cell in cells))
        for line, cells in zip(lines, sheet.spread(), strict=True)
        if any(cells)
    )
    return Table(name, rows, len(sheet.rows) - len(rows), sheet.name, others)


def shown_cell(text: str) -> str:
    """A cell as questions quote it, kept short."""
    return repr(text if len(text) <= 60 else f"{text[:57]}...")
