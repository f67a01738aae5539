"""Plain forms: whatever is typed becomes a record or a word on what is wrong."""

from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.plan.log_store import RECORDS
from setwright.web.phone.clock import wall_clock
from setwright.web.phone.plain_form import KINDS, FieldError, record_of_form

NOW = datetime(2026, 9, 7, 18, 5, 30)
IDENT = "6a0e4f43-0f29-4a0e-8f7c-0d2a0f9f5a11"
NAMES = ("load", "reps", "rir", "partial_reps", "pain_level", "pain_where", "number", "mass", "of")


@settings(derandomize=True, max_examples=200, deadline=None)
@given(
    st.sampled_from([*KINDS, "plan"]),
    st.dictionaries(st.sampled_from(NAMES), st.text(max_size=8)),
    st.sampled_from(["kg", "lb"]),
)
def test_any_typing_is_read_or_refused_in_words(kind, typed, unit) -> None:
    try:
        record = record_of_form({"kind": kind, "id": IDENT} | typed, [], NOW, unit)
    except FieldError as error:
        assert str(error)
    else:
        assert record["kind"] == kind and record["at"] == "2026-09-07T18:05:30"


@settings(derandomize=True, max_examples=100, deadline=None)
@given(st.integers(0, 400), st.integers(0, 200), st.sampled_from([",", "."]))
def test_a_set_in_order_is_a_record_of_the_log(tenths, reps, mark) -> None:
    typed = {"kind": "set", "id": IDENT, "exercise": "back-squat", "reps": str(reps)}
    typed["load"] = f"{tenths // 10}{mark}{tenths % 10}"
    record = RECORDS.validate_python(record_of_form(typed, [], NOW, "kg"))
    assert (record.load_kg, record.reps) == (tenths / 10, reps)


def test_pounds_become_kilograms() -> None:
    typed = {"kind": "set", "id": IDENT, "exercise": "back-squat", "reps": "5", "load": "135"}
    assert record_of_form(typed, [], NOW, "lb")["load_kg"] == pytest.approx(61.23497)


@settings(derandomize=True, deadline=None)
@given(st.text(max_size=6))
def test_any_cookie_gives_a_time_within_a_day(cookie) -> None:
    now = datetime(2026, 9, 7, 12, tzinfo=UTC)
    assert abs(wall_clock(cookie, now) - datetime(2026, 9, 7, 12)) <= timedelta(hours=14)


def test_the_wall_east_and_west() -> None:
    now = datetime(2026, 9, 7, 23, 30, tzinfo=UTC)
    assert wall_clock("-540", now) == datetime(2026, 9, 8, 8, 30)
    assert wall_clock("300", now) == datetime(2026, 9, 7, 18, 30)
