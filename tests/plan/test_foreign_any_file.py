"""Whatever a file holds: no traceback, and every line or cell accounted for."""

import csv
import importlib.util
import io
import re
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import Workbook

from setwright.documents.errors import DocumentError
from setwright.plan.foreign.form import read_form
from setwright.plan.foreign.importing import import_plan
from setwright.plan.read import read_plan
from setwright.plan.write import write_plan

HERE = Path(__file__).parent


def built(folder: str) -> dict[str, bytes]:
    """The workbooks of a folder of plans, and its other files."""
    path = HERE / folder / "workbooks.py"
    spec = importlib.util.spec_from_file_location(f"{folder}_any", path)
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    files = {one.name: one.read_bytes() for one in sorted((HERE / folder).glob("[0-9]*"))
             if one.suffix != ".expected"}  # fmt: skip
    return files | {f"{stem}.xlsx": module.built(stem) for stem in module.BUILDERS}


PLANS = sorted((built("imports") | built("imports_fresh")).items())
FAST = settings(max_examples=120, derandomize=True, deadline=None)
PIECES = st.sampled_from(
    [
        "Monday", "Day 2", "Push", "Week 1", "Week 2", "Back squat", "Bench press", "Cradle squat",
        "3x8", "3 x 8-12", "4 x AMRAP", "12/10/8", "3 sets of 10", "RIR 2", "RPE 8-9", "@8", "@75%",
        "Superset:", "90s", "2'", "1:30", "1-3 min", "rest", "82,5 kg", "185 lb", "#",
        "A1", "[", "]", "SS:", "+", "/", "tempo 3-1-1-0", "31X0", "note", "Note: x", "Client: Bo",
        "All: RIR 2", "Sets",
        "Reps", "Exercise", "Rest (s)", "Load (lb)", "2026-10-08", "08. Okt", "-", "=1+1", "skip",
        "\u0000", "\u2028", "’", "½", "٣x٨", "３x８", "🏋", "0x0", "99999999999", "1e9", "nan", "--",
        "Montag", "Bankdrücken", "séries de", "al fallo", "repos", "| Exercise | Sets | Reps |",
        "|---|---|", "Set", "Set 1", "W1", "W2", "Wed", "Superset: ", " into ", "then", "and",
        "last set to failure", "three sets of ten", "Exercise 1:", "Sets:", "Reps:", "Total", "☐",
        "loads in lb", "RIR 1 on isolation", "wensday", "[A1]",
    ]
)  # fmt: skip
TEXT = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)
LINES = st.lists(PIECES | TEXT, max_size=7).map(" ".join)
GRIDS = st.lists(st.lists(PIECES | LINES, max_size=6), min_size=1, max_size=8)


def read(data: bytes, name: str):
    """The reading, or None when the file is refused with a message."""
    try:
        return import_plan(data, name)
    except DocumentError as error:
        assert str(error)
        return None


def sound(reading) -> None:
    places = [piece.place for piece in reading.pieces]
    assert len(set(places)) == len(places)
    assert not [piece for piece in reading.pieces if piece.why == "not read"]
    assert all(piece.why for piece in reading.attention)
    if reading.plan is not None:
        assert read_plan(write_plan(reading.plan), "plan.yaml") == reading.plan


@given(st.lists(LINES, max_size=12).map("\n".join))
@FAST
def test_any_notes(text) -> None:
    reading = read(text.encode(), "notes.txt")
    if reading is None:
        return
    sound(reading)
    if "\t" not in text:
        lines = text.removeprefix("\ufeff").splitlines()
        places = [int(re.sub(r"\D", "", piece.place)) for piece in reading.pieces]
        # Of a table inside the text every cell is a piece.
        assert list(dict.fromkeys(places)) == [
            at for at, line in enumerate(lines, 1) if re.sub(r"[|\s]", "", line)
        ]


@given(GRIDS, st.sampled_from(",;\t|"))
@FAST
def test_any_csv(grid, delimiter) -> None:
    into = io.StringIO()
    csv.writer(into, delimiter=delimiter).writerows(grid)
    reading = read(into.getvalue().encode(), "plan.csv")
    if reading is not None:
        sound(reading)


@given(GRIDS, st.booleans())
@settings(max_examples=50, derandomize=True, deadline=None)
def test_any_workbook(grid, merge) -> None:
    book = Workbook()
    sheet = book.active
    filled = set()
    for row, cells in enumerate(grid, 1):
        for column, text in enumerate(cells, 1):
            kept = "".join(letter for letter in text if letter.isprintable())
            if kept.strip():
                sheet.cell(row, column).value = kept
                sheet.cell(row, column).data_type = "s"
                filled.add(sheet.cell(row, column).coordinate)
    if merge and len(grid) > 1 and len(grid[0]) > 1:
        sheet.merge_cells(start_row=1, end_row=1, start_column=1, end_column=len(grid[0]))
        filled = {cell.coordinate for row in sheet.iter_rows() for cell in row
                  if getattr(cell, "value", None) is not None}  # fmt: skip
    into = io.BytesIO()
    book.save(into)
    reading = read(into.getvalue(), "plan.xlsx")
    if reading is None:
        assert not filled
        return
    sound(reading)
    assert {piece.place.split(":")[0] for piece in reading.pieces} == filled


@given(st.binary(max_size=400) | st.binary(max_size=200).map(lambda end: b"PK\x03\x04" + end))
@FAST
def test_any_bytes(data) -> None:
    for name in ("a.txt", "a.csv", "a.xlsx"):
        reading = read(data, name)
        if reading is not None:
            sound(reading)


@given(st.sampled_from(PLANS), st.data())
@FAST
def test_a_plan_cut_off_or_damaged(plan, data) -> None:
    name, content = plan
    start = data.draw(st.integers(0, max(len(content) - 1, 0)))
    end = data.draw(st.integers(start, len(content)))
    if data.draw(st.booleans()):
        damaged = content[:end]
    else:
        damaged = content[:start] + data.draw(st.binary(max_size=8)) + content[end:]
    reading = read(damaged, name)
    if reading is not None:
        sound(reading)


@given(st.sampled_from([one for one in PLANS if not one[0].endswith(".xlsx")]), st.randoms())
@FAST
def test_a_plan_with_its_lines_in_another_order(plan, random) -> None:
    name, content = plan
    lines = content.decode().splitlines()
    random.shuffle(lines)
    reading = read("\n".join(lines).encode(), name)
    if reading is not None:
        sound(reading)


def test_more_than_a_plan_holds_is_refused_in_one_message() -> None:
    for name, content in (
        ("a.csv", b"a,b,c,d,e,f,g,h\n" * 4000),
        ("a.txt", b"\n" * 100_000),
        ("a.txt", b"x" * 5000),
    ):
        with pytest.raises(DocumentError) as refused:
            import_plan(content, name)
        assert len(refused.value.faults) == 1


def test_a_line_too_long_for_an_exercise_is_asked_about() -> None:
    long = "Bench press 3x8 and then some more of it " * 20
    reading = import_plan(f"Monday\nBack squat 3x5\n{long}\n".encode(), "a.txt")
    assert [piece.place for piece in reading.attention] == ["3"]
    assert "500 characters" in reading.attention[0].why


@given(GRIDS)
@FAST
def test_any_form(grid) -> None:
    heads = ["Name", "Age", "Experience", "Which days?", "Back pain?", "Best lifts", "Pain?"]
    into = io.StringIO()
    csv.writer(into).writerows([heads, *grid[:1]])
    try:
        reading = read_form(into.getvalue().encode(), "form.csv", None, {})
    except DocumentError as error:
        assert str(error)
        return
    cells = [text for text in (*heads, *grid[0]) if text.strip()]
    assert len([piece for piece in reading.pieces if piece.text]) >= len(cells) - 1
