"""The workbook in LibreOffice: opened, calculated, saved and read back."""

from __future__ import annotations

import os
import shutil
import subprocess
from datetime import UTC, date, datetime
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook

from setwright.handout.content.model import Content
from setwright.handout.workbook.build import workbook
from setwright.plan.week import Plan

START, MOMENT = date(2026, 3, 2), datetime(2026, 3, 1, tzinfo=UTC)
FIRST = 5
# Load, repetitions, RIR as somebody types them; None is a cell left blank.
TYPED = (
    (100.0, 8, 2.0),
    (102.5, 6, 0.5),
    (60.0, 12, None),
    (60.0, 0, 1.0),
    (None, 10, 1.0),
    (42.5, None, 1.0),
)


def soffice() -> str:
    found = os.environ.get("SOFFICE") or shutil.which("soffice") or shutil.which("libreoffice")
    if found is None:
        pytest.fail("no soffice on the path: run scripts/ensure_programs.sh, or set SOFFICE")
    return found


def saved_again(made: bytes, folder: Path) -> Path:
    """The workbook as LibreOffice writes it after opening and calculating it."""
    (folder / "week.xlsx").write_bytes(made)
    words = (
        soffice(),
        f"-env:UserInstallation={(folder / 'profile').as_uri()}",
        "--headless",
        "--convert-to",
        "xlsx:Calc MS Excel 2007 XML",
        "--outdir",
        str(folder / "again"),
        str(folder / "week.xlsx"),
    )
    done = subprocess.run(words, capture_output=True, text=True, timeout=120, check=False)
    again = folder / "again" / "week.xlsx"
    assert again.is_file(), done.stdout + done.stderr
    return again


def filled(made: bytes) -> bytes:
    """The first rows of the log with what was typed."""
    book = load_workbook(BytesIO(made))
    for row, typed in enumerate(TYPED, FIRST):
        for column, value in zip((7, 8, 9), typed, strict=True):
            book["Log"].cell(row, column).value = value
    into = BytesIO()
    book.save(into)
    return into.getvalue()


@pytest.fixture(scope="module")
def again(
    plan: Plan, client_content: Content, tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Any]:
    """The filled workbook, calculated: its values, and the same with formulas and checks."""
    made = filled(workbook(plan, client_content, START, "a4", MOMENT))
    unread = load_workbook(BytesIO(made), data_only=True)["Log"]
    assert unread.cell(FIRST, 10).value is None  # nothing was calculated before
    path = saved_again(made, tmp_path_factory.mktemp("client"))
    return {"values": load_workbook(path, data_only=True), "formulas": load_workbook(path)}


def test_volume_load_and_estimated_1rm(again: dict[str, Any]) -> None:
    sheet = again["values"]["Log"]
    for row, (load, reps, rir) in enumerate(TYPED, FIRST):
        volume, best = sheet.cell(row, 10).value, sheet.cell(row, 11).value
        if load is None or reps is None:
            assert not volume and not best
            continue
        assert volume == pytest.approx(load * reps)
        if reps == 0:
            assert not best
        else:
            # The Epley equation, on repetitions done and left.
            assert best == pytest.approx(round(load * (1 + (reps + (rir or 0)) / 30), 1))


def test_rows_left_blank_stay_blank(again: dict[str, Any]) -> None:
    sheet = again["values"]["Log"]
    for row in range(FIRST + len(TYPED), sheet.max_row + 1):
        assert not sheet.cell(row, 10).value and not sheet.cell(row, 11).value


def test_totals_of_the_week(again: dict[str, Any], client_content: Content) -> None:
    log, sheet = again["values"]["Log"], again["values"]["Totals"]
    week = [0, 0, 0.0]
    for row, session in enumerate(client_content.sessions, 2):
        typed = [
            one for at, one in enumerate(TYPED, FIRST) if log.cell(at, 2).value == session.heading
        ]
        want = (
            sum(len(line.sets) for line in session.lines),
            sum(reps is not None for _, reps, _ in typed),
            sum((load or 0) * (reps or 0) for load, reps, _ in typed),
        )
        assert sheet.cell(row, 1).value == session.heading
        assert [sheet.cell(row, n).value for n in (2, 3, 4)] == pytest.approx(list(want))
        week = [one + other for one, other in zip(week, want, strict=True)]
    last = [sheet.cell(len(client_content.sessions) + 2, n).value for n in (2, 3, 4)]
    assert last == pytest.approx(week) and week[1] == 5


def test_checks_of_what_is_typed_are_kept(again: dict[str, Any]) -> None:
    checks = again["formulas"]["Log"].data_validations.dataValidation
    kinds = {str(one.sqref)[0]: one.type for one in checks}
    assert kinds == {"A": "date", "G": "decimal", "H": "whole", "I": "decimal"}


def test_hostile_words_stay_words(hard: Plan, hard_content: Content, tmp_path: Path) -> None:
    path = saved_again(workbook(hard, hard_content, START, "letter", MOMENT), tmp_path)
    seen, calculated = 0, load_workbook(path, data_only=True)
    for sheet in load_workbook(path):
        values = calculated[sheet.title]
        for row in sheet.iter_rows():
            for cell in row:
                value = values[cell.coordinate].value
                assert values[cell.coordinate].data_type != "e", (cell.coordinate, value)
                assert cell.hyperlink is None
                if isinstance(value, str):
                    assert not value.startswith(("#NAME", "#VALUE", "#REF", "Err:"))
                if "HYPERLINK" in str(cell.value):
                    assert cell.data_type == "s"
                    seen += 1
    assert seen == 12
