"""Sets that say nothing of strength are sets all the same: the phone counts them."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from phone_practice import send_week, today

from setwright.plan.log import Log, Pain, SetRecord
from setwright.web.engine.folder import folder_of
from setwright.web.phone.counted import count_of
from setwright.web.phone.day import day_of
from setwright.web.phone.suggestion import suggested

PLAN = """\
setwright: plan/1
title: A bar and a wall
sessions:
  - name: Whole
    day: {day}
    exercises:
      - Push-up: 3 x 6-10, RIR 2-1, rest 120-150 s
      - Goblet squat: 3 x 6-10, RIR 2-1, rest 120-150 s
"""


def a_record(number: int, exercise: str = "push-up", **fields) -> SetRecord:
    at = datetime.combine(today(), datetime.min.time()) + timedelta(hours=12, minutes=3 * number)
    said = {"load_kg": 5.0, "reps": 8, "rir": 1, "number": number} | fields
    ident = f"00000000-0000-4000-8000-0000000000{number:02}"
    return SetRecord(id=said.pop("id", ident), at=at, exercise=exercise, **said)


@pytest.fixture
def next_after(person):
    """The set that the phone asks for after these, at one of the places."""
    days = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
    send_week(person, PLAN.format(day=days[today().weekday()]))
    folder = folder_of(person)

    def asked(*records: SetRecord, place: int = 0):
        day = day_of(replace(folder, log=Log((*folder.log.records, *records))), today())
        return suggested(day.client, *day.now.places[place].now, "kg")

    return asked


def test_without_a_body_mass_the_sets_go_on(next_after) -> None:
    first = next_after()
    assert (first["number"], first["kg"]) == (1, None)
    second = next_after(a_record(1))
    assert (second["number"], second["kg"], second["over"]) == (2, 5.0, False)
    assert second["because"] == ["As planned, at the same load: body mass is not known."]
    assert second["rest_s"] == 150
    done = next_after(a_record(1), a_record(2), a_record(3))
    assert done["over"] and done["because"] == ["All sets of this exercise are done."]


def test_pain_makes_the_next_set_lighter_there_too(next_after) -> None:
    hurts = {"pain": Pain(where="wrist", level=4)}
    lighter = next_after(a_record(1, **hurts))
    assert lighter["number"] == 2 and lighter["kg"] < 5.0
    nothing = next_after(a_record(1, load_kg=0.0, **hurts))
    assert nothing["over"] and "no lighter load" in nothing["because"][0]


def test_a_set_that_is_not_read_keeps_its_number(next_after) -> None:
    """A set that hurt, without a word on the effort, between sets that are read."""
    squat = {"exercise": "goblet-squat", "load_kg": 20.0}
    hurt = a_record(2, **squat, rir=None, pain=Pain(where="knee", level=2))
    assert next_after(a_record(1, **squat), hurt, place=1)["number"] == 3
    assert next_after(a_record(1, **squat), hurt, a_record(3, **squat), place=1)["over"]


def test_sides_of_one_number_are_one_set_and_nothing_done_is_none() -> None:
    left, right = (
        a_record(1, side="left"),
        a_record(1, side="right", id="0" * 8 + "-0000-4000-8000-" + "1" * 12),
    )
    assert count_of([left]) == count_of([left, right]) == 1
    assert count_of([left, a_record(2, side="right")]) == 2
    assert count_of([a_record(1, reps=0), a_record(2)]) == 1
    assert count_of([a_record(1, reps=0, partial_reps=3)]) == 1
