"""The log sheet: one row a set, checked as it is typed, with volume load and 1RM estimate."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import TYPE_CHECKING

from setwright.handout.calendar import day_of
from setwright.handout.content.model import Content
from setwright.handout.workbook.cells import for_print, formula, head, put

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

WIDTHS = (12, 34, 32, 6, 12, 12, 11, 8, 8, 13, 13, 30)
FIRST = 4
NOTE = (
    "Volume load is load times repetitions. The 1RM estimate is the Epley equation on the "
    "repetitions done and those left in reserve: load x (1 + (reps + RIR) / 30), rough at high "
    "repetitions. Both count the load that is written, without the weight of the body."
)


@dataclass(frozen=True)
class LogRows:
    """Where the log stands: first and last row with a set."""

    first: int
    last: int


def columns(unit: str) -> tuple[str, ...]:
    """The headings."""
    return (
        "Date",
        "Session",
        "Exercise",
        "Set",
        "Planned reps",
        "Planned RIR",
        f"Load ({unit})",
        "Reps",
        "RIR",
        f"Volume load ({unit})",
        f"1RM estimate ({unit})",
        "Note",
    )


def log_sheet(sheet: Worksheet, content: Content, start: date, paper: str) -> LogRows:
    """Fill the sheet with the sets of one week, ready to be written in.

    Args:
        sheet: an empty one.
        content: what the handout says.
        start: first day on which a session may fall.
        paper: a4 or letter.
    """
    put(sheet, 1, 1, "Log of one week", bold=True)
    put(sheet, 2, 1, NOTE)
    for row, height in ((1, 18), (2, 32)):
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=len(WIDTHS))
        sheet.row_dimensions[row].height = height
    head(sheet, FIRST, columns(content.unit), WIDTHS)
    row = FIRST
    for session in content.sessions:
        for line in session.lines:
            for one in line.sets:
                row += 1
                told = (day_of(session, start), session.heading, line.name, one.number)
                for column, value in enumerate((*told, line.reps, float(one.rir)), 1):
                    put(sheet, row, column, value)
                sheet.cell(row, 1).number_format = "yyyy-mm-dd"
                _formulas(sheet, row)
    rows = LogRows(FIRST + 1, row)
    _checks(sheet, rows)
    for_print(sheet, paper)
    return rows


def _formulas(sheet: Worksheet, row: int) -> None:
    formula(sheet, row, 10, f'=IF(OR(G{row}="",H{row}=""),"",G{row}*H{row})')
    formula(
        sheet,
        row,
        11,
        f'=IF(OR(G{row}="",N(H{row})=0),"",ROUND(G{row}*(1+(H{row}+N(I{row}))/30),1))',
    )


def _checks(sheet: Worksheet, rows: LogRows) -> None:
    """What may be typed into the columns to be filled in."""
    from openpyxl.worksheet.datavalidation import DataValidation

    limits = (
        ("A", "date", "36526", "73050", "a date, for example 2026-03-02"),
        ("G", "decimal", "0", "2500", "a load from 0 to 2500"),
        ("H", "whole", "0", "100", "whole repetitions from 0 to 100"),
        ("I", "decimal", "0", "10", "repetitions in reserve from 0 to 10"),
    )
    for column, kind, least, most, words in limits:
        check = DataValidation(
            type=kind, operator="between", formula1=least, formula2=most, allow_blank=True,
            errorTitle="Not possible", error=f"Type {words}.", showErrorMessage=True,
        )  # fmt: skip
        check.add(f"{column}{rows.first}:{column}{rows.last}")
        sheet.add_data_validation(check)
