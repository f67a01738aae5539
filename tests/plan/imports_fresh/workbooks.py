"""Fresh workbooks of our own invention; built here, for XLSX is no text."""

from __future__ import annotations

from collections.abc import Callable
from io import BytesIO
from typing import Any

from openpyxl import Workbook
from openpyxl.styles import Font, PatternFill
from openpyxl.worksheet.worksheet import Worksheet


def _rows(sheet: Worksheet, rows: list[list[Any]]) -> None:
    for row in rows:
        sheet.append(row)


def weeks(book: Workbook) -> None:
    """Effort by week in columns, the day merged over all of them."""
    sheet = book.active
    _rows(
        sheet,
        [
            ["4 week hypertrophy - Ingunn"],
            [],
            ["Day 1 - Lower"],
            ["Exercise", "Sets", "Reps", "Wk 1 RIR", "Wk 2 RIR", "Wk 3 RIR", "Comments"],
            ["Leg press", 4, "8-10", 3, 2, 1, None],
            ["Seated leg curl", 3, "10-12", 3, 2, 1, "seat back"],
            ["Walking lunge", 2, "10/leg", 3, 2, 1, None],
            ["Seated calf raise", 4, "12-15", 2, 1, 0, None],
            [],
            ["Day 2 - Upper"],
            ["Exercise", "Sets", "Reps", "Wk 1 RIR", "Wk 2 RIR", "Wk 3 RIR", "Comments"],
            ["Incline bench", 4, "6-8", 3, 2, 1, None],
            ["Pulldown", 4, "8-12", 3, 2, 1, "long stretch"],
            ["Machine lateral raise", 3, "12-20", 2, 1, 0, None],
            ["Hammer curl", 3, "10-12", 2, 1, 0, None],
            ["French press", 3, "10-12", 2, 1, 0, None],
        ],
    )
    for area in ("A1:G1", "A3:G3", "A10:G10"):
        sheet.merge_cells(area)


def set_columns(book: Workbook) -> None:
    """One column a set with the repetitions; days told by a coloured band alone."""
    sheet = book.active
    _rows(
        sheet,
        [
            ["PUSH"],
            ["Movement", "Set 1", "Set 2", "Set 3", "Set 4", "Rest"],
            ["Barbell bench press", 8, 8, 6, 6, "3min"],
            ["Machine shoulder press", 10, 10, 8, None, "2min"],
            ["Cable crossover", 15, 12, 12, None, "75s"],
            ["PULL"],
            ["Movement", "Set 1", "Set 2", "Set 3", "Set 4", "Rest"],
            ["Chin ups", 8, 8, 8, None, "2-3min"],
            ["Seal row", 10, 10, 10, None, "2min"],
            ["Reverse pec deck", 15, 15, None, None, "60s"],
            ["LEGS"],
            ["Movement", "Set 1", "Set 2", "Set 3", "Set 4", "Rest"],
            ["Hack squat", 10, 8, 8, 6, "3min"],
            ["Stiff leg deadlift", 10, 10, 10, None, "2-3min"],
            ["Hip adduction", 15, 15, None, None, "60s"],
        ],
    )
    for row in (1, 6, 11):
        sheet.cell(row, 1).font = Font(bold=True)
        for column in range(1, 7):
            sheet.cell(row, column).fill = PatternFill("solid", fgColor="FFD966")


BUILDERS: dict[str, Callable[[Workbook], None]] = {
    "16-weeks": weeks,
    "17-set-columns": set_columns,
}


def built(stem: str) -> bytes:
    """One of the workbooks."""
    book = Workbook()
    BUILDERS[stem](book)
    into = BytesIO()
    book.save(into)
    return into.getvalue()
