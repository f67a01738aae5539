"""Weeks so small that every one of them can be tried."""

from __future__ import annotations

from itertools import product

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import index, parts
from setwright.design.model import (
    COVERED,
    CROWDING_AT,
    GROWTH_AT,
    SPINE_COST,
    TWICE_TRAINED,
    tangents,
)
from setwright.design.options import option
from setwright.design.problem import Problem
from setwright.exercises import catalogue
from setwright.plan.intake import Intake, Screening, TrainingDay
from setwright.response.curves import session_crowding, week_growth
from setwright.response.growth import person_of

MOST_SETS = 3


def intake(minutes: tuple[int, ...]) -> Intake:
    days = zip(("monday", "thursday"), minutes, strict=False)
    return Intake(
        setwright="intake/1",
        name="Nobody",
        experience="intermediate",
        age_band="18-39",
        screening=Screening(active_last_3_months=True),
        days=tuple(TrainingDay.model_validate({"day": d, "minutes": m}) for d, m in days),
        gym="full gym",
    )


def problem(
    exercises: tuple[str, ...],
    minutes: tuple[int, ...],
    weights: dict[str, float],
    least: float = 4.0,
    spine: float = 12.0,
) -> Problem:
    """A problem with weights on a few parts; each of them asks for `least` sets, twice a week."""
    person = intake(minutes)
    options = tuple(option(catalogue.exercise(name), person) for name in exercises)
    wanted = np.zeros(len(parts()))
    for part, weight in weights.items():
        wanted[index()[part]] = weight
    asked = wanted > 0
    return Problem(
        options=options,
        minutes=np.array(minutes, dtype=float),
        fits_day=np.ones((len(options), len(minutes)), dtype=bool),
        next_day=(),
        alike=(),
        alike_days=(),
        weights=wanted,
        least=np.where(asked, least, 0.0),
        most=np.full(len(parts()), 99.0),
        times=np.where(asked, min(2, len(minutes)), 0),
        urgency=np.where(wanted == wanted.max(), 2.0, 1.0),
        person=person_of(person),
        spine_session=spine,
        spine_two_days=99.0,
        seed=1,
        most_sets=MOST_SETS,
    )


def curves(one: Problem) -> tuple[list[tuple[float, float]], list[tuple[float, float]]]:
    """Tangents of crowding (beyond the first, which is the total itself) and of growth."""
    return (
        tangents(CROWDING_AT, session_crowding)[1:],
        tangents(GROWTH_AT, lambda x: week_growth(x, one.person)),
    )


def score(one: Problem, sets: NDArray[np.int64]) -> float:
    """What a week is worth, written a second time: growth, coverage, twice trained, spine."""
    crowding, growth = curves(one)
    value = np.array([o.value for o in one.options])
    share = np.array([o.share for o in one.options])
    total = sets.T @ value
    crowded = np.min([total, *(a * total + b for a, b in crowding)], axis=0)
    week = np.minimum(crowded, 12.0).sum(axis=0)
    grown = np.min([a * week + b for a, b in growth], axis=0)
    by_day = sets.T @ share
    asked = one.least > 0
    reached = np.minimum(by_day.sum(axis=0)[asked] / one.least[asked], 1.0)
    urgent = one.urgency > 1
    often = np.minimum((by_day >= 1.0).sum(axis=0), one.times) * (one.times > 1) * urgent
    spine = sum(o.spine * sets[n].sum() for n, o in enumerate(one.options))
    return float(
        one.weights @ grown
        + COVERED * (one.urgency[asked] @ reached)
        + TWICE_TRAINED * (one.urgency @ often)
        - SPINE_COST * spine
    )


def allowed(one: Problem, sets: NDArray[np.int64]) -> bool:
    """Whether a week keeps the minutes, the spinal limit and the session's most."""
    fixed = np.array([round(o.fixed_s) for o in one.options])
    each = np.array([round(o.per_set_s) for o in one.options])
    spine = np.array([o.spine for o in one.options])
    share = np.array([o.share for o in one.options])
    return bool(
        np.all(fixed @ (sets > 0) + each @ sets <= 60 * one.minutes)
        and np.all(spine @ sets <= one.spine_session)
        and np.all(sets.T @ share <= one.session_most)
    )


def best_of_all(one: Problem) -> float:
    """The best of every week there is."""
    shape = (len(one.options), len(one.minutes))
    weeks = product((0, *range(one.least_sets, one.most_sets + 1)), repeat=shape[0] * shape[1])
    tried = (np.array(week).reshape(shape) for week in weeks)
    return max(score(one, sets) for sets in tried if allowed(one, sets))
