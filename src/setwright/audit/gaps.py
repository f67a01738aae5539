"""What fills a part's gap: whole sets, of the exercise that does it best for this person here."""

from __future__ import annotations

from functools import cache
from math import ceil

import numpy as np

from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.plan.intake import Intake
from setwright.plan.limits import avoidance

CANDIDATES = 30


def whole_sets(sets: float) -> float:
    """Sets that can be done: whole ones, at least one."""
    return float(max(ceil(sets - 1e-9), 1))


@cache
def _ranked(column: int) -> tuple[str, ...]:
    """Exercise ids by their share of a part, cheap ones first among equals."""
    shares = catalogue.shares()[:, column]
    order = np.argsort(-shares, kind="stable")[:CANDIDATES]
    rows = [catalogue.exercises()[row] for row in order if shares[row] > 0]
    ranked = sorted(
        rows,
        key=lambda one: (
            -round(float(shares[catalogue.row(one.id)]), 1),
            one.kind == "compound",
            round(catalogue.profile(one.id).spinal_load, 1),
            one.setup_s,
        ),
    )
    return tuple(one.id for one in ranked)


def filler(column: int, intake: Intake | None) -> str | None:
    """Id of the exercise that trains a part best here, or None when none can be done."""
    if intake is None:
        return next(iter(_ranked(column)), None)
    gym = stock_of(intake.gym, intake.kit)
    for ident in _ranked(column):
        exercise = catalogue.exercise(ident)
        if gym.can_do(exercise) and avoidance(intake, exercise) is None:
            return ident
    return None
