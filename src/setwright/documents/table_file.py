"""A file with tables, CSV or XLSX, told apart by its content."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from setwright.documents.csv_table import decoded, read_csv
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table import MAX_ROWS, Table

MAX_BYTES: Final = 5_000_000
_ZIP, _OLD_OFFICE = b"PK\x03\x04", b"\xd0\xcf\x11\xe0"


def is_workbook(data: bytes) -> bool:
    """Whether a file is a packed or an old workbook rather than text."""
    return data.startswith((_ZIP, _OLD_OFFICE, b"PK\x05\x06"))


def read_tables(data: bytes, name: str, most_rows: int = MAX_ROWS) -> tuple[Table, ...]:
    """Every table of a file: one of CSV, or one a sheet with content.

    Args:
        data: the file's bytes.
        name: of the file, for messages.
        most_rows: a table may have.

    Raises:
        DocumentError: when it is no table, is empty, unsafe or too large.
    """
    if len(data) > MAX_BYTES:
        fault = Fault("", f"{len(data):,} bytes", f"at most {MAX_BYTES:,} bytes")
        raise DocumentError(name, (fault,))
    if data.startswith(_OLD_OFFICE):
        found = "a workbook in the old format, or one with a password"
        raise DocumentError(name, (Fault("", found, "XLSX without a password, or CSV"),))
    if is_workbook(data):
        from setwright.documents.workbook_table import read_workbook

        tables = read_workbook(data, name, most_rows)
    else:
        table = read_csv(decoded(data, name), name, most_rows)
        tables = (table,) if table.rows else ()
    if not tables:
        raise DocumentError(name, (Fault("", "no cell with content", "a table"),))
    return tables


def chosen(tables: Sequence[Table], sheet: str | None, name: str) -> tuple[Table, ...]:
    """The sheet asked for, or all.

    Raises:
        DocumentError: when there is no such sheet.
    """
    if sheet is None:
        return tuple(tables)
    found = tuple(table for table in tables if table.name.casefold() == sheet.strip().casefold())
    if not found:
        names = ", ".join(repr(table.name) for table in tables)
        raise DocumentError(name, (Fault("sheet", repr(sheet), names or "no sheets"),))
    return found
