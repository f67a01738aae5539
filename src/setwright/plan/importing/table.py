"""A table as it stands in the file: rows of cells, each with its line."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, time

from setwright.documents.errors import DocumentError, Fault

Cell = str | float | int | datetime | date | time | None
MAX_BYTES = 50_000_000
MAX_ROWS = 200_000
MAX_COLUMNS = 200
MAX_CELL = 1000
XLSX_HEAD = b"PK\x03\x04"
OLD_EXCEL_HEAD = b"\xd0\xcf\x11\xe0"


@dataclass(frozen=True, slots=True)
class Row:
    """One line of a table that is not blank.

    Attributes:
        line: line (CSV) or row (XLSX) number from 1.
        cells: as many as the line has.
    """

    line: int
    cells: tuple[Cell, ...]


@dataclass(frozen=True)
class Table:
    """A table.

    Attributes:
        name: of the file, for messages.
        rows: lines that are not blank, in order.
        blank: how many lines are blank.
        sheet: of an XLSX file.
        others: names of sheets that were not read.
    """

    name: str
    rows: tuple[Row, ...]
    blank: int
    sheet: str | None = None
    others: tuple[str, ...] = ()


def read_table(raw: bytes, name: str, sheet: str | None = None) -> Table:
    """Read a CSV or an XLSX file.

    Args:
        raw: the file.
        name: for messages.
        sheet: of an XLSX file; the first one with something in it when not said.

    Raises:
        DocumentError: when the file cannot be read at all.
    """
    if len(raw) > MAX_BYTES:
        raise refused(name, f"{len(raw):,} bytes", f"at most {MAX_BYTES:,} bytes")
    if raw.startswith(OLD_EXCEL_HEAD):
        raise refused(name, "a spreadsheet in the old .xls form", "CSV, or a spreadsheet as .xlsx")
    if raw.startswith(XLSX_HEAD):
        from setwright.plan.importing.xlsx import read_xlsx

        table = read_xlsx(raw, name, sheet)
    else:
        from setwright.plan.importing.csv_text import read_csv

        table = read_csv(raw, name)
    if not table.rows:
        raise refused(name, "an empty table", "a heading line and one line for each set")
    return table


def refused(name: str, found: str, allowed: str) -> DocumentError:
    """The error for a file that cannot be read at all."""
    return DocumentError(name, (Fault("", found, allowed),))


def words_of(cell: Cell) -> str:
    """A cell as text: whole numbers without a point, dates in ISO form, nothing as ''."""
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "yes" if cell else "no"
    if isinstance(cell, float):
        return f"{cell:.10g}"
    if isinstance(cell, datetime):
        return cell.isoformat(sep=" ")
    if isinstance(cell, date | time):
        return cell.isoformat()
    return " ".join(str(cell).split())


def shown_cell(cell: Cell) -> str:
    """A cell as questions quote it, kept short."""
    text = words_of(cell)
    return repr(text if len(text) <= 60 else f"{text[:57]}...")
