"""Typed lines of the log."""

from __future__ import annotations

import uuid
from datetime import datetime
from itertools import count
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.documents.errors import DocumentError
from setwright.plan.log import Record
from setwright.plan.log_line import Entering, read_log_line

AT = datetime(2026, 9, 7, 18, 5)
KNOWN = ("11111111-0000-0000-0000-000000000000", "22222222-0000-0000-0000-000000000000")


def read(text: str, unit: Any = "kg", **said: Any) -> tuple[Record, ...]:
    numbers = count()
    entering = Entering(AT, unit, lambda: str(uuid.UUID(int=next(numbers))), said, KNOWN)
    return read_log_line(text, entering, "typed")


def told(record: Record) -> dict[str, Any]:
    return record.model_dump(exclude_defaults=True, exclude={"id", "at", "said"})


SQUAT = {"exercise": "back-squat", "load_kg": 100, "reps": 5}


@pytest.mark.parametrize(
    ("text", "fields"),
    [
        ("back squat 100 x 5", SQUAT),
        ("back squat 100x5 @2", SQUAT | {"rir": 2}),
        ("Back-Squat 100 kg × 5 RPE 8,5", SQUAT | {"rir": 1.5}),
        ("back squat 100 x 5 RIR 0 to failure", SQUAT | {"rir": 0, "to_failure": True}),
        ("back squat 100 x 5 rest 2:30", SQUAT | {"rest_s": 150}),
        ("back squat 100 x 5, rest 3 min, @1", SQUAT | {"rest_s": 180, "rir": 1}),
        ("back squat 100 x 5 warm-up", SQUAT | {"role": "warm-up"}),
        ("back squat 100 x 5 drop set", SQUAT | {"role": "drop"}),
        (
            "back squat 100 x 5 pain left knee 3 technique",
            SQUAT | {"pain": {"where": "left knee", "level": 3}, "technique": True},
        ),
        ("back squat 100 x 5 symptom Fainting", SQUAT | {"symptoms": ("fainting",)}),
        (
            "back squat 100 x 5 note left early, rest was short",
            SQUAT | {"note": "left early, rest was short"},
        ),
        ("back squat 220.5 lb x 5", SQUAT | {"load_kg": 100.0171, "unit": "lb"}),
        (
            "leg press 180 x 12+4p",
            {"exercise": "leg-press", "load_kg": 180, "reps": 12, "partial_reps": 4},
        ),
        ("pull-up +10 x 6", {"exercise": "pull-up", "load_kg": 10, "reps": 6}),
        ("pull-up BW x 6", {"exercise": "pull-up", "load_kg": 0, "reps": 6}),
        ("pull-up x 6", {"exercise": "pull-up", "load_kg": 0, "reps": 6}),
        ("assisted pull-up -20 x 8", {"exercise": "assisted-pull-up", "load_kg": -20, "reps": 8}),
        ("assisted pull-up 20 x 8", {"exercise": "assisted-pull-up", "load_kg": -20, "reps": 8}),
        ("dip -15 assisted x 8", {"exercise": "dip", "load_kg": -15, "reps": 8}),
        (
            "split squat 20/h x 10 left",
            {"exercise": "split-squat", "load_kg": 20, "reps": 10, "side": "left"},
        ),
        ("skip dip because no time", {"exercise": "dip", "reason": "no time"}),
        ("skipped dip: machine broken", {"exercise": "dip", "note": "machine broken"}),
        ("skip dip", {"exercise": "dip"}),
        (
            "replace back squat with leg press because pain",
            {"exercise": "back-squat", "by": "leg-press", "reason": "pain"},
        ),
        ("miss Upper A because ill", {"session": "Upper A", "reason": "ill"}),
        ("body mass 82,5", {"kg": 82.5}),
        ("weighed 180 lb", {"kg": 81.647}),
        ("withdraw last", {"of": KNOWN[1]}),
        ("withdraw 1111", {"of": KNOWN[0]}),
    ],
)
def test_lines(text: str, fields: dict[str, Any]) -> None:
    (record,) = read(text)
    assert told(record) == fields


def test_several_sets_on_a_line() -> None:
    sets = read("back squat 100 x 5,5,4 @3,2,1 rest 180")
    assert [told(one) for one in sets] == [
        SQUAT | {"rir": 3, "rest_s": 180},
        SQUAT | {"rir": 2, "rest_s": 180},
        SQUAT | {"reps": 4, "rir": 1, "rest_s": 180},
    ]
    assert len({one.id for one in sets}) == 3
    assert [told(one)["rir"] for one in read("back squat 100 x 5,5 @2")] == [2, 2]


def test_the_client_unit_holds_for_bare_figures() -> None:
    assert told(read("back squat 225 x 5", unit="lb")[0])["load_kg"] == 102.0583
    assert told(read("back squat 100 kg x 5", unit="lb")[0])["load_kg"] == 100


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("", "allowed: `exercise load x reps`"),
        ("back squat", "allowed: `exercise load x reps`"),
        ("bak sqat 100 x 5", "exercise: found 'bak sqat'; allowed: an exercise"),
        ("leg press x 8", "allowed: a load before the x"),
        ("back squat 3 x 5 x 100", "allowed: one `load x reps`"),
        ("back squat 100 x 5 @12", "typed:1:20: set: found '@12'; allowed: 0 to 10"),
        ("back squat 100 x 5 RPE 11", "found 'RPE 11'; allowed: an RPE from 1 to 10"),
        ("back squat 100 x 5 @3,2", "one effort for all"),
        ("back squat 100 x 5 banana", "found 'banana'; allowed: `@2`"),
        ("back squat 100 x 5 pain knee 12", "allowed: pain from 0 to 10"),
        ("back squat 100 x 5 symptom itch", "chest pain"),
        ("back squat 100 x 500", "reps: found 500; allowed: at most 200"),
        ("back squat 5000 x 5", "load_kg: found 5000.0; allowed: at most 1000"),
        ("back squat -20 x 5", "only bodyweight exercises can be assisted"),
        ("back squat 20/h x 5", "not loaded by hand"),
        ("leg thing BW x 5", "exercise"),
        ("skip banana split", "exercise: found 'banana split'"),
        ("body mass 8", "allowed: `exercise"),
        ("body mass 999", "kg: found 999.0; allowed: at most 300"),
        ("withdraw 3333", "no such record stands in the log"),
    ],
)
def test_bad_lines_name_what_is_wrong(text: str, message: str) -> None:
    with pytest.raises(DocumentError) as caught:
        read(text)
    assert message in str(caught.value)


PIECES = (
    "back squat", "dip", "x", "×", "100", "5", "8,8,7", "@", "RIR", "2", "kg", "lb", "/h", "BW",
    "+10", "-20", "assisted", "left", "pain", "knee", "3", "rest", "2:30", "min", "note", "skip",
    "because", "replace", "with", "miss", "body mass", "82", "withdraw", "last", "to failure",
    "drop", ",", ";", "symptom", "9999999999", "1e5", "²", "٣", "\ud800", "\0", "=", "#",
)  # fmt: skip


@settings(derandomize=True, max_examples=600, deadline=None)
@given(st.lists(st.sampled_from(PIECES), max_size=10).map(" ".join) | st.text(max_size=60))
def test_any_line_is_read_or_refused(text: str) -> None:
    try:
        records = read(text)
    except DocumentError as error:
        assert all(fault.allowed for fault in error.faults)
    else:
        assert records
        assert all(record.model_dump_json() for record in records)
