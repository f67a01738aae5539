"""The whole workbook."""

from __future__ import annotations

from datetime import date, datetime
from io import BytesIO
from typing import TYPE_CHECKING

from setwright.handout.content.model import Content, PartRow
from setwright.handout.workbook.cells import as_text, for_print, formula, head, put
from setwright.handout.workbook.log import LogRows, log_sheet
from setwright.handout.workbook.sessions import sessions_sheet
from setwright.plan.week import Plan

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

PARTS = ("Muscle", "Part", "Sets a week", "Target", "Standing", "Days", "Growth, % a week (80 %)")


def workbook(plan: Plan, content: Content, start: date, paper: str, moment: datetime) -> bytes:
    """Sessions, log, totals, cautions, and for the coach the parts.

    Args:
        plan: the week.
        content: what its handout says.
        start: first day on which a session may fall.
        paper: a4 or letter, for printing.
        moment: date of the document.
    """
    from openpyxl import Workbook

    made = Workbook()
    sheet = made.active
    sheet.title = "Sessions"
    sessions_sheet(sheet, plan, content, paper)
    rows = log_sheet(made.create_sheet("Log"), content, start, paper)
    _totals(made.create_sheet("Totals"), content, rows, paper)
    if content.coach is not None:
        _parts(made.create_sheet("Parts"), content.coach.parts, paper)
    _cautions(made.create_sheet("Cautions"), content, paper)
    made.properties.title = as_text(content.title)
    made.properties.creator = "Setwright"
    made.properties.created = moment.replace(tzinfo=None)
    into = BytesIO()
    made.save(into)
    return into.getvalue()


def _totals(sheet: Worksheet, content: Content, rows: LogRows, paper: str) -> None:
    """Sets done and volume load of every session, as the log has them."""
    unit = content.unit
    head(
        sheet,
        1,
        ("Session", "Sets planned", "Sets done", f"Volume load ({unit})"),
        (36, 14, 12, 20),
    )
    done, volume, whose = (f"Log!${c}${rows.first}:${c}${rows.last}" for c in "HJB")
    for row, session in enumerate(content.sessions, 2):
        put(sheet, row, 1, session.heading)
        put(sheet, row, 2, sum(len(line.sets) for line in session.lines))
        formula(sheet, row, 3, f'=SUMPRODUCT(({whose}=A{row})*({done}<>""))')
        formula(sheet, row, 4, f"=SUMPRODUCT(--({whose}=A{row}),{volume})")
    last = len(content.sessions) + 1
    put(sheet, last + 1, 1, "Week", bold=True)
    for column in "BCD":
        formula(sheet, last + 1, "ABCD".index(column) + 1, f"=SUM({column}2:{column}{last})")
    for_print(sheet, paper)


def _parts(sheet: Worksheet, rows: tuple[PartRow, ...], paper: str) -> None:
    head(sheet, 1, PARTS, (24, 32, 12, 12, 12, 8, 24))
    for number, row in enumerate(rows, 2):
        told = (row.muscle, row.part, row.sets, row.target, row.standing, row.days, row.growth)
        for column, value in enumerate(told, 1):
            put(sheet, number, column, value)
    for_print(sheet, paper)


def _cautions(sheet: Worksheet, content: Content, paper: str) -> None:
    head(sheet, 1, ("Stop signs and cautions",), (110,))
    items = (*content.own_cautions, *content.stop_signs, *content.ask)
    for row, words in enumerate(items, 2):
        put(sheet, row, 1, words)
    for_print(sheet, paper)
