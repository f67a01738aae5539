from __future__ import annotations

import dataclasses
from datetime import UTC, date, datetime
from io import BytesIO
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook

from setwright.handout.content.model import Content
from setwright.handout.workbook.build import workbook
from setwright.handout.workbook.cells import DANGEROUS, as_text
from setwright.plan.read import read_any_plan
from setwright.plan.week import Plan

START = date(2026, 3, 2)
MOMENT = datetime(2026, 3, 1, tzinfo=UTC)


def opened(plan: Plan, content: Content) -> Any:
    return load_workbook(BytesIO(workbook(plan, content, START, "a4", MOMENT)))


@pytest.fixture(scope="module")
def hard_book(hard: Plan, hard_content: Content) -> Any:
    return opened(hard, hard_content)


def test_the_coach_s_workbook_has_the_parts(
    plan: Plan, coach_content: Content, client_content: Content
) -> None:
    sheets = ["Sessions", "Log", "Totals", "Parts", "Cautions"]
    book = opened(plan, coach_content)
    assert book.sheetnames == sheets
    assert coach_content.coach is not None
    assert book["Parts"].max_row == len(coach_content.coach.parts) + 1
    assert opened(plan, client_content).sheetnames == [one for one in sheets if one != "Parts"]


def test_no_client_text_is_a_formula_or_begins_like_one(hard_book: Any) -> None:
    own = ("IF(OR(", "SUMPRODUCT(", "SUM(")
    seen = 0
    for sheet in hard_book:
        for row in sheet.iter_rows():
            for cell in row:
                if cell.data_type == "f":
                    assert cell.value.startswith(tuple(f"={one}" for one in own)), cell.value
                elif isinstance(cell.value, str):
                    assert not cell.value.startswith(DANGEROUS)
                    seen += cell.value.startswith("'=HYPERLINK")
    assert seen == 12  # two hostile notes a session, on six days
    assert not hard_book["Sessions"]["A1"].hyperlink


@pytest.mark.parametrize("start", DANGEROUS)
def test_every_dangerous_beginning_is_marked(start: str) -> None:
    said = as_text(f"{start}1+1")
    assert said.startswith("'")
    assert not {"\t", "\r", "\x00"} & set(said)
    assert as_text("3-1") == "3-1"


def test_the_log_has_one_row_a_set_with_its_date(plan: Plan, client_content: Content) -> None:
    sheet = opened(plan, client_content)["Log"]
    rows = [row for row in sheet.iter_rows(min_row=5, values_only=True) if row[0]]
    assert len(rows) == sum(entry.sets for one in plan.sessions for entry in one.exercises)
    assert rows[0][0].date() == START and rows[-1][0].date() == date(2026, 3, 5)
    assert [row[3] for row in rows[:3]] == [1, 2, 3]


def test_what_may_be_typed_is_checked(plan: Plan, client_content: Content) -> None:
    sheet = opened(plan, client_content)["Log"]
    checks = {
        str(one.sqref)[0]: (one.type, one.formula1, one.formula2)
        for one in sheet.data_validations.dataValidation
    }
    assert checks["G"] == ("decimal", "0", "2500")
    assert checks["H"] == ("whole", "0", "100")
    assert checks["I"] == ("decimal", "0", "10")
    assert checks["A"][0] == "date"
    assert all(
        str(one.sqref).endswith(str(sheet.max_row)) for one in sheet.data_validations.dataValidation
    )


def test_formulas_name_their_own_row(plan: Plan, client_content: Content) -> None:
    sheet = opened(plan, client_content)["Log"]
    for row in range(5, sheet.max_row + 1):
        assert sheet.cell(row, 10).value == f'=IF(OR(G{row}="",H{row}=""),"",G{row}*H{row})'
        assert f"G{row}*(1+(H{row}+N(I{row}))/30)" in sheet.cell(row, 11).value


def test_the_sessions_sheet_holds_every_field(plan: Plan, client_content: Content) -> None:
    sheet = opened(plan, client_content)["Sessions"]
    rows = [
        dict(zip((cell.value for cell in sheet[5]), row, strict=True))
        for row in sheet.iter_rows(min_row=6, values_only=True)
    ]
    entries = [(one, entry) for one in plan.sessions for entry in one.exercises]
    assert len(rows) == len(entries)
    for row, (session, entry) in zip(rows, entries, strict=True):
        assert row["Day"].lower() == session.day
        assert row["Sets"] == entry.sets
        assert row["Superset"] == entry.superset
        assert row["Partials"] == entry.partials
        assert (row["Note"] or "") == entry.note


def test_rows_say_the_plan_whole(plan: Plan, client_content: Content) -> None:
    """Each row, written as a line of a plan, is read back as the entry it came from."""
    sheet = opened(plan, client_content)["Sessions"]
    lines = ["setwright: plan/1", f"title: '{plan.title}'", "sessions:"]
    before = None
    for row in sheet.iter_rows(min_row=6, values_only=True):
        day, name, minutes, exercise, letter, sets, reps, rir, rest, tempo, partials = row[:11]
        load, note = row[11:13]
        if day != before:
            lines += [f"  - name: {name}", f"    day: {day.lower()}"]
            lines += [f"    minutes: {minutes}"] * (minutes is not None) + ["    exercises:"]
            before = day
        extras = [
            f"tempo {tempo}" if tempo else "",
            f"superset {letter}" if letter else "",
            f"partials {partials}" if partials else "",
            f"{load} kg" if load is not None else "",
            f"note {note}" if note else "",
        ]
        said = ", ".join([f"{sets} x {reps}", f"RIR {rir}", f"rest {rest}", *filter(None, extras)])
        lines.append(f'      - "{exercise}: {said}"')
    again = read_any_plan("\n".join(lines), "rows")
    assert [one.exercises for one in again.sessions] == [one.exercises for one in plan.sessions]


@settings(derandomize=True, max_examples=60, deadline=None)
@given(words=st.text(min_size=1, max_size=40))
def test_any_words_make_a_workbook_that_opens(
    plan: Plan, client_content: Content, words: str
) -> None:
    said = dataclasses.replace(client_content, title=words, person=words)
    book = opened(plan.model_copy(update={"title": words, "person": words}), said)
    for row in book["Sessions"].iter_rows(max_row=3):
        for cell in row:
            assert cell.data_type != "f"
            assert not (isinstance(cell.value, str) and cell.value.startswith(DANGEROUS))
