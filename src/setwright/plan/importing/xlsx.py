"""Spreadsheets in XLSX form, held to a size before anything is unpacked."""

from __future__ import annotations

import io
import re
import zipfile
from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from typing import IO, Any

from setwright.documents.errors import DocumentError
from setwright.plan.importing.table import (
    MAX_CELL,
    MAX_COLUMNS,
    MAX_ROWS,
    Cell,
    Row,
    Table,
    refused,
    words_of,
)

MAX_UNPACKED = 150_000_000
MAX_MEMBERS = 2_000
# The last row a spreadsheet can have.
LAST_ROW = 1_048_576
# A document type declaration is where XML entities, and what they expand to, are declared.
_DECLARED = re.compile(
    b"|".join(
        re.escape(word.encode(encoding))
        for word in ("<!DOCTYPE", "<!ENTITY")
        for encoding in ("ascii", "utf-16-le", "utf-16-be")
    ),
    re.IGNORECASE,
)
_CHUNK = 1 << 20
_OVERLAP = 64


def read_xlsx(raw: bytes, name: str, sheet: str | None = None) -> Table:
    """Read one sheet: as named, or the first that has something in it.

    Raises:
        DocumentError: when it is no spreadsheet, unpacks to too much, or has no such sheet.
    """
    _safe(raw, name)
    from openpyxl import load_workbook

    try:
        book = load_workbook(io.BytesIO(raw), read_only=True, data_only=True, keep_links=False)
        titles = [str(one.title) for one in book.worksheets]
        if sheet is not None and sheet not in titles:
            allowed = f"one of: {', '.join(titles)}" if titles else "a sheet with cells"
            raise refused(name, f"no sheet {sheet!r}", allowed)
        table = None
        for title in [sheet] if sheet is not None else titles:
            rows, blank = _rows(book[title], name)
            others = tuple(one for one in titles if one != title)
            table = Table(name, rows, blank, title, others)
            if rows:
                break
    except DocumentError:
        raise
    except Exception as error:
        # The library meets a broken file with errors of many kinds; all of them mean the same.
        found = f"a spreadsheet that cannot be read ({type(error).__name__})"
        raise refused(name, found, "a whole .xlsx file; or save the sheet as CSV") from None
    if table is None:
        raise refused(name, "no sheet with cells", "a sheet with one line for each set")
    return table


def _safe(raw: bytes, name: str) -> None:
    try:
        with zipfile.ZipFile(io.BytesIO(raw)) as archive:
            members = archive.infolist()
            total = sum(member.file_size for member in members)
            if len(members) > MAX_MEMBERS or total > MAX_UNPACKED:
                found = f"a file that unpacks to {total:,} bytes in {len(members):,} pieces"
                allowed = f"at most {MAX_UNPACKED:,} bytes in {MAX_MEMBERS:,} pieces"
                raise refused(name, found, allowed)
            for member in members:
                if member.filename.lower().endswith((".xml", ".rels", ".vml")):
                    with archive.open(member) as stream:
                        _no_entities(stream, name)
    except DocumentError:
        raise
    except (zipfile.BadZipFile, OSError, RuntimeError, ValueError, EOFError) as error:
        found = f"a damaged file ({error})"
        raise refused(name, found, "a whole .xlsx file; or save the sheet as CSV") from None
    except NotImplementedError:
        raise refused(name, "an unusual way of packing", "an .xlsx file, or CSV") from None
    except Exception as error:
        # zlib, lzma and bz2 raise errors of their own on damaged data.
        found = f"a damaged file ({type(error).__name__})"
        raise refused(name, found, "a whole .xlsx file; or save the sheet as CSV") from None


def _no_entities(stream: IO[bytes], name: str) -> None:
    kept = b""
    while chunk := stream.read(_CHUNK):
        window = kept + chunk
        if _DECLARED.search(window):
            raise refused(name, "a document type declared inside", "an ordinary .xlsx file")
        kept = window[-_OVERLAP:]


def _rows(sheet: Any, name: str) -> tuple[tuple[Row, ...], int]:
    rows = []
    blank = 0
    # The size a sheet says it has is not to be believed; empty cells would be made up to it.
    sheet.reset_dimensions()
    for line, values in enumerate(sheet.iter_rows(values_only=True), start=1):
        if line > LAST_ROW:
            raise refused(name, f"a row beyond {LAST_ROW:,}", "an ordinary .xlsx file")
        cells = _cells(values)
        if not any(cell is not None for cell in cells):
            blank += 1
            continue
        if len(cells) > MAX_COLUMNS:
            found, allowed = f"{len(cells):,} columns", f"at most {MAX_COLUMNS} columns"
            raise refused(f"{name}:{line}", found, allowed)
        if max(len(words_of(cell)) for cell in cells) > MAX_CELL:
            raise refused(f"{name}:{line}", "a very long cell", f"at most {MAX_CELL:,} characters")
        rows.append(Row(line, cells))
        if len(rows) > MAX_ROWS:
            raise refused(name, f"more than {MAX_ROWS:,} rows", f"at most {MAX_ROWS:,} rows")
    return tuple(rows), blank


def _cells(values: Iterable[Any]) -> tuple[Cell, ...]:
    cells = [_cell(value) for value in values]
    while cells and cells[-1] is None:
        cells.pop()
    return tuple(cells)


def _cell(value: Any) -> Cell:
    if isinstance(value, str):
        return value.strip() or None
    if isinstance(value, timedelta):
        return f"{value.total_seconds():g}"
    if value is None or isinstance(value, bool | int | float | datetime | date | time):
        return value
    return str(value)
