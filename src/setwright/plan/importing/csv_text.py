"""CSV of any delimiter, with or without a byte order mark."""

from __future__ import annotations

import codecs
import csv
import io
from collections import Counter

from setwright.plan.importing.table import MAX_CELL, MAX_COLUMNS, MAX_ROWS, Row, Table, refused

DELIMITERS = ("\t", ";", ",", "|")
SAMPLE_LINES = 60


def read_csv(raw: bytes, name: str) -> Table:
    """Read CSV.

    Raises:
        DocumentError: when it is no text, or too large.
    """
    text = _text(raw, name)
    delimiter = _delimiter(text)
    rows = []
    blank = 0
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter)
    before = 0
    try:
        for cells in reader:
            line, before = before + 1, reader.line_num
            kept = tuple(cell.strip() or None for cell in cells)
            if not any(kept):
                blank += 1
                continue
            _check(name, line, kept)
            rows.append(Row(line, kept))
            if len(rows) > MAX_ROWS:
                raise refused(name, f"more than {MAX_ROWS:,} lines", f"at most {MAX_ROWS:,} lines")
    except csv.Error as error:
        raise refused(f"{name}:{before + 1}", str(error), "CSV text") from None
    return Table(name, tuple(rows), blank)


def _check(name: str, line: int, cells: tuple[str | None, ...]) -> None:
    if len(cells) > MAX_COLUMNS:
        raise refused(f"{name}:{line}", f"{len(cells)} columns", f"at most {MAX_COLUMNS} columns")
    longest = max(len(cell or "") for cell in cells)
    if longest > MAX_CELL:
        found = f"a cell of {longest:,} characters (a quote that is never closed?)"
        raise refused(f"{name}:{line}", found, f"cells of at most {MAX_CELL:,} characters")


def _text(raw: bytes, name: str) -> str:
    if raw.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        encodings: tuple[str, ...] = ("utf-16",)
    else:
        # What spreadsheets in Western Europe write when they do not write UTF-8.
        encodings = ("utf-8-sig", "cp1252")
    for encoding in encodings:
        try:
            text = raw.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" in text:
            break
        return text
    raise refused(name, "bytes that are no text", "CSV text (UTF-8), or a spreadsheet as .xlsx")


def _delimiter(text: str) -> str:
    """The delimiter that cuts most of the first lines into the same number of cells, above 1."""
    sample = text.splitlines(keepends=True)[:SAMPLE_LINES]
    best, most = ",", (0, 0)
    for delimiter in DELIMITERS:
        try:
            widths = Counter(len(cells) for cells in csv.reader(sample, delimiter=delimiter))
        except csv.Error:
            continue
        width, lines = max(
            ((width, lines) for width, lines in widths.items() if width > 1),
            key=lambda item: (item[1], item[0]),
            default=(0, 0),
        )
        if (lines, width) > most:
            best, most = delimiter, (lines, width)
    return best
