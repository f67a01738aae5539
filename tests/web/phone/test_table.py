"""What the phone looks up is what the engine says once the set is really logged."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from phone_practice import log_bench, plan_text, send_week, today

from setwright.plan.log import Log, Pain, SetRecord
from setwright.web.engine.folder import folder_of
from setwright.web.phone.day import day_of
from setwright.web.phone.suggestion import suggested
from setwright.web.phone.table import table

ROW = "one-arm-dumbbell-row"
BENCH = "barbell-bench-press"


@pytest.fixture
def folder(person):
    send_week(person, plan_text())
    log_bench(person)
    return folder_of(person)


def a_record(number: int, load_kg: float, reps: int, rir: float | None, **fields) -> SetRecord:
    at = datetime.combine(today(), datetime.min.time()) + timedelta(hours=12, minutes=3 * number)
    return SetRecord(
        id=f"00000000-0000-4000-8000-00000000000{number}",
        at=at,
        exercise=BENCH,
        load_kg=load_kg,
        reps=reps,
        rir=rir,
        number=number,
        rest_s=None if number == 1 else 150,
        **fields,
    )


def after(folder, *records):
    """The bench press of a day with these sets."""
    day = day_of(replace(folder, log=Log((*folder.log.records, *records))), today())
    entry, planned = day.now.places[0].now
    return day, entry, planned


def the_row(rows, kind, number, kg, reps, rir):
    (found,) = [
        one
        for one in rows
        if (one.kind, one.number, one.kg, one.reps, one.rir) == (kind, number, kg, reps, rir)
    ]
    return found


@pytest.mark.parametrize(
    ("kg", "reps", "rir"),
    [(60.0, 8, 1.0), (60.0, 4, 0.0), (60.0, 11, 4.0), (60.0, 9, None), (57.5, 7, 2.0)],
)
def test_a_row_says_what_the_engine_says_then(folder, kg, reps, rir) -> None:
    day, entry, planned = after(folder)
    row = the_row(table(day.client, entry, planned), "plain", 1, kg, reps, rir)
    day, entry, planned = after(folder, a_record(1, kg, reps, rir))
    then = suggested(day.client, entry, planned, "kg")
    assert (row.next_kg, row.next_reps, row.next_rir, row.rest_s) == (
        then["kg"], then["reps"], then["rir"], then["rest_s"],
    )  # fmt: skip
    assert list(row.because) == then["because"]


def test_rows_after_the_first_set_stand_on_it(folder) -> None:
    day, entry, planned = after(folder, a_record(1, 60, 5, 0))
    assert {one.number for one in table(day.client, entry, planned)} == {2}
    row = the_row(table(day.client, entry, planned), "plain", 2, 60.0, 6, 1.0)
    day, entry, planned = after(folder, a_record(1, 60, 5, 0), a_record(2, 60, 6, 1))
    then = suggested(day.client, entry, planned, "kg")
    assert (row.next_kg, row.next_reps, row.rest_s) == (then["kg"], then["reps"], then["rest_s"])


def test_with_pain_the_row_is_lighter_and_never_heavier(folder) -> None:
    day, entry, planned = after(folder)
    rows = table(day.client, entry, planned)
    row = the_row(rows, "lighter", 1, 60.0, 8, 2.0)
    pain = Pain(where="shoulder", level=5)
    day, entry, planned = after(folder, a_record(1, 60, 8, 2, pain=pain))
    then = suggested(day.client, entry, planned, "kg")
    assert row.next_kg == then["kg"] < 60
    assert all(one.next_kg is None or one.next_kg <= one.kg for one in rows if one.kind != "plain")


def test_wherever_a_load_would_rise_there_is_a_row_that_does_not(folder) -> None:
    day, entry, planned = after(folder)
    rows = table(day.client, entry, planned)
    rises = {
        (one.number, one.kg, one.reps, one.rir)
        for one in rows
        if one.kind == "plain" and one.next_kg is not None and one.next_kg > one.kg
    }
    held = {(o.number, o.kg, o.reps, o.rir) for o in rows if o.kind == "not heavier"}
    assert rises and rises == held


def test_a_drop_in_performance_is_answered_with_a_longer_rest(folder) -> None:
    day, entry, planned = after(folder, a_record(1, 60, 9, 1))
    rows = table(day.client, entry, planned)
    fine, drop = (the_row(rows, "plain", 2, 60.0, reps, 1.0) for reps in (8, 5))
    assert drop.rest_s > fine.rest_s or (drop.next_kg or 0) < 60


def test_nothing_is_worked_out_for_an_exercise_that_is_over(folder) -> None:
    pain = Pain(where="shoulder", level=8)
    day, entry, planned = after(folder, a_record(1, 60, 8, 2, pain=pain))
    assert table(day.client, entry, planned) == ()
