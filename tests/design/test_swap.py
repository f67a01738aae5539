"""Substitutes: ranked by the recomputed week, within what the coach rules out."""

from __future__ import annotations

from pathlib import Path

import pytest

from setwright.design.options import prescription
from setwright.design.swap import swaps
from setwright.documents.errors import DocumentError
from setwright.exercises import catalogue
from setwright.plan.read import read_intake, read_plan
from setwright.plan.week import Plan
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import central_growth, doses_of, person_of
from setwright.response.targets import priority_weights

EXAMPLES = Path(__file__).parents[2] / "examples"
PLAN = read_plan((EXAMPLES / "plan.yaml").read_text("utf-8"), "plan.yaml")
INTAKE = read_intake((EXAMPLES / "intake.yaml").read_text("utf-8"), "intake.yaml")
OLD = "lat-pulldown"


def growth(plan: Plan) -> float:
    dose = doses_of(plan, rehearse(plan, INTAKE))
    grown = central_growth(dose, person_of(INTAKE), len(plan.sessions))
    return float(priority_weights(INTAKE) @ grown)


def test_ranked_best_first() -> None:
    found = swaps(PLAN, OLD, intake=INTAKE)
    changes = [one.growth_change for one in found]
    assert len(found) > 3
    assert changes == sorted(changes, reverse=True)
    assert changes[0] > changes[-1]
    assert OLD not in {one.exercise for one in found}


def test_change_is_what_putting_it_there_gives() -> None:
    first = swaps(PLAN, OLD, intake=INTAKE)[0]
    fresh = prescription(catalogue.exercise(first.exercise), INTAKE)
    sessions = [
        session.model_copy(
            update={
                "exercises": tuple(
                    fresh.model_copy(update={"sets": entry.sets})
                    if entry.exercise == OLD
                    else entry
                    for entry in session.exercises
                )
            }
        )
        for session in PLAN.sessions
    ]
    by_hand = PLAN.model_copy(update={"sessions": tuple(sessions)})
    before = growth(PLAN)
    assert first.growth_change == pytest.approx((growth(by_hand) - before) / before, abs=1e-9)
    minutes = [
        sum(session.total_s for session in rehearse(plan, INTAKE).sessions) / 60
        for plan in (PLAN, by_hand)
    ]
    assert first.minutes_change == pytest.approx(minutes[1] - minutes[0], abs=1e-9)


def test_without_a_kit_nothing_needs_it() -> None:
    free = {one.exercise for one in swaps(PLAN, OLD, intake=INTAKE)}
    found = {one.exercise for one in swaps(PLAN, OLD, without="dumbbells", intake=INTAKE)}
    assert found < free
    for name in found:
        assert any("dumbbells" not in kit for kit in catalogue.exercise(name).kit), name
    for name in free - found:
        assert all("dumbbells" in kit for kit in catalogue.exercise(name).kit), name


def test_pain_leaves_out_the_whole_pattern() -> None:
    pattern = catalogue.exercise(OLD).pattern
    kept = {catalogue.exercise(one.exercise).pattern for one in swaps(PLAN, OLD, avoid="pain")}
    liked = {
        catalogue.exercise(one.exercise).pattern for one in swaps(PLAN, OLD, avoid="preference")
    }
    assert pattern in liked
    assert pattern not in kept


def test_skill_asks_for_something_simpler() -> None:
    order = ("low", "moderate", "high")
    old = order.index(catalogue.exercise("barbell-bench-press").skill)
    for one in swaps(PLAN, "barbell-bench-press", avoid="skill"):
        assert order.index(catalogue.exercise(one.exercise).skill) < max(old, 1)


def test_an_exercise_the_plan_does_not_hold() -> None:
    with pytest.raises(DocumentError, match="one of"):
        swaps(PLAN, "back-squat", intake=INTAKE)
    with pytest.raises(DocumentError):
        swaps(PLAN, "no-such-exercise", intake=INTAKE)
