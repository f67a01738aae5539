"""Wishes that exclude each other, earlier work of the week, and weeks that are nearly as good."""

from __future__ import annotations

import numpy as np
import pytest

from setwright.anatomy.atlas import index, resolve
from setwright.design.alternatives import NEAR, alternatives
from setwright.design.contradictions import check_wishes
from setwright.design.design import design
from setwright.design.model import solve
from setwright.design.problem import problem_of
from setwright.design.score import Score
from setwright.design.settle import worth
from setwright.design.start import Limits, start
from setwright.design.swap import put
from setwright.documents.errors import DocumentError
from setwright.exercises import catalogue
from setwright.plan.intake import Aims, Avoidance, EarlierWork, Intake, Screening, TrainingDay

CHEST = [index()[part] for part in resolve("chest")]


def person(**more: object) -> Intake:
    base = Intake(
        setwright="intake/1",
        name="Ilse",
        experience="intermediate",
        age_band="18-39",
        screening=Screening(active_last_3_months=True),
        days=(TrainingDay(day="tuesday", minutes=40), TrainingDay(day="friday", minutes=40)),
        gym="full gym",
    )
    return base.model_copy(update=more)


def test_emphasis_whose_every_exercise_is_avoided_is_refused() -> None:
    patterns = sorted({one.pattern for one in catalogue.exercises() if "calf" in one.pattern})
    assert patterns
    avoid = (
        *(Avoidance(pattern=pattern, reason="pain") for pattern in patterns),
        Avoidance(action="ankle plantarflexion", reason="pain"),
    )
    wish = person(aims=Aims(emphasise=("calves",)), avoid=avoid)
    with pytest.raises(DocumentError, match=r"aims\.emphasise\.0.*calves.*avoid"):
        check_wishes(wish)
    check_wishes(wish.model_copy(update={"aims": Aims(emphasise=("chest",))}))


def test_emphasis_that_only_the_kit_forbids_is_no_contradiction() -> None:
    check_wishes(person(gym="bodyweight", aims=Aims(emphasise=("side delts",))))


def test_earlier_work_lowers_what_is_asked_and_allowed() -> None:
    fresh = problem_of(person())
    done = (EarlierWork(day="monday", sets={"chest": 6}),)
    after = problem_of(person(earlier_this_week=done))
    assert np.all(after.least[CHEST] < fresh.least[CHEST])
    assert np.all(after.most[CHEST] < fresh.most[CHEST])
    assert solve(after, 0.2).sets.any()


def test_more_earlier_work_than_a_week_asks_still_gives_a_week() -> None:
    done = (EarlierWork(day="monday", sets={"chest": 40}),)
    problem = problem_of(person(earlier_this_week=done))
    sets = solve(problem, 0.3).sets
    assert sets.any()
    given = sum(option.share * sets[o].sum() for o, option in enumerate(problem.options))
    assert given[CHEST].max() <= problem.most[CHEST].max() + 0.1


def test_the_start_keeps_the_limits_and_more_rounds_never_lose() -> None:
    problem = problem_of(person())
    score = Score(problem)
    weeks = [start(problem, rounds) for rounds in (0, 60)]
    assert score.of(weeks[1]) >= score.of(weeks[0]) > 0
    for week in weeks:
        seconds = sum(
            option.fixed_s * (week[o] > 0) + option.per_set_s * week[o]
            for o, option in enumerate(problem.options)
        )
        assert np.all(seconds <= 60 * problem.minutes + len(problem.options))
        assert np.all((week > 0).sum(axis=1) <= problem.most_days_an_exercise)
        by_day = week.T @ np.array([option.share for option in problem.options])
        assert by_day.max() <= problem.session_most + 0.1


def test_gains_are_differences_of_worth() -> None:
    problem = problem_of(person())
    score = Score(problem)
    week = start(problem, 5)
    added = np.where(week > 0, 1, 2).astype(np.int64)
    gains = score.gains(week, added)
    for o, d in np.argwhere(Limits(problem).room(week, added) | (week > 0))[:20]:
        more = week.copy()
        more[o, d] += added[o, d]
        assert gains[o, d] == pytest.approx(score.of(more) - score.of(week), abs=1e-9)


def test_the_models_figure_is_the_scores_figure() -> None:
    problem = problem_of(person())
    found = solve(problem, 0.3)
    assert found.objective == pytest.approx(Score(problem).of(found.sets), rel=5e-3)


def test_alternatives_are_measured_and_near() -> None:
    intake = person()
    found = design(intake, seconds=2.0)
    problem = problem_of(intake)
    rows = alternatives(found.plan, intake, problem)
    assert rows
    now = worth(found.plan, intake, problem)
    held = {entry.exercise for session in found.plan.sessions for entry in session.exercises}
    for row in rows[:5]:
        assert row.instead_of in held
        assert row.exercise not in held
        assert row.growth_change >= -NEAR
        again = put(found.plan, row.instead_of, catalogue.exercise(row.exercise), intake)
        assert again is not None
        assert worth(again, intake, problem) / now - 1 == pytest.approx(row.growth_change)
