"""The session to come as one piece: warm-up, order, notes, and a session that must not be."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.plan.week import Session
from setwright.training.next_session import next_session
from setwright.training.trouble import Trouble

BOUNDED = settings(derandomize=True, max_examples=20, deadline=None)
NAMES = ("barbell-bench-press", "lat-pulldown", "cable-curl", "pull-up")


def session_on(diary, day, names=NAMES):
    planned = Session(
        name="Upper", day="monday", exercises=tuple(diary.entry(name) for name in names)
    )
    monday = 739495
    return next_session(
        diary.lifter, planned, diary.intake, monday + day, diary.block, diary.past, diary.gym
    )


def trained(new_diary, **changes):
    diary = new_diary(**changes)
    for day in (0, 7, 14):
        for name, load in zip(NAMES, (60.0, 50.0, 20.0, 0.0), strict=True):
            diary.outing(day, load, (10, 9, 9), exercise=name)
    return diary


def test_the_warm_up_leads_to_the_first_load(new_diary):
    diary = trained(new_diary)
    found = session_on(diary, 21)
    assert [one.prescribed.exercise for one in found.exercises] == list(NAMES)
    press = found.exercises[0]
    loads = [one.load_kg for one in press.warm_up]
    assert len(loads) == 2
    assert loads == sorted(loads)
    assert loads[-1] < press.prescribed.sets[0].load_kg
    assert "a side" in press.how
    for one in found.exercises:
        steps = diary.ladder(one.prescribed.exercise).steps
        assert all(ramp.load_kg in steps for ramp in one.warm_up)
        assert all(ramp.load_kg < one.prescribed.sets[0].load_kg for ramp in one.warm_up)


def test_a_symptom_that_stands_leaves_no_session(new_diary):
    diary = trained(new_diary)
    diary.past.report("cable-curl", 739495 + 14, Trouble(symptoms=("dizziness",)))
    stopped = session_on(diary, 21)
    assert stopped.exercises == ()
    assert stopped.symptoms == ("dizziness",)
    assert "licensed professional" in stopped.notes[0]
    assert stopped.evidence == ("flag-faint",)


@pytest.mark.parametrize(("days_after", "trains"), [(-30, False), (0, False), (2, True)])
def test_only_a_later_clearance_lifts_a_symptom(new_diary, days_after, trains):
    reported = 739495 + 14
    answers = {
        "active_last_3_months": True,
        "clearance": True,
        "cleared_on": date.fromordinal(reported + days_after),
    }
    diary = trained(new_diary, screening=answers)
    diary.past.report("cable-curl", reported, Trouble(symptoms=("dizziness",)))
    assert len(session_on(diary, 21).exercises) == (len(NAMES) if trains else 0)


def test_a_clearance_without_a_day_lifts_nothing(new_diary):
    diary = trained(new_diary, screening={"active_last_3_months": True, "clearance": True})
    diary.past.report("cable-curl", 739495 + 14, Trouble(symptoms=("dizziness",)))
    assert session_on(diary, 21).exercises == ()


@pytest.mark.parametrize(("word", "day"), [("illness", 21), ("break", 50)])
def test_what_is_special_about_the_day_is_said(new_diary, word, day):
    diary = trained(new_diary)
    if word == "illness":
        diary.past.ill_until = 739495 + 18
    found = session_on(diary, day)
    assert any(word in note for note in found.notes)
    assert all(len(one.prescribed.sets) < 3 for one in found.exercises)


@BOUNDED
@given(names=st.lists(st.sampled_from(NAMES), min_size=1, unique=True), day=st.integers(15, 60))
def test_every_exercise_is_answered_without_a_log(new_diary, names, day):
    diary = new_diary(body_mass_kg=None)
    found = session_on(diary, day, tuple(names))
    assert [one.prescribed.exercise for one in found.exercises] == names
    for one in found.exercises:
        assert one.prescribed.because
        assert all(each.load_kg is None and each.reps == 8 for each in one.prescribed.sets)
