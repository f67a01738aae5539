"""Changed weeks are real runs, held against the week as it stands."""

from __future__ import annotations

import pytest

from setwright.audit.audit import context_of
from setwright.audit.context import Context
from setwright.exercises import catalogue
from setwright.handout.teaching.not_chosen import near, ruled
from setwright.handout.teaching.trials import run, whole_week, without_each
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.rehearsal.rehearse import rehearse


@pytest.fixture(scope="module")
def context(plan: Plan, intake: Intake) -> Context:
    return context_of(plan, intake)


def test_an_unchanged_week_changes_nothing(context: Context) -> None:
    (same,) = run(context, [("same", context.plan)])
    assert (same.minutes, same.growth, same.low, same.high) == (0, 0, 0, 0)
    assert run(context, []) == ()


def test_leaving_out_loses_growth(context: Context) -> None:
    found = without_each(context)
    assert [one.name for one in found] == [context.subject(item) for item in context.placed]
    for one in found:
        assert one.low <= one.growth <= one.high
        assert one.growth <= 1e-6
    # An exercise that stands alone frees its minutes.
    alone = [
        one for one, item in zip(found, context.placed, strict=True) if item.entry.superset is None
    ]
    assert all(one.minutes < 0 for one in alone)


def test_minutes_are_those_of_the_rehearsal(context: Context) -> None:
    first = context.plan.sessions[0]
    less = first.model_copy(update={"exercises": first.exercises[1:]})
    plan = context.plan.model_copy(update={"sessions": (less, *context.plan.sessions[1:])})

    def minutes(one: Plan) -> float:
        return sum(lived.total_s for lived in rehearse(one, context.intake).sessions) / 60

    expected = minutes(plan) - minutes(context.plan)
    assert without_each(context)[0].minutes == pytest.approx(expected)


def test_rules_of_the_whole_week_move_it_the_right_way(context: Context) -> None:
    found = {one.name: one for one in whole_week(context)}
    fewer, more = found["a set fewer everywhere"], found["a set more everywhere"]
    assert fewer.minutes < 0 < more.minutes
    assert fewer.growth < 0 < more.growth
    assert found["rests times 0.5"].minutes < found["rests times 0.75"].minutes < 0
    assert found["rests times 0.5"].growth < found["rests times 1.5"].growth
    assert found["2 repetitions more in reserve"].growth < 0
    assert "nothing alternated" in found


def test_exercises_not_chosen_are_new_and_alike(context: Context) -> None:
    held = {item.exercise.id for item in context.placed}
    found = near(context)
    assert found
    assert [one.trial.growth for one in found] == sorted(
        (one.trial.growth for one in found), reverse=True
    )
    for one in found:
        assert one.instead_of in held
        assert one.exercise not in held
        assert "overhead" not in catalogue.exercise(one.exercise).pattern


def test_what_rules_exercises_out_adds_up(context: Context, intake: Intake) -> None:
    found = ruled(context)
    assert found.total == len(catalogue.exercises())
    assert found.open + found.no_kit + found.avoided + found.skill == found.total
    assert found.avoided == sum(one.pattern == "vertical press" for one in catalogue.exercises())
    bare = intake.model_copy(update={"gym": "bodyweight", "experience": "beginner"})
    fewer = ruled(context_of(context.plan, bare))
    assert fewer.open < found.open
    assert fewer.no_kit > 0
