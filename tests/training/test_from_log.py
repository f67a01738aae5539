"""Sets of the log as the estimate of strength reads them."""

from __future__ import annotations

import uuid
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from setwright.plan.intake import Intake
from setwright.plan.log import BodyMass, Record, SetRecord, Withdrawn, log_of
from setwright.plan.read import read_intake
from setwright.training.from_log import done_sets, left_out
from setwright.training.past import past_from_log

AT = datetime(2026, 9, 7, 18, 5)
EXAMPLE = Path(__file__).parents[2] / "examples" / "intake.yaml"


@pytest.fixture(scope="module")
def intake() -> Intake:
    told = read_intake(EXAMPLE.read_text("utf-8"), "intake.yaml")
    return told.model_copy(update={"body_mass_kg": 80.0})


def a_set(place: int, exercise: str = "leg-press", load: float = 100, **more: Any) -> SetRecord:
    fields = {"id": str(uuid.UUID(int=place)), "at": AT, "exercise": exercise, "load_kg": load}
    return SetRecord.model_validate({"reps": 5, **fields, **more})


def mass(place: int, kg: float, days: int = 0) -> BodyMass:
    return BodyMass(id=str(uuid.UUID(int=place)), at=AT + timedelta(days=days), kg=kg)


@pytest.mark.parametrize(
    ("exercise", "load", "system"),
    [
        ("leg-press", 100, 100),
        ("back-squat", 100, 100 + 0.85 * 80),
        ("pull-up", 10, 90),
        ("pull-up", -20, 60),
        # With the assistance told, the whole body is lifted less the assistance.
        ("assisted-pull-up", -20, 60),
        ("assisted-pull-up", 0, 0.7 * 80),
        # A load in each hand counts twice.
        ("split-squat", 20, 40 + 0.8 * 80),
    ],
)
def test_system_load(intake: Intake, exercise: str, load: float, system: float) -> None:
    (one,) = done_sets(log_of([a_set(1, exercise, load)]), intake)
    assert one.system_kg == pytest.approx(system)
    assert one.load_kg == load


def test_body_mass_is_that_of_the_day(intake: Intake) -> None:
    pulls: list[Record] = [
        a_set(place, "pull-up", 0, at=AT + timedelta(days=days))
        for place, days in ((1, -9), (2, 1), (3, 9))
    ]
    log = log_of([*pulls, mass(8, 90), mass(9, 85, days=5)])
    assert [one.system_kg for one in done_sets(log, intake)] == [80, 90, 85]
    # Nothing said before the first weighing: the first is the best that is known.
    assert [one.system_kg for one in done_sets(log, None)] == [90, 90, 85]


def test_what_says_nothing_of_strength_is_left_out_with_its_reason() -> None:
    log = log_of(
        [
            a_set(1),
            a_set(2, role="warm-up"),
            a_set(3, role="drop"),
            a_set(4, "pull-up", 0),
            a_set(5, "face-band-thing", 10),
            a_set(6, reps=0),
            a_set(7, symptoms=("dizziness",)),
            a_set(8, pain={"where": "knee", "level": 4}),
            a_set(9, pain={"where": "knee", "level": 4}, rir=1),
            a_set(10),
            Withdrawn(id=str(uuid.UUID(int=11)), at=AT, of=str(uuid.UUID(int=10))),
        ]
    )
    assert [uuid.UUID(one.id).int for one in done_sets(log)] == [1, 9]
    reasons = {uuid.UUID(record.id).int: why for record, why in left_out(log)}
    assert reasons == {
        4: "body mass is not known",
        5: "an exercise that is not in the catalogue",
        6: "no repetition was done",
        7: "ended by a symptom",
        8: "pain, and no word on the effort",
    }


def test_sets_are_numbered_by_exercise_and_day() -> None:
    log = log_of(
        [
            a_set(1, role="warm-up"),
            a_set(2),
            a_set(3, "leg-extension"),
            a_set(4),
            a_set(5, at=AT + timedelta(days=1)),
        ]
    )
    sets = [(uuid.UUID(one.id).int, one.number) for one in done_sets(log)]
    assert sets == [(2, 1), (3, 1), (4, 2), (5, 1)]


def test_sides_of_one_load_are_one_set() -> None:
    log = log_of(
        [
            a_set(1, side="left", reps=10, rir=2),
            a_set(2, side="right", reps=12, rir=1, to_failure=True, rest_s=60),
            a_set(3, side="left", reps=9),
            a_set(4, side="right", reps=9, load=90),
            a_set(5, side="left", reps=8),
        ]
    )
    rows = [(uuid.UUID(one.id).int, one.number, one.reps, one.rir) for one in done_sets(log)]
    assert rows == [(1, 1, 11, 1.5), (3, 2, 9, None), (4, 3, 9, None), (5, 4, 8, None)]
    # One side alone at its limit is no set to failure of both.
    assert not done_sets(log)[0].to_failure


def test_a_partial_repetition_counts_half() -> None:
    (one,) = done_sets(log_of([a_set(1, reps=8, partial_reps=3)]))
    assert one.reps == 9.5


def test_day_and_minute() -> None:
    (one,) = done_sets(log_of([a_set(1)]))
    assert (one.day, one.minute) == (AT.toordinal(), 18 * 60 + 5)


def test_a_day_without_a_repetition_is_remembered_until_one_is_done() -> None:
    tried = a_set(1, load=100, reps=0), a_set(2, load=90, reps=0)
    day = AT.toordinal()
    past = past_from_log(log_of([*tried]))
    assert past.failed_kg("leg-press", day - 1) is None
    assert past.failed_kg("leg-press", day) == past.failed_kg("leg-press", day + 7) == 90
    later = a_set(3, load=60, at=AT + timedelta(days=3))
    assert past_from_log(log_of([*tried, later])).failed_kg("leg-press", day + 7) is None
