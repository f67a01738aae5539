"""The sheet of sessions: every field of the plan, one exercise a row."""

from __future__ import annotations

from typing import TYPE_CHECKING

from setwright.documents.units import from_kg
from setwright.exercises import catalogue
from setwright.handout.content.model import Content
from setwright.handout.wording import number, rest_words, span, tempo_words
from setwright.handout.workbook.cells import for_print, head, put
from setwright.plan.week import Entry, Plan

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

WIDTHS = (11, 24, 9, 30, 9, 6, 9, 9, 12, 12, 18, 11, 30, 24, 26)
FIRST = 5


def columns(unit: str) -> tuple[str, ...]:
    """The headings; everything of the plan, then what the rehearsal and the kit add."""
    return (
        "Day",
        "Session",
        "Minutes",
        "Exercise",
        "Superset",
        "Sets",
        "Reps",
        "RIR",
        "Rest",
        "Tempo",
        "Partials",
        f"Load ({unit})",
        "Note",
        "Warm up",
        "Station taken",
    )


def sessions_sheet(sheet: Worksheet, plan: Plan, content: Content, paper: str) -> None:
    """Fill the sheet.

    Args:
        sheet: an empty one.
        plan: the week, whose fields come unrounded and in its own order.
        content: what the handout says, for warm-ups and stand-ins.
        paper: a4 or letter.
    """
    put(sheet, 1, 1, f"Plan: {plan.title}", bold=True)
    put(sheet, 2, 1, f"Person: {plan.person}")
    put(sheet, 3, 1, f"Unit: {plan.unit}")
    for row in (1, 2, 3):
        sheet.merge_cells(start_row=row, start_column=1, end_row=row, end_column=len(WIDTHS))
    head(sheet, FIRST, columns(plan.unit), WIDTHS)
    row = FIRST
    for session, shown in zip(plan.sessions, content.sessions, strict=True):
        extras = {line.exercise: (", ".join(line.ramp), line.substitute) for line in shown.lines}
        for entry in session.exercises:
            row += 1
            ramp, stand_in = extras.get(entry.exercise, ("", ""))
            told = (session.day.capitalize(), session.name, session.minutes)
            for column, value in enumerate((*told, *_entry(entry, plan), ramp, stand_in), 1):
                put(sheet, row, column, value)
    for_print(sheet, paper)


def _entry(entry: Entry, plan: Plan) -> tuple[str | float | None, ...]:
    load = None if entry.load_kg is None else round(from_kg(entry.load_kg, plan.unit), 6)
    first, last = entry.rir
    return (
        catalogue.exercise(entry.exercise).name,
        entry.superset,
        entry.sets,
        span(*entry.reps),
        number(first) if first == last else f"{number(first)}-{number(last)}",
        rest_words(entry.rest_s),
        tempo_words(entry.tempo),
        entry.partials,
        load,
        entry.note,
    )
