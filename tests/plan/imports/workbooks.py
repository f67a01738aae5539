"""Workbooks of our own invention, laid out as coaches do; built here, for XLSX is no text."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, time
from io import BytesIO
from typing import Any

from openpyxl import Workbook
from openpyxl.worksheet.worksheet import Worksheet


def _rows(sheet: Worksheet, rows: list[list[Any]]) -> None:
    for row in rows:
        sheet.append(row)


def merged(book: Workbook) -> None:
    """The day merged downwards over its exercises, the title across."""
    sheet = book.active
    _rows(
        sheet,
        [
            ["Autumn block for Eskil"],
            [],
            ["Day", "Exercise", "Sets", "Reps", "RIR", "Rest", "Load (kg)"],
            ["Monday", "Back squat", 4, "5-6", "3-1", "3 min", 102.5],
            [None, "Seated leg curl", 3, 12, 1, "90 s", 45],
            [None, "Standing calf raise", 3, "12-15", 1, "60 s", 70],
            ["Wednesday", "Bench press", 4, "6-8", 2, "2-3 min", 82.5],
            [None, "Dumbbell row", 3, 10, 2, "90 s", 32.5],
            [None, "Lateral raise", 3, "12-20", 1, "60 s", 8],
            ["Saturday", "Deadlift", 3, 5, 3, "3-4 min", 120],
            [None, "Lat pulldown", 3, "10-12", 2, "2 min", 60],
            [None, "Swimmer's pull", 3, 10, 2, "60 s", None],
        ],
    )
    for area in ("A1:G1", "A4:A6", "A7:A9", "A10:A12"):
        sheet.merge_cells(area)


def by_sheet(book: Workbook) -> None:
    """One sheet a day, named after it, and a sheet of remarks."""
    sheet = book.active
    sheet.title = "Day 1 - Push"
    _rows(
        sheet,
        [
            ["Exercise", "Sets x reps", "Effort", "Rest"],
            ["Machine chest press", "3 x 8-10", "RPE 8", "2'"],
            ["Overhead press", "3x8", "RIR 2", "2'"],
            ["Cable lateral raise", "3 x 15-20", "RIR 1", '60"'],
        ],
    )
    _rows(
        book.create_sheet("Day 2 - Pull"),
        [
            ["Exercise", "Sets x reps", "Effort", "Rest"],
            ["Pull-ups", "4 x 6-8", "RPE 8-9", "2-3 min"],
            ["Machine row", "3 x 10", "RIR 2", "90 s"],
            ["Preacher curl", "3 x as many as you can", "", "60 s"],
        ],
    )
    _rows(book.create_sheet("Remarks"), [["Eat enough."], ["Call me on Sunday."]])


def side_by_side(book: Workbook) -> None:
    """Three days beside each other, each head merged over its own columns."""
    sheet = book.active
    _rows(
        sheet,
        [
            ["Client: Ylva"],
            ["Monday", None, None, "Wednesday", None, None, "Friday", None, None],
            ["Exercise", "Sets", "Reps", "Exercise", "Sets", "Reps", "Exercise", "Sets", "Reps"],
            ["Hack squat", 3, "8-10", "Bench press", 4, "6-8", "Romanian deadlift", 3, "6-8"],
            ["Leg extension", 3, "12-15", "Seated cable row", 3, "10-12", "Leg press", 3, 12],
            ["Lying leg curl", 3, "10-12", "Lateral raise", 4, "15", "Hip thrust", 3, "8-10"],
            ["Crunch", 3, 20, "Hammer curl", "3-4", 12, None, None, None],
        ],
    )
    for area in ("A1:I1", "A2:C2", "D2:F2", "G2:I2"):
        sheet.merge_cells(area)


def typed(book: Workbook) -> None:
    """Cells of every type: dates for repetitions, clock times for rests, shares of 1RM."""
    sheet = book.active
    _rows(
        sheet,
        [
            ["Workout", "Lift", "Sets", "Reps", "Rest", "% 1RM", "Tempo"],
            ["Upper", "Bench press", 3, datetime(2026, 10, 8), time(2, 30), 0.75, "3-1-1-0"],
            ["Upper", "Barbell row", 3.0, 10, time(0, 2, 0), 0.7, 3010],
            ["Upper", "Cable curl", 2, "12,10", 60, None, None],
            ["Lower", "Back squat", 3, 6, time(3, 0), 0.8, "31X0"],
            ["Lower", "Leg curl", 3, "10 - 12", "1:30", None, "slow"],
        ],
    )
    for row in range(2, 7):
        sheet.cell(row, 6).number_format = "0%"


def messy(book: Workbook) -> None:
    """Blank rows, columns nobody needs, headings again, typos, weeks beside the plan."""
    sheet = book.active
    _rows(
        sheet,
        [
            [None, "HYPERTROPHY BLOCK"],
            [None, "Athlete", "Ragna"],
            [],
            [None, "PUSH DAY"],
            [None, "Order", "Muscle", "Exercise", "Sets", "Reps", "Rest (min)", "Week 1", "Cues"],
            [None, "A", "Chest", "Incline dumbell press", 3, "8-10", 2, None, "elbows in"],
            [None, "B1", "Delts", "Latreal raise", 3, "12-15", "1", "7,5", None],
            [None, "B2", "Triceps", "Tricep pushdown", 3, "12-15", "1", None, "no swing"],
            [],
            [None, "PULL DAY"],
            [None, "Order", "Muscle", "Exercise", "Sets", "Reps", "Rest (min)", "Week 1", "Cues"],
            [None, "A", "Back", "Lat puldown", 3, "8-12", "1,5", None, None],
            [None, "B", "Back", "One-arm cable thing", 3, "10", "1", None, None],
            [None, "C", "Biceps", "EZ-bar curl", 3, 10, 1, None, None],
            [None, None, None, None, None, None, None, None, "stop when it hurts"],
            [],
            [None, "LEG DAY"],
            [None, "A", "Quads", "Leg press", 4, "10-12", "2-3", None, "deep"],
            [None, "B", "Hams", "Seated leg curl", 3, "12", "?", None, None],
        ],
    )


def pounds(book: Workbook) -> None:
    """Loads in lb, an empty log beside the plan, supersets by a column."""
    sheet = book.active
    sheet.title = "Program"
    _rows(
        sheet,
        [
            ["Program: Three days for Ottar"],
            ["Rest 90 s between all sets"],
            ["Day", "SS", "Exercise", "Sets", "Reps", "RPE", "Weight (lbs)", "Notes"],
            ["Day 1", None, "Squat", 3, "5-8", 8, 225, None],
            ["Day 1", "A", "Leg extension", 3, "12-15", 9, 90, None],
            ["Day 1", "A", "Seated leg curl", 3, "12-15", 9, 85, None],
            ["Day 2", None, "Bench", 3, "6-8", "8-9", 165, "pause"],
            ["Day 2", "A", "Cable row", 3, "10-12", 8, 120, None],
            ["Day 2", "A", "Push-ups", 3, "to failure", 10, "BW", None],
            ["Day 3", None, "RDL", 3, "8", 7, "185-205", None],
            ["Day 3", None, "Chin-up", 3, "6-8", 8, "-", None],
            ["Day 3", "B", "Hammer curl", 3, "12", 9, 27.5, None],
            ["Day 3", "B", "Skullcrusher", 3, "12", 9, 55, None],
        ],
    )
    log = book.create_sheet("Log")
    _rows(log, [["Date", "Exercise", "Set", "Load", "Reps"], [None, "Squat", 1, None, None]])


BUILDERS: dict[str, Callable[[Workbook], None]] = {
    "15-merged": merged,
    "16-by-sheet": by_sheet,
    "17-side-by-side": side_by_side,
    "18-typed": typed,
    "19-messy": messy,
    "20-pounds": pounds,
}


def built(stem: str) -> bytes:
    """One of the workbooks."""
    book = Workbook()
    BUILDERS[stem](book)
    into = BytesIO()
    book.save(into)
    return into.getvalue()
