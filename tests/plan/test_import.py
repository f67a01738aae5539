"""Tables of sets: every line is a record, a question or a heading, however often it is imported."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence
from datetime import date, datetime, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.documents.errors import DocumentError
from setwright.plan.importing.columns import find_columns
from setwright.plan.importing.importer import Imported, import_table
from setwright.plan.importing.question import spread
from setwright.plan.importing.settings import Settings
from setwright.plan.importing.table import read_table
from setwright.plan.log import BodyMass, Log, Record, SetRecord, Skipped, log_of

TODAY = date(2026, 11, 25)


def imported(
    text: str | bytes,
    log: Sequence[Record] = (),
    said: dict[str, str] | None = None,
    answers: dict[str, str] | None = None,
    **more: Any,
) -> Imported:
    raw = text.encode() if isinstance(text, str) else text
    table = read_table(raw, "diary.csv")
    columns = find_columns(table, said or {})
    settings = Settings(
        unit=more.pop("unit", "kg"), today=TODAY, answers=spread(answers or {}), **more
    )
    return import_table(table, columns, settings, log_of(log))


def one(text: str, **more: Any) -> SetRecord:
    result = imported(text, **more)
    assert result.questions == ()
    (record,) = result.records
    assert isinstance(record, SetRecord)
    return record


def asked(text: str, **more: Any) -> tuple[str, str]:
    result = imported(text, **more)
    assert result.records == ()
    (question,) = result.questions
    return question.kind, question.key


def row(**cells: str | None) -> str:
    """A table of one line; a cell of None takes its column away."""
    base = {"Date": "2026-09-07", "Exercise": "back squat", "Weight": "100", "Reps": "5"}
    return table_of([{key: cell for key, cell in {**base, **cells}.items() if cell is not None}])


def table_of(rows: Sequence[dict[str, str]], delimiter: str = ",") -> str:
    out = io.StringIO()
    headings = list(dict.fromkeys(key for cells in rows for key in cells))
    writer = csv.DictWriter(out, headings, delimiter=delimiter, restval="")
    writer.writeheader()
    writer.writerows(rows)
    return out.getvalue()


def test_a_plain_table() -> None:
    record = one(row(RIR="2", Rest="180", Notes="fine"))
    assert (record.exercise, record.load_kg, record.reps, record.rir) == ("back-squat", 100, 5, 2)
    assert (record.rest_s, record.note) == (180, "fine")
    assert record.at == datetime(2026, 9, 7)


@pytest.mark.parametrize(
    ("cells", "field", "value"),
    [
        ({"Weight (lb)": "225", "Weight": None}, "load_kg", 102.0583),
        ({"Weight": "225 lbs"}, "load_kg", 102.0583),
        ({"Weight": "62,5"}, "load_kg", 62.5),
        ({"Exercise": "pull-up", "Weight": "BW+10"}, "load_kg", 10),
        ({"Exercise": "pull-up", "Weight": "BW"}, "load_kg", 0),
        ({"Exercise": "pull-up", "Weight": ""}, "load_kg", 0),
        ({"Exercise": "assisted pull-up", "Weight": "20"}, "load_kg", -20),
        ({"Exercise": "assisted pull-up", "Weight": "-20 assisted"}, "load_kg", -20),
        ({"Exercise": "dip", "Weight": "", "Assistance": "15"}, "load_kg", -15),
        ({"Exercise": "split squat", "Weight": "20/h"}, "load_kg", 20),
        ({"Exercise": "split squat", "Weight": "40 total"}, "load_kg", 20),
        ({"Reps": "8+3p"}, "partial_reps", 3),
        ({"RPE": "8"}, "rir", 2),
        ({"RPE": "8,5"}, "rir", 1.5),
        ({"RPE": "@9"}, "rir", 1),
        ({"RIR": "failure"}, "to_failure", True),
        ({"Failure": "x"}, "to_failure", True),
        ({"Set type": "W"}, "role", "warm-up"),
        ({"Set type": "Drop set"}, "role", "drop"),
        ({"Side": "L"}, "side", "left"),
        ({"Rest": "2:30"}, "rest_s", 150),
        ({"Rest (min)": "2,5"}, "rest_s", 150),
        ({"Rest": "3"}, "rest_s", 180),
        ({"Rest": "00:02:30"}, "rest_s", 150),
        ({"Date": "7 Sep 2026, 18:05"}, "at", datetime(2026, 9, 7, 18, 5)),
        ({"Date": "September 7, 2026 at 6:05 PM"}, "at", datetime(2026, 9, 7, 18, 5)),
        ({"Date": "07.09.2026"}, "at", datetime(2026, 9, 7)),
        ({"Date": "46272"}, "at", datetime(2026, 9, 7)),
        ({"Date": "Mon 07.09.26", "Time": "18:05"}, "at", datetime(2026, 9, 7, 18, 5)),
        ({"Date": "25/09/2026"}, "at", datetime(2026, 9, 25)),
        ({"Date": "9/25/2026"}, "at", datetime(2026, 9, 25)),
        ({"Technique": "broke down"}, "technique", True),
        ({"Symptoms": "Dizziness"}, "symptoms", ("dizziness",)),
    ],
)
def test_ways_to_write_a_set(cells: dict[str, str | None], field: str, value: object) -> None:
    assert getattr(one(row(**cells)), field) == value


@pytest.mark.parametrize(
    ("cells", "kind", "key"),
    [
        ({"Exercise": "calf thing"}, "exercise", "calf thing"),
        ({"Weight": "9999"}, "impossible", "2 load"),
        ({"Weight": "-20"}, "load", "2 load"),
        ({"Weight": "heavy"}, "load", "2 load"),
        ({"Weight": ""}, "no load", "2 load"),
        ({"Weight": "0"}, "no load", "2 load"),
        ({"Reps": "400"}, "impossible", "2 reps"),
        ({"Reps": "8-10"}, "reps", "2 reps"),
        ({"Reps": ""}, "no reps", "2 reps"),
        ({"RPE": "12"}, "effort", "2 rpe"),
        ({"RIR": "11"}, "effort", "2 rir"),
        ({"Effort": "8"}, "effort", "2 effort"),
        ({"Date": "07/09/2026"}, "date order", "date order"),
        ({"Date": "yesterday"}, "date", "2 date"),
        ({"Date": "2026-02-30"}, "date", "2 date"),
        ({"Date": "2026-12-24"}, "impossible", "2 date"),
        ({"Date": "1926-09-07"}, "impossible", "2 date"),
        ({"Date": ""}, "date", "2 date"),
        ({"Rest": "a while"}, "cell", "2 rest"),
        ({"Side": "middle"}, "cell", "2 side"),
        ({"Pain": "yes"}, "cell", "2 pain"),
        ({"Pain": "knee 12"}, "cell", "2 pain"),
        ({"Symptoms": "funny"}, "cell", "2 symptom"),
        ({"Notes": "x" * 600}, "note", "2 note"),
        ({"Unit": "stone"}, "unit", "2 unit"),
        ({"Weight": "", "Reps": ""}, "no set", "lines without figures"),
    ],
)
def test_what_is_unclear_is_asked(cells: dict[str, str], kind: str, key: str) -> None:
    if cells == {"Weight": "0"}:
        cells = cells | {"Exercise": "bench press"}
    assert asked(row(**cells)) == (kind, key)


@pytest.mark.parametrize(
    ("cells", "answers", "field", "value"),
    [
        ({"Exercise": "calf thing"}, {"Calf  Thing": "leg curl"}, "exercise", "lying-leg-curl"),
        ({"Weight": "9999"}, {"2 load": "99,9"}, "load_kg", 99.9),
        ({"Reps": "150"}, {"2": "keep"}, "reps", 150),
        ({"Date": "2026-12-24"}, {"2 date": "2026-10-24"}, "at", datetime(2026, 10, 24)),
        ({"Weight": "225"}, {"2": "lb"}, "load_kg", 102.0583),
        ({"Symptoms": "funny"}, {"2 symptom": "no"}, "symptoms", ()),
    ],
)
def test_answers(cells: dict[str, str], answers: dict[str, str], field: str, value: object) -> None:
    assert getattr(one(row(**cells), answers=answers), field) == value


@pytest.mark.parametrize("answers", [{"2": "leave out"}, {"calf thing": "leave out"}])
def test_a_line_left_out_as_answered(answers: dict[str, str]) -> None:
    result = imported(row(Exercise="calf thing"), answers=answers)
    assert (result.records, result.questions, result.left_out) == ((), (), (2,))


def test_lines_without_figures_may_have_been_skipped() -> None:
    rows = [{**squats([100])[0], "Weight": "", "Reps": "", "Set": str(place)} for place in (1, 2)]
    result = imported(table_of(rows), answers={"lines without figures": "skipped"})
    assert [type(record) for record in result.records] == [Skipped]
    assert (result.questions, result.record_lines) == ((), (2, 3))


def test_date_order_is_said_or_proven() -> None:
    assert one(row(Date="07/09/2026"), order="dmy").at.month == 9
    assert one(row(Date="07/09/2026"), order="mdy").at.month == 7
    rows = [
        {"Date": day, "Exercise": "dip", "Weight": "10", "Reps": "5"}
        for day in ("07/09/2026", "25/09/2026")
    ]
    assert [record.at.month for record in imported(table_of(rows)).records] == [9, 9]


@pytest.mark.parametrize(
    ("cells", "loads", "reps"),
    [
        ({"Reps": "8,8,7"}, [100, 100, 100], [8, 8, 7]),
        ({"Reps": "3x8"}, [100, 100, 100], [8, 8, 8]),
        ({"Sets": "3"}, [100, 100, 100], [5, 5, 5]),
        ({"Sets": "3", "Reps": "8,8,7"}, [100, 100, 100], [8, 8, 7]),
        ({"Weight": "100; 105; 110", "Reps": "8,8,7"}, [100, 105, 110], [8, 8, 7]),
        ({"Weight": "", "Reps": "", "Performed": "60x8,8,7"}, [60, 60, 60], [8, 8, 7]),
        ({"Weight": "", "Reps": "", "Performed": "60x8, 62,5 x 6"}, [60, 62.5], [8, 6]),
        ({"Weight": "", "Reps": "", "Set 1": "60x8", "Set 2": "65x6"}, [60, 65], [8, 6]),
        (
            {"Weight": "", "Reps": "", "Reps 1": "8", "Weight 1": "60", "Reps 2": "6",
             "Weight 2": "65", "Reps 3": "", "Weight 3": ""},
            [60, 65], [8, 6],
        ),
    ],
)  # fmt: skip
def test_several_sets_in_a_line(cells: dict[str, str], loads: list[float], reps: list[int]) -> None:
    result = imported(row(**cells))
    sets = [record for record in result.records if isinstance(record, SetRecord)]
    assert result.questions == ()
    assert ([one.load_kg for one in sets], [one.reps for one in sets]) == (loads, reps)


def test_a_day_and_an_exercise_stand_above_their_sets() -> None:
    text = (
        "My diary\n\nDate;Exercise;kg;Reps\n07.09.2026;;;\n;Back squat;;\n;;100;5\n;;100;4\n"
        ";Dip;10;8\nDate;Exercise;kg;Reps\n09.09.2026;Dip;12,5;8\n"
    )
    result = imported(text, said={"load": "kg"})
    assert result.questions == ()
    assert [(r.exercise, r.at.day) for r in result.records if isinstance(r, SetRecord)] == [
        ("back-squat", 7), ("back-squat", 7), ("dip", 7), ("dip", 9),
    ]  # fmt: skip
    assert result.headings == (1, 3, 4, 5, 9)


def test_numbered_columns_without_repetitions_are_no_sets() -> None:
    assert one(row(**{"RPE 12": ""})).reps == 5
    assert one(row(**{"Set 1": ""})).reps == 5
    assert one(row(**{"Set 1": "60x8"})).reps == 8


def test_sets_numbered_from_zero() -> None:
    rows = [{**squats([100])[0], "Set": number} for number in ("0", "1", "2")]
    sets = imported(table_of(rows)).records
    assert [one.number for one in sets if isinstance(one, SetRecord)] == [1, 2, 3]


def test_the_day_is_found_by_content_or_said() -> None:
    cells = {"Date": None, "start_time": "7 Sep 2026, 18:05"}
    assert one(row(**cells)).at == datetime(2026, 9, 7, 18, 5)
    with pytest.raises(DocumentError, match="no column for the day"):
        imported(row(Date=None))


def test_a_rest_of_nothing_is_a_rest() -> None:
    assert one(row(Rest="0")).rest_s == 0
    assert one(row(Rest="")).rest_s is None


def test_body_mass_is_told_once_a_day() -> None:
    rows = [
        {
            "Date": "2026-09-07",
            "Exercise": "dip",
            "Time": clock,
            "Weight": "10",
            "Reps": "8",
            "Bodyweight": "82,5",
        }
        for clock in ("18:10", "18:05")
    ]
    masses = [one for one in imported(table_of(rows)).records if isinstance(one, BodyMass)]
    assert [(mass.kg, mass.at.minute) for mass in masses] == [(82.5, 5)]


def squats(loads: Sequence[float]) -> list[dict[str, str]]:
    start = date(2026, 3, 2)
    return [
        {
            "Date": str(start + timedelta(weeks=week)),
            "Exercise": "back squat",
            "Weight": f"{load:g}",
            "Reps": "5",
        }
        for week, load in enumerate(loads)
    ]


@pytest.mark.parametrize(
    ("loads", "lines"),
    [
        ([100, 102.5, 105, 231, 107.5], (5,)),
        ([100, 102.5, 105, 48, 107.5], (5,)),
        ([100, 102.5, 105, 235, 240, 240, 245, 250, 250, 250], tuple(range(5, 12))),
        ([100, 60, 105, 150, 80, 120], ()),
    ],
)
def test_a_factor_of_2_2_is_asked_about(loads: list[float], lines: tuple[int, ...]) -> None:
    result = imported(table_of(squats(loads)))
    assert tuple(line for one in result.questions for line in one.lines) == lines
    assert len(result.records) == len(loads) - len(lines)
    if lines:
        assert result.questions[0].key == "back-squat units"


def test_the_log_itself_tells_what_is_usual() -> None:
    log = imported(table_of(squats([100, 102.5, 105]))).records
    later = table_of([{**squats([235])[0], "Date": "2026-04-06"}])
    assert imported(later, log).questions[0].key == "back-squat units"
    kept = imported(later, log, answers={"back-squat units": "keep"})
    assert [one.load_kg for one in kept.records if isinstance(one, SetRecord)] == [235]
    pounds = imported(later, log, answers={"back-squat units": "lb"}).records
    assert [(p.load_kg, p.unit) for p in pounds if isinstance(p, SetRecord)] == [(106.5942, "lb")]


def test_a_typed_set_is_not_imported_a_second_time_without_asking() -> None:
    typed = SetRecord(
        id="00000000-0000-0000-0000-000000000001",
        at=datetime(2026, 9, 7, 18, 5),
        exercise="back-squat",
        load_kg=100,
        reps=5,
        rir=2,
    )
    text = table_of(squats([100])).replace("2026-03-02", "2026-09-07")
    result = imported(text, [typed])
    assert (result.records, result.questions[0].key) == ((), "already in the log")
    assert len(imported(text, [typed], answers={"already in the log": "keep"}).fresh) == 1
    assert imported(text, [typed], answers={"already in the log": "leave out"}).left_out == (2,)


def test_the_same_set_number_twice_is_asked() -> None:
    rows = [{**squats([100])[0], "Set": number} for number in ("1", "2", "2")]
    result = imported(table_of(rows))
    assert [one.lines for one in result.questions] == [(4,)]
    # Without numbers three equal sets are three sets.
    assert len(imported(table_of(squats([100]) * 3)).records) == 3


CELLS = {
    "Date": st.sampled_from(["2026-09-07", "2026-09-08", "7 Oct 2026", "", "soon", "07/08/2026"]),
    "Exercise": st.sampled_from(["Back squat", "pull-up", "dip", "calf thing", "", "split squat"]),
    "Set": st.sampled_from(["", "1", "2", "3", "x"]),
    "Weight": st.sampled_from(["100", "62,5", "220", "BW+10", "-20", "", "lots", "20/h", "135 lb"]),
    "Reps": st.sampled_from(["5", "8", "8,8,7", "8+3p", "", "9999", "3x8"]),
    "RPE": st.sampled_from(["", "8", "9.5", "11"]),
    "Pain": st.sampled_from(["", "knee 3", "0", "much"]),
}
WHOLE = {
    "Date": st.sampled_from(["2026-09-07", "2026-09-08", "2026-09-15"]),
    "Exercise": st.sampled_from(["Back squat", "pull-up", "dip"]),
    "Set": st.sampled_from(["1", "2", "3"]),
    "Weight": st.sampled_from(["10", "12.5", "BW+15"]),
    "Reps": st.sampled_from(["5", "8", "7+2p"]),
}
any_rows = st.lists(st.fixed_dictionaries(CELLS), min_size=1, max_size=12)
whole_rows = st.lists(st.fixed_dictionaries(WHOLE), min_size=1, max_size=14)
quick = settings(derandomize=True, max_examples=150, deadline=None)


@quick
@given(rows=any_rows)
def test_nothing_is_dropped(rows: list[dict[str, str]]) -> None:
    """Every line is a record, a question, a heading, left out as answered, or blank."""
    result = imported(table_of([*rows, WHOLE_ROW]))
    held = {line for question in result.questions for line in question.lines}
    filled = {place + 2 for place, cells in enumerate([*rows, WHOLE_ROW]) if any(cells.values())}
    assert {*result.record_lines, *held, *result.headings} == filled | {1}
    assert not held & set(result.record_lines)


WHOLE_ROW = {
    "Date": "2026-09-07", "Exercise": "leg press", "Set": "1", "Weight": "150", "Reps": "10",
    "RPE": "8", "Pain": "",
}  # fmt: skip


@quick
@given(rows=any_rows)
def test_importing_twice_is_importing_once(rows: list[dict[str, str]]) -> None:
    text = table_of([*rows, WHOLE_ROW])
    first = imported(text)
    assert len({record.id for record in first.records}) == len(first.records)
    again = imported(text, first.fresh)
    assert again.fresh == ()
    assert again.questions == first.questions


@quick
@given(rows=whole_rows, data=st.data())
def test_the_order_of_the_lines_does_not_matter(
    rows: list[dict[str, str]], data: st.DataObject
) -> None:
    shuffled = data.draw(st.permutations(rows))
    answers = {"repeated lines": "keep"}
    first = imported(table_of(rows), answers=answers)
    second = imported(table_of(shuffled), answers=answers)
    assert set(first.records) == set(second.records)


@quick
@given(rows=whole_rows, cut=st.integers(0, 14), delimiter=st.sampled_from(",;\t|"))
def test_a_part_first_and_the_whole_later(
    rows: list[dict[str, str]], cut: int, delimiter: str
) -> None:
    answers = {"repeated lines": "keep"}
    whole = imported(table_of(rows), answers=answers)
    part = imported(table_of(rows[:cut] or rows, delimiter), answers=answers)
    rest = imported(table_of(rows), part.records, answers=answers)
    assert {r.id for r in (*part.records, *rest.fresh)} == {r.id for r in whole.records}
    assert rest.questions == ()


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"\n\n\n",
        b"just some words\n",
        b"Date,Weight\n2026-09-07,100\n",
        b"Exercise,Date\ndip,2026-09-07\n",
        bytes(range(256)),
        b"PK\x03\x04 and then nothing",
    ],
)
def test_what_is_no_table_is_refused(raw: bytes) -> None:
    with pytest.raises(DocumentError):
        imported(raw)


def test_a_wrong_map_is_refused() -> None:
    with pytest.raises(DocumentError, match="one of: 'Date', 'Exercise'"):
        imported(row(), said={"load": "Kilos"})
    with pytest.raises(DocumentError, match="--map"):
        imported(row(), said={"lode": "Weight"})


def test_an_empty_log_is_no_reference() -> None:
    assert imported(table_of(squats([100, 220]))).questions == ()
    assert Log().sets() == ()
