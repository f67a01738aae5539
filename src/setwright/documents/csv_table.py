"""CSV of any making: delimiter, encoding and quoting found out, not asked for."""

from __future__ import annotations

import csv
import io
import re
from collections import Counter
from typing import Final

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table import MAX_CELL, MAX_COLUMNS, MAX_ROWS, Table, squared

# Where two fit equally well the earlier is meant: commas may be decimal commas.
DELIMITERS: Final = ("\t", ";", "|", ",")
_SAID = re.compile(r"\Asep=(.)\r?\n", re.IGNORECASE)


def decoded(data: bytes, name: str) -> str:
    """Text of a file in UTF-8 or UTF-16, with or without a mark, or in the Windows code page.

    Raises:
        DocumentError: when it is no text.
    """
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        encodings: tuple[str, ...] = ("utf-16",)
    else:
        encodings = ("utf-8-sig", "cp1252")
    for encoding in encodings:
        try:
            text = data.decode(encoding)
        except UnicodeDecodeError:
            continue
        if "\0" not in text:
            return text
    raise DocumentError(name, (Fault("", "bytes that are no text", "text, CSV or XLSX"),))


def read_csv(text: str, name: str, most_rows: int = MAX_ROWS) -> Table:
    """Read CSV; the delimiter is the one that cuts most lines into equally many cells.

    Raises:
        DocumentError: when the table is too large or its quotes do not close.
    """
    said = _SAID.match(text)
    start = said.end() if said else 0
    delimiter = said[1] if said else find_delimiter(text)
    rows: list[list[str]] = []
    lines: list[int] = []
    before = begun = 1 if said else 0
    reader = csv.reader(io.StringIO(text[start:], newline=""), delimiter=delimiter)
    try:
        for row in reader:
            lines.append(begun + 1)
            begun = before + reader.line_num
            rows.append([cell.strip() for cell in row])
            _bounded(row, len(rows), name, most_rows)
    except csv.Error as error:
        at = before + reader.line_num
        raise DocumentError(name, (Fault("", str(error), "CSV with closed quotes", at),)) from None
    grid = squared(rows)
    return Table("", grid, lines=tuple(lines[: len(grid)]))


def find_delimiter(text: str) -> str:
    """The delimiter of a table; a comma when nothing speaks for another."""
    sample = "\n".join(text.splitlines()[:200])
    head = next((line for line in sample.splitlines() if line.strip()), "")
    ranked = [
        (_evenness(sample, mark), mark in head, -at, mark) for at, mark in enumerate(DELIMITERS)
    ]
    best = max(ranked)
    return best[3] if best[0] > 0 else ","


def _evenness(sample: str, delimiter: str) -> float:
    """Share of the lines with as many cells as most lines have; 0 when that is one cell."""
    try:
        widths = Counter(
            len(row) for row in csv.reader(io.StringIO(sample), delimiter=delimiter) if any(row)
        )
    except csv.Error:
        return 0.0
    several = {width: count for width, count in widths.items() if width > 1}
    if not several:
        return 0.0
    return round(max(several.values()) / sum(widths.values()), 1)


def _bounded(row: list[str], count: int, name: str, most_rows: int) -> None:
    if count > most_rows or len(row) > MAX_COLUMNS or any(len(cell) > MAX_CELL for cell in row):
        raise DocumentError(
            name,
            (
                Fault(
                    "",
                    "a larger table",
                    f"up to {most_rows} rows, {MAX_COLUMNS} columns, {MAX_CELL} characters a cell",
                    count,
                ),
            ),
        )
