"""The preview of an import: a line a row, what is asked apart, shared reasons told once."""

from setwright.handout.import_preview import preview_text
from setwright.handout.plan_import_text import attention_text
from setwright.plan.foreign.importing import import_plan

TABLE = b"""Day,Exercise,Sets,Reps,RPE,Done
Push,Bench press,3,6-8,8,
Push,Lateral raise,3,AMRAP,9,yes
Push,Cable fly,3,12-15,9,
Pull,Lat pulldown,3,8-12,8,
Pull,Cable row,3,8-12,8,
"""


def lines_of(data: bytes, name: str) -> list[str]:
    return preview_text(import_plan(data, name)).splitlines()


def test_a_row_of_a_table_is_one_line_and_a_day_is_told_once() -> None:
    lines = lines_of(TABLE, "plan.csv")
    assert sum("Bench press | 3 | 6-8 | 8" in line for line in lines) == 1
    assert sum(line.startswith("# ") and "Monday" in line for line in lines) == 1
    assert sum(line.startswith("# ") and "Thursday" in line for line in lines) == 1
    assert any("headings of columns" in line for line in lines)


def test_a_cell_that_is_asked_about_stands_under_its_row() -> None:
    lines = lines_of(TABLE, "plan.csv")
    at = next(n for n, line in enumerate(lines) if "Lateral raise" in line)
    assert lines[at].startswith("…") and "waits for D3" in lines[at]
    assert lines[at + 1].startswith("?") and "AMRAP" in lines[at + 1]


def test_a_reason_of_many_lines_is_told_once() -> None:
    text = preview_text(import_plan(TABLE, "plan.csv"))
    assert text.count("RPE read as 10 less the repetitions in reserve") == 1
    assert text.count("[a]") >= 4


def test_every_line_of_a_note_has_its_own_line() -> None:
    notes = b"Hi Bo,\nMonday\nBench press 3x8\nFlurble 3x8\nsee you\n"
    lines = lines_of(notes, "a.txt")
    assert [line.split()[-4:] for line in lines if "Flurble" in line]
    assert sum(line[:1] in "#?·… " and line.strip() != "" for line in lines[3:]) >= 5


def test_what_is_left_out_is_said_after_the_questions() -> None:
    text = attention_text(import_plan(TABLE, "plan.csv"))
    assert text.endswith("B3 is left out until that is answered.")
