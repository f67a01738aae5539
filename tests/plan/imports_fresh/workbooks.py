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


def coloured(book: Workbook) -> None:
    """Headings told by colour alone, remarks and links between, totals below, an empty column."""
    sheet = book.active
    _rows(
        sheet,
        [
            [None, "Spring block - Haukur", None, None, None, None, None],
            [None, "RIR 2 unless noted, warm up properly!", None, None, None, None, None],
            [None, "Upper body (Mon)", None, None, None, None, None],
            [None, "Exercise", None, "Sets x Reps", "Load", "Rest", "Video"],
            [None, "Flat DB press", None, "4 x 8-10", "26 kg", "2 min", "https://example.org/a"],
            [None, "Single arm cable row", None, "3 x 10 each", "25 kg", "90 s", None],
            [None, "Machine shoulder press", None, "3 x 8-12", "35 kg", "2 min", None],
            [None, "Rear delt cable fly", None, "3 x 15", "7.5 kg", "60 s", None],
            [None, "Skull crushers / EZ curl", None, "3 x 10-12", None, "60 s", None],
            [None, "Sets in total", None, 16, None, None, None],
            [None, "Lower body (Thu)", None, None, None, None, None],
            [None, "Exercise", None, "Sets x Reps", "Load", "Rest", "Video"],
            [None, "Smith squat", None, "4 x 6-8, RIR 3", "80 kg", "3 min", None],
            [None, "45° back extension", None, "3 x 12", "10 kg", "90 s", None],
            [None, "Single-leg leg extension", None, "3 x 12-15", "20 kg", "60 s", None],
            [None, "Lying leg curl", None, "3 x 10-12", "40 kg", "90 s", None],
            [None, "Leg press calf raise", None, "4 x 15", "100 kg", "45 s", None],
            [None, "Sets in total", None, 17, None, None, None],
            [None, "questions? just text me", None, None, None, None, None],
        ],
    )
    for row in (3, 11):
        for column in range(2, 8):
            sheet.cell(row, column).fill = PatternFill("solid", fgColor="9DC3E6")
    for row in (3, 11):
        sheet.merge_cells(start_row=row, end_row=row, start_column=2, end_column=7)


def german(book: Workbook) -> None:
    """A German sheet a day, figures typed as numbers, rests in seconds, a sheet of explanations."""
    sheet = book.active
    sheet.title = "Tag A"
    heads = ["Nr.", "Übung", "Sätze", "Wdh.", "RIR", "Pause (Sek.)", "Gewicht", "Hinweis"]
    _rows(
        sheet,
        [
            ["Trainingsplan Gudrun, Tag A"],
            heads,
            [1, "Kniebeuge", 4, "6-8", 2, 180, 62.5, None],
            [2, "Langhantelrudern", 3, "8-10", 2, 120, 45, "Rücken gerade"],
            [3, "Schulterdrücken Maschine", 3, 10, "1-2", 120, 25, None],
            [4, "Beinbeuger sitzend", 3, "10-12", 1, 90, 32.5, None],
            [5, "Seitheben am Kabel", 2, "12-15", 0, 60, 5, "je Arm"],
        ],
    )
    _rows(
        book.create_sheet("Tag B"),
        [
            ["Trainingsplan Gudrun, Tag B"],
            heads,
            [1, "Kreuzheben rumänisch", 3, "8-10", 2, 180, 60, None],
            [2, "Schrägbankdrücken KH", 3, "8-12", 2, 120, 16, None],
            [3, "Latziehen eng", 3, "10-12", 1, 90, 40, None],
            [4, "Beinstrecker", 3, "12-15", 1, 90, 35, None],
            [5, "Hammercurls", 2, "10-12", 1, 60, 10, None],
        ],
    )
    _rows(
        book.create_sheet("Erklärung"),
        [["RIR heißt Wiederholungen im Tank."], ["Bei Fragen einfach melden."]],
    )


def logbook(book: Workbook) -> None:
    """A plan with a log beside it: columns a week with load and repetitions under one heading."""
    sheet = book.active
    _rows(
        sheet,
        [
            ["Name:", "Yrsa", None, "Start:", "12 January", None, None, None, None],
            [],
            ["Push/Pull A", None, None, None, None, "Week 1", None, "Week 2", None],
            ["Ex", "Sets", "Reps", "RIR", "Rest", "kg", "reps", "kg", "reps"],
            ["DB bench press", 3, "8-10", 2, "2'", 20, None, None, None],
            ["Lat pulldown", 3, "8-10", 2, "2'", 45, None, None, None],
            ["Shoulder press machine", 2, "10-12", 1, "90''", None, None, None, None],
            ["Rope face pull", 2, "15", 1, "60''", None, None, None, None],
            ["Plank", 2, "40s", None, "60''", None, None, None, None],
            [],
            ["Legs B", None, None, None, None, "Week 1", None, "Week 2", None],
            ["Ex", "Sets", "Reps", "RIR", "Rest", "kg", "reps", "kg", "reps"],
            ["Leg press", 3, "10-12", 2, "2-3'", 100, None, None, None],
            ["Back extension 45", 3, "12", 2, "90''", None, None, None, None],
            ["Leg extension", 2, "12-15", 1, "90''", 35, None, None, None],
            ["Leg curl", 2, "12-15", 1, "90''", 30, None, None, None],
            ["Tib raise", 2, "20", 1, "45''", None, None, None, None],
        ],
    )
    sheet.merge_cells("F3:G3")
    sheet.merge_cells("H3:I3")


def stacked(book: Workbook) -> None:
    """Keys and values above the plan, two days beside each other, twice."""
    sheet = book.active
    sheet.title = "Training"
    _rows(
        sheet,
        [
            ["CLIENT", "Hedda", None, "COACH", "Sverre", None, None, None, None],
            ["PHASE", "Hypertrophy 1", None, "WEEKS", 6, None, None, None, None],
            [],
            ["Day 1: Push", None, None, None, None, "Day 2: Pull", None, None, None],
            ["Exercise", "Sets", "Reps", "RIR", None, "Exercise", "Sets", "Reps", "RIR"],
            ["Smith incline press", 3, "6-10", 2, None, "Chest-supported row", 3, "8-12", 2],
            ["Machine shoulder press", 3, "8-12", 2, None, "Lat pulldown (neutral)", 3, "8-12", 2],
            ["Cable lateral raise", 3, "12-20", 1, None, "Cable rear delt fly", 3, "12-20", 1],
            ["Overhead rope extension", 3, "10-15", 1, None, "Machine preacher curl", 3, "8-12", 1],
            [],
            ["Day 3: Legs", None, None, None, None, "Day 4: Arms & delts", None, None, None],
            ["Exercise", "Sets", "Reps", "RIR", None, "Exercise", "Sets", "Reps", "RIR"],
            ["Pendulum squat", 3, "6-10", 2, None, "Close-grip bench", 3, "8-10", 2],
            ["Seated leg curl", 3, "8-12", 1, None, "EZ-bar curl", 3, "8-12", 1],
            ["Leg extension", 3, "10-15", 1, None, "DB lateral raise", 4, "12-20", 1],
            ["Leg press calf raise", 4, "8-12", 1, None, "Hammer curl", 2, "10-12", 0],
            ["Add a rep or load each week.", None, None, None, None, None, None, None, None],
        ],
    )
    for area in ("A4:D4", "F4:I4", "A11:D11", "F11:I11"):
        sheet.merge_cells(area)


BUILDERS: dict[str, Callable[[Workbook], None]] = {
    "16-weeks": weeks,
    "17-set-columns": set_columns,
    "27-coloured": coloured,
    "34-german": german,
    "47-logbook": logbook,
    "57-stacked": stacked,
}


def built(stem: str) -> bytes:
    """One of the workbooks."""
    book = Workbook()
    BUILDERS[stem](book)
    into = BytesIO()
    book.save(into)
    return into.getvalue()
