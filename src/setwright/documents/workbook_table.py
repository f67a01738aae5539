"""Sheets of an XLSX workbook as tables of text."""

from __future__ import annotations

import io
import warnings
from datetime import date, datetime, time, timedelta
from typing import Any

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table import MAX_CELL, MAX_COLUMNS, MAX_ROWS, Table, squared
from setwright.documents.yaml_text import plain_number
from setwright.documents.zip_safety import refuse_unsafe_zip


def read_workbook(data: bytes, name: str, most_rows: int = MAX_ROWS) -> tuple[Table, ...]:
    """Read every sheet with content; a formula counts as the value last computed for it.

    Raises:
        DocumentError: when the file is unsafe, damaged or too large.
    """
    refuse_unsafe_zip(data, name)
    values = _loaded(data, name, data_only=True)
    formulas = _loaded(data, name, data_only=False)
    tables = (_table(sheet, formulas[sheet.title], name, most_rows) for sheet in values.worksheets)
    return tuple(table for table in tables if table.rows)


def _loaded(data: bytes, name: str, data_only: bool) -> Any:
    from openpyxl import load_workbook

    try:
        with warnings.catch_warnings():
            # What a workbook has and openpyxl does not read is none of the coach's concern.
            warnings.simplefilter("ignore")
            return load_workbook(io.BytesIO(data), data_only=data_only, keep_links=False)
    except Exception as error:  # openpyxl lets through whatever its parsers raise
        found = f"a workbook that cannot be read ({type(error).__name__})"
        raise DocumentError(name, (Fault("", found, "an XLSX file"),)) from None


def _table(sheet: Any, formulas: Any, name: str, most_rows: int) -> Table:
    rows: list[list[str]] = []
    dates: set[tuple[int, int]] = set()
    # The cells there are: a sheet may call itself a million rows long.
    for (row, column), cell in sorted(sheet._cells.items()):
        value = cell.value
        if value is None:
            value = getattr(formulas._cells.get((row, column)), "value", None)
        if value is None or value == "":
            continue
        if row > most_rows or column > MAX_COLUMNS:
            raise DocumentError(
                name,
                (
                    Fault(
                        f"{sheet.title} {cell.coordinate}",
                        "a cell so far out",
                        f"up to {most_rows} rows and {MAX_COLUMNS} columns",
                    ),
                ),
            )
        while len(rows) < row:
            rows.append([])
        line = rows[row - 1]
        line += [""] * (column - len(line))
        if isinstance(value, float | int) and "%" in cell.number_format:
            value = f"{plain_number(round(100 * value, 4))}%"
        line[column - 1] = _words(value, f"{sheet.title} {cell.coordinate}", name)
        if isinstance(value, date | time):
            dates.add((row - 1, column - 1))
    merged = {
        (area.min_row - 1, area.min_col - 1): (area.max_row - 1, area.max_col - 1)
        for area in sheet.merged_cells.ranges
    }
    return Table(sheet.title, squared(rows), merged, frozenset(dates))


def _words(value: Any, place: str, name: str) -> str:
    """A cell's value as text."""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return plain_number(round(value, 6))
    if isinstance(value, datetime) and value.time() == time():
        value = value.date()
    if isinstance(value, date | time):
        return value.isoformat()
    if isinstance(value, timedelta):
        minutes, seconds = divmod(round(value.total_seconds()), 60)
        return f"{minutes}:{seconds:02d}"
    text = str(value).strip()
    if len(text) > MAX_CELL:
        fault = Fault(place, f"{len(text)} characters", f"up to {MAX_CELL} characters a cell")
        raise DocumentError(name, (fault,))
    return text
