"""What a week shows."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

import pytest

from setwright.plan.log import Replaced, SetRecord, Skipped
from setwright.training.review import review, week_to_review

# A story from conftest.py begins on this Monday.
FIRST = date(2026, 9, 7)
Make = Callable[..., Any]


def test_done_in_full(story: Make) -> None:
    facts = story().weeks(2).facts(1)
    assert [(one.session, one.done_sets, one.planned_sets) for one in facts.sessions] == [
        ("First", 12, 12),
        ("Second", 12, 12),
    ]
    assert facts.sessions[0].done_on == FIRST + timedelta(7)
    assert facts.sessions[0].done_minutes == pytest.approx(45, abs=10)
    assert [(one.done_sets, one.planned_sets) for one in facts.kept] == [(24, 24), (24, 24)]
    assert facts.unsaid == ()
    assert facts.pain == ()
    assert facts.odd == ()


def test_a_missed_session_counts_against_the_plan_with_its_reason(story: Make) -> None:
    facts = story().week(0).week(1, missed=("Second",)).facts(1)
    first, second = facts.sessions
    assert first.done_on is not None
    assert (second.done_on, second.reason) == (None, "no time")
    assert facts.kept[-1].done_sessions == 1
    assert facts.kept[-1].done_sets == 12


def test_skipped_and_replaced_exercises_are_told(story: Make) -> None:
    made = story().week(0)
    kept = [one for one in made.records if getattr(one, "exercise", "") != "leg-extension"]
    made.records = [
        *kept,
        Skipped(id=made.id("s"), at=made.at(0, "thursday", 1), exercise="leg-extension",
                reason="equipment"),
        Replaced(id=made.id("r"), at=made.at(0, "thursday", 2), exercise="cable-curl",
                 by="dumbbell-curl", reason="no time"),
    ]  # fmt: skip
    facts = made.facts(0)
    assert {(one.exercise, one.by) for one in facts.left_out} == {
        ("leg-extension", None),
        ("cable-curl", "dumbbell-curl"),
    }
    assert facts.unsaid == ()


def test_what_is_left_out_without_a_word_is_told(story: Make) -> None:
    made = story().week(0)
    made.records = [one for one in made.records if getattr(one, "exercise", "") != "leg-extension"]
    assert made.facts(0).unsaid == ("leg-extension",)


def test_the_dose_done_is_shares_times_sets(story: Make) -> None:
    from setwright.anatomy.atlas import index
    from setwright.exercises import catalogue

    made = story().week(0)
    doses = {one.part: one for one in made.facts(0).parts}
    wanted = sum(
        entry.sets * catalogue.shares()[catalogue.row(entry.exercise)]
        for session in made.plan.sessions
        for entry in session.exercises
    )
    for name, dose in doses.items():
        assert dose.done == pytest.approx(wanted[index()[name]], abs=1e-6)
        assert dose.done == pytest.approx(dose.planned, abs=1e-6)
        assert dose.low <= dose.growth <= dose.high


def test_less_done_is_less_dose_and_less_growth(story: Make) -> None:
    half = {one.part: one for one in story().week(0, missed=("Second",)).facts(0).parts}
    biceps = half["biceps-long-head"]
    assert biceps.done < biceps.planned
    assert biceps.growth < biceps.planned_growth


def test_strength_that_falls_beyond_noise(story: Make) -> None:
    facts = story().weeks(8, gain=0.012, falling={"leg-press": -0.03}).facts(7)
    assert [one.exercise for one in facts.changes if one.fell] == ["leg-press"]


def test_strength_that_rises_beyond_noise(story: Make) -> None:
    facts = story().weeks(8, gain=0.012).facts(7)
    assert all(one.rose and not one.fell for one in facts.changes)
    assert facts.rose == facts.changes
    assert all(one.low <= one.percent <= one.high for one in facts.changes)


def test_an_exercise_that_stays_where_it_was_stalls(story: Make) -> None:
    facts = story().weeks(12, gain=0.01, falling={"leg-extension": -0.003}).facts(11)
    assert [one.exercise for one in facts.stalls] == ["leg-extension"]


def test_sets_to_failure_tell_that_calls_are_early(story: Make) -> None:
    facts = story().weeks(6, failure_reps=16).facts(5)
    assert facts.honesty
    assert all(one.honesty.bias > 1 for one in facts.honesty)
    assert facts.honesty[0].exercises


def test_a_load_in_the_other_unit_is_odd_and_asked_about(story: Make) -> None:
    made = story().weeks(4)
    wrong = made.records[-1]
    assert isinstance(wrong, SetRecord)
    made.records[-1] = wrong.model_copy(update={"load_kg": wrong.load_kg / 0.45359237})
    (odd,) = made.facts(3).odd
    assert odd.id == wrong.id
    assert odd.instead_kg == pytest.approx(wrong.load_kg, rel=1e-6)


def test_an_exercise_of_which_nothing_can_be_done(story: Make) -> None:
    made = story().weeks(2)
    made.records = [
        one.model_copy(update={"reps": 0, "rir": None, "to_failure": True})
        if isinstance(one, SetRecord) and one.exercise == "cable-curl"
        else one
        for one in made.records
    ]
    (failed,) = made.facts(1).unable
    assert (failed.exercise, failed.days) == ("cable-curl", 2)
    assert failed.load_kg == 20.0


def test_nothing_after_today_is_looked_at(story: Make) -> None:
    made = story().weeks(2)
    folder = made.folder()
    monday = FIRST + timedelta(7)
    early = review(folder, monday, today=monday).facts
    assert early.under_way
    assert early.sessions[0].done_on == monday
    assert early.sessions[1].done_on is None
    assert early.kept[-1].planned_sessions == 1


@pytest.mark.parametrize(("today", "back"), [(2, 7), (3, 0), (6, 0)])
def test_the_week_to_review_is_the_last_that_is_over(story: Make, today: int, back: int) -> None:
    folder = story().weeks(2).folder()
    monday = FIRST + timedelta(7)
    assert week_to_review(folder, monday + timedelta(today)) == monday - timedelta(back)


def test_without_a_plan_the_week_still_has_facts(story: Make) -> None:
    folder = story().weeks(1).folder()
    facts = review(folder, date(2026, 8, 31)).facts
    assert facts.plan is None
    assert facts.sessions == ()
    assert facts.back == ()
