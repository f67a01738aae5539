"""From intake to week: limits kept, honest about the rest, the same every time."""

from __future__ import annotations

from pathlib import Path

import pytest

from setwright.design.design import Design, design
from setwright.documents.errors import DocumentError
from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.plan.intake import Avoidance, Intake
from setwright.plan.limits import avoidance
from setwright.plan.read import read_intake
from setwright.plan.write import write_plan

INTAKES = Path(__file__).parents[2] / "examples" / "intakes"
NAMES = ("01-two-short-days-one-pair", "06-shoulder-and-knee-pain")
SECONDS = 3.0
# The warm-up sets depend on loads that are chosen after the minutes are settled.
CLOCK_TOLERANCE = 1.02


def person(name: str) -> Intake:
    return read_intake((INTAKES / f"{name}.yaml").read_text("utf-8"), name)


@pytest.fixture(scope="module", params=NAMES)
def designed(request: pytest.FixtureRequest) -> tuple[Intake, Design]:
    intake = person(request.param)
    return intake, design(intake, seconds=SECONDS)


def test_each_session_within_its_minutes(designed: tuple[Intake, Design]) -> None:
    intake, found = designed
    minutes = {day.day: day.minutes for day in intake.days}
    lived = found.audit.rehearsal.sessions
    assert found.plan.sessions
    for session, one in zip(found.plan.sessions, lived, strict=True):
        assert session.day is not None
        assert one.total_s <= 60 * minutes[session.day] * CLOCK_TOLERANCE, session.name


def test_nothing_avoided_and_everything_can_be_done(designed: tuple[Intake, Design]) -> None:
    intake, found = designed
    gym = stock_of(intake.gym, intake.kit)
    for session in found.plan.sessions:
        for entry in session.exercises:
            exercise = catalogue.exercise(entry.exercise)
            assert avoidance(intake, exercise) is None, entry.exercise
            assert gym.can_do(exercise), entry.exercise


def test_avoided_patterns_are_not_there(designed: tuple[Intake, Design]) -> None:
    intake, found = designed
    banned = {avoid.pattern for avoid in intake.avoid}
    entries = [entry for session in found.plan.sessions for entry in session.exercises]
    assert not banned & {catalogue.exercise(entry.exercise).pattern for entry in entries}


def test_the_example_with_pain_does_avoid_something() -> None:
    banned = {avoid.pattern for avoid in person(NAMES[1]).avoid if avoid.pattern}
    assert banned == {"vertical press", "squat", "lunge"}


def test_every_miss_is_declared(designed: tuple[Intake, Design]) -> None:
    _, found = designed
    assert [(miss.criterion, miss.subject) for miss in found.audit.misses] == []


def test_report_is_sound(designed: tuple[Intake, Design]) -> None:
    _, found = designed
    assert 0.0 <= found.report.gap <= 1.0
    assert found.report.growth > 0
    assert found.report.more_minutes_gain >= 0
    assert found.report.options > 0
    assert all(item.because for item in found.plan.unavoidable)


def test_same_intake_same_plan(designed: tuple[Intake, Design]) -> None:
    intake, found = designed
    assert write_plan(design(intake, seconds=SECONDS).plan) == write_plan(found.plan)


def test_an_intake_that_leaves_nothing_says_so() -> None:
    patterns = sorted({exercise.pattern for exercise in catalogue.exercises()})
    everything = tuple(Avoidance(pattern=pattern, reason="pain") for pattern in patterns)
    intake = person(NAMES[0]).model_copy(update={"avoid": everything})
    with pytest.raises(DocumentError, match="no exercise"):
        design(intake, seconds=1.0)


def test_minutes_too_few_for_any_session_say_so() -> None:
    intake = person(NAMES[0])
    days = tuple(day.model_copy(update={"minutes": 3}) for day in intake.days)
    with pytest.raises(DocumentError, match="no session that fits"):
        design(intake.model_copy(update={"days": days}), seconds=1.0)
