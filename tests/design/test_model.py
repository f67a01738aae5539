"""The search against every week there is, and against another solver."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

import numpy as np
import pytest
from tiny_milp import best_by_milp
from tiny_week import allowed, best_of_all, problem, score

from setwright.design.model import solve
from setwright.design.problem import Problem

# The week found must be the best to this; the model's own figure for it is coarser, because it
# counts in whole hundredths of a set and whole millionths of growth.
SAME_WEEK, ROUNDING = 1e-3, 5e-3
SECONDS = 0.3

LEGS = {"vastus-lateralis": 0.5, "rectus-femoris": 0.3, "gluteus-maximus-lower": 0.2}
ARMS = {"triceps-long-head": 0.4, "deltoid-middle": 0.4, "pectoralis-sternal": 0.2}
BACK = {"latissimus-upper": 0.6, "biceps-long-head": 0.4}

TINY = {
    "legs, one day": problem(("back-squat", "leg-extension", "leg-press"), (22,), LEGS),
    "legs, little spine": problem(
        ("back-squat", "leg-extension", "leg-press"), (40,), LEGS, spine=1.5
    ),
    "arms, two unequal days": problem(("triceps-pushdown", "lateral-raise"), (10, 16), ARMS),
    "back, four exercises": problem(
        ("lat-pulldown", "seated-cable-row", "dumbbell-curl", "chin-up"), (20,), BACK
    ),
    "back, much asked on two days": problem(
        ("lat-pulldown", "dumbbell-curl"), (14, 12), BACK, least=12.0
    ),
}
tiny = pytest.mark.parametrize("one", TINY.values(), ids=TINY.keys())


@tiny
def test_best_of_every_week_there_is(one: Problem) -> None:
    found = solve(one, SECONDS)
    assert found.proven
    assert allowed(one, found.sets)
    best = best_of_all(one)
    assert best > 0
    assert found.objective == pytest.approx(best, rel=ROUNDING)
    assert score(one, found.sets) == pytest.approx(best, rel=SAME_WEEK)


@tiny
def test_another_solver_agrees(one: Problem) -> None:
    best = best_by_milp(one)
    found = solve(one, SECONDS)
    assert found.objective == pytest.approx(best, rel=ROUNDING)
    assert score(one, found.sets) == pytest.approx(best, rel=SAME_WEEK)


@tiny
def test_bound_is_never_below_the_week_found(one: Problem) -> None:
    for seconds in (0.001, SECONDS):
        found = solve(one, seconds)
        assert found.bound >= found.objective - 1e-9
        assert found.gap >= 0


def test_no_week_fits_too_few_minutes() -> None:
    one = problem(("back-squat",), (22,), LEGS)
    none = solve(replace(one, minutes=np.array([3.0])), SECONDS)
    assert not none.sets.any()


def test_a_longer_day_never_lowers_the_worth() -> None:
    one = TINY["arms, two unequal days"]
    worth = [
        solve(replace(one, minutes=np.array([10.0, minutes])), SECONDS).objective
        for minutes in (8.0, 12.0, 20.0)
    ]
    assert all(later >= earlier - 1e-9 for earlier, later in pairwise(worth))
    assert worth[-1] > worth[0]


def test_same_problem_same_week() -> None:
    one = TINY["back, four exercises"]
    first, again = solve(one, SECONDS), solve(one, SECONDS)
    assert np.array_equal(first.sets, again.sets)
    assert first.objective == again.objective
