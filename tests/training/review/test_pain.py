"""Pain as reported, and symptoms that stop training."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, timedelta
from typing import Any

import pytest

from setwright.plan.symptoms import SYMPTOMS, Symptom
from setwright.sources.library import finding
from setwright.training.pain import answer_to, may_rise, pain_courses
from setwright.training.stop_signs import DAY_SIGNS, STOP_SIGNS, referral

# A story from conftest.py begins on this Monday.
FIRST = date(2026, 9, 7)
Make = Callable[..., Any]


# Pain-monitoring model of a 2007 Achilles tendinopathy trial: up to 3 carry on, 4 and 5 if it
# settles, above 5 stop.
@pytest.mark.parametrize(
    ("level", "answer"),
    [
        (1, "carry on, watching"),
        (3, "carry on, watching"),
        (4, "lighter, other range"),
        (5, "lighter, other range"),
        (6, "stop and exchange"),
        (10, "stop and exchange"),
    ],
)
def test_levels(level: int, answer: str) -> None:
    assert answer_to(level) == answer


@pytest.mark.parametrize("symptom", SYMPTOMS)
def test_every_symptom_has_its_referral_and_its_findings(symptom: Symptom) -> None:
    signs = referral([symptom])
    assert signs
    assert all(finding(source).id == source for sign in signs for source in sign.sources)


def test_nothing_diagnoses() -> None:
    words = " ".join(one.words for one in (*STOP_SIGNS, *DAY_SIGNS)).lower()
    for diagnosis in ("tendinitis", "hernia", "infarct", "stroke", "clot", "tear", "you have"):
        assert diagnosis not in words


def test_any_pain_holds_the_load_of_the_next_time(story: Make) -> None:
    log = story().week(0, pain={"leg-press": 1}).folder().log
    day = FIRST + timedelta(7)
    assert not may_rise("leg-press", log, day)
    assert may_rise("seated-leg-curl", log, day)
    assert may_rise("barbell-curl", log, day)


def test_a_painless_outing_frees_mild_pain_but_not_strong_pain(story: Make) -> None:
    day = FIRST + timedelta(14)
    mild = story().week(0, pain={"leg-press": 2}).week(1).folder().log
    assert may_rise("leg-press", mild, day)


def test_strong_pain_holds_for_two_weeks(story: Make) -> None:
    strong = story().week(0, pain={"leg-press": 6}).week(1).week(2).week(3).folder().log
    assert not may_rise("leg-press", strong, FIRST + timedelta(13))
    assert may_rise("leg-press", strong, FIRST + timedelta(22))


def test_pain_that_rises_twice_stops_the_exercise_below_the_level(story: Make) -> None:
    made = story()
    for week, level in enumerate((1, 2, 3)):
        made.week(week, pain={"leg-press": level})
    (course,) = pain_courses(made.folder().log, FIRST + timedelta(20))
    assert course.rising
    assert course.answer == "stop and exchange"
    assert course.levels == (1, 2, 3)


def test_pain_over_more_than_two_weeks_lasts_and_old_pain_is_forgotten(story: Make) -> None:
    made = story()
    for week in range(4):
        made.week(week, pain={"leg-press": 2})
    log = made.folder().log
    (course,) = pain_courses(log, FIRST + timedelta(27))
    assert course.lasting
    assert not course.rising
    assert pain_courses(log, FIRST + timedelta(60)) == ()
