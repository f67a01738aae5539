"""Cells that hold text as text, and how the sheets look."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import cache
from typing import TYPE_CHECKING, Any

from setwright.handout.writable_text import writable

if TYPE_CHECKING:
    from openpyxl.styles import Alignment, Font
    from openpyxl.worksheet.worksheet import Worksheet

# A spreadsheet may take a text that begins with one of these for a formula or a command,
# full-width signs among them.
DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
PAPER_CODES = {"a4": 9, "letter": 1}


def as_text(words: str) -> str:
    """Client text that no spreadsheet runs, not even after a detour through CSV.

    A dangerous beginning gets an apostrophe before it, the mark by which spreadsheets know text;
    tabs and what a workbook cannot hold become spaces.
    """
    marked = f"'{words}" if words.startswith(DANGEROUS) else words
    return writable(marked).replace("\t", " ")


def put(sheet: Worksheet, row: int, column: int, value: Any, bold: bool = False) -> None:
    """Write a cell; text never becomes a formula.

    Args:
        sheet: where.
        row: from 1.
        column: from 1.
        value: text, figure, date or None.
        bold: for headings.
    """
    cell = sheet.cell(row, column)
    cell.value = as_text(value) if isinstance(value, str) else value
    if isinstance(value, str):
        cell.data_type = "s"
    wrapped, heavy = _looks()
    cell.alignment = wrapped
    if bold:
        cell.font = heavy


@cache
def _looks() -> tuple[Alignment, Font]:
    """The looks of cells, made once: a workbook has thousands of them."""
    from openpyxl.styles import Alignment, Font

    return Alignment(vertical="top", wrap_text=True), Font(bold=True)


def formula(sheet: Worksheet, row: int, column: int, words: str) -> None:
    """Write a formula of our own."""
    sheet.cell(row, column).value = words


def head(sheet: Worksheet, row: int, words: Sequence[str], widths: Iterable[float]) -> None:
    """A row of headings that stays on top, with the widths of its columns in letters."""
    from openpyxl.styles import PatternFill
    from openpyxl.utils import get_column_letter

    for column, (word, width) in enumerate(zip(words, widths, strict=True), 1):
        put(sheet, row, column, word, bold=True)
        sheet.cell(row, column).fill = PatternFill("solid", fgColor="E6E6E6")
        sheet.column_dimensions[get_column_letter(column)].width = width
    sheet.freeze_panes = sheet.cell(row + 1, 1)
    sheet.print_title_rows = f"{row}:{row}"


def for_print(sheet: Worksheet, paper: str) -> None:
    """Landscape, as wide as the page, as long as it takes."""
    sheet.page_setup.orientation = "landscape"
    sheet.page_setup.paperSize = PAPER_CODES[paper]
    sheet.page_setup.fitToWidth = 1
    sheet.page_setup.fitToHeight = 0
    sheet.print_options.gridLines = True
    sheet.sheet_properties.pageSetUpPr.fitToPage = True
