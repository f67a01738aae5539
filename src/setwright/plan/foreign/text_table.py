"""Tables inside plain text: ruled with bars, tabbed, aligned by spaces or separated."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Callable

from setwright.documents.table import MAX_COLUMNS, Table, squared
from setwright.plan.foreign.columns import heading_row

RULE = re.compile(r"[\s|+:=_-]*(?:-{2,}|={2,}|_{2,})[\s|+:=_-]*\Z")
Cut = Callable[[str], list[str]]


def table_in(text: str) -> Table | None:
    """Text as a table, one row a line, where a line of it heads columns; None where none does.

    A line outside the table is a row with one cell, so that every cell of column A is its line.
    """
    lines = text.removeprefix("\ufeff").splitlines()
    if not any(_cut_of(line) for line in lines):
        return None
    rows: list[list[str]] = []
    cut: Cut | None = None
    for line in lines:
        heading = _cut_of(line)
        cut = heading or cut
        if not line.strip() and cut is not None and "|" not in line:
            rows.append([])
        elif cut is None or RULE.match(line):
            rows.append([line.strip()])
        else:
            rows.append(cut(line)[:MAX_COLUMNS])
    return Table("", squared(rows)) if rows else None


def _cut_of(line: str) -> Cut | None:
    """How the lines below a line are cut into cells, when it heads columns."""
    for cut in (_bars, _tabs, _spaced(line), _separated(";", line), _separated(",", line)):
        cells = {at: cell for at, cell in enumerate(cut(line)) if cell}
        if len(cells) >= 3 and heading_row(cells) is not None:
            return cut
    return None


def _bars(line: str) -> list[str]:
    if line.count("|") < 2:
        return [line.strip()]
    inner = line.strip().removeprefix("|").removesuffix("|")
    return [cell.strip().strip("*").strip() for cell in inner.split("|")]


def _tabs(line: str) -> list[str]:
    return [cell.strip() for cell in line.rstrip().split("\t")]


def _separated(sign: str, heading: str) -> Cut:
    width = heading.count(sign)

    def cut(line: str) -> list[str]:
        if width < 2 or not width - 1 <= line.count(sign) <= width + 1:
            return [line.strip()]
        return [cell.strip() for cell in line.split(sign)]

    return cut


def _spaced(heading: str) -> Cut:
    """Cells in columns of characters: each belongs to the heading it starts under."""
    wide = heading.expandtabs(8)
    starts = [match.start() for match in re.finditer(r"(?:(?<=\s\s)|\A|(?<=\A\s))\S", wide)]

    def cut(line: str) -> list[str]:
        cells = [""] * len(starts)
        full = line.expandtabs(8)
        pieces = list(re.finditer(r"\S+(?: \S+)*", full))
        if len(pieces) < 2:
            return [line.strip()]
        if not starts:
            return [line.strip()]
        for piece in pieces:
            at = max(0, bisect_right(starts, piece.start() + 2) - 1)
            for word in re.finditer(r"\S+", piece[0]):
                start = piece.start() + word.start()
                if word.start() and any(abs(start - one) <= 1 for one in starts[at + 1 :]):
                    at = max(0, bisect_right(starts, start + 1) - 1)
                cells[at] = f"{cells[at]} {word[0]}".strip()
        return cells

    return cut
