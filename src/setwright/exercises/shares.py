"""Shares and stretch of every exercise, published findings put over the rule; and profiles."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.model import Part
from setwright.exercises.model import Exercise
from setwright.exercises.profile import Profile, Share
from setwright.mechanics.anatomical_rule import Asked, Body, Worked

PUBLISHED_SPREAD: Final = 0.1
RULE: Final = "anatomical rule"
# 5 % and 95 % points of the normal distribution.
NINETY: Final = 1.645
LIMITING_WITHIN: Final = 0.1
# Axial load and trunk moment both burden the spine; the moment weighs more.
AXIAL_WEIGHT: Final = 0.4
MOMENT_WEIGHT: Final = 0.6


def work(exercise: Exercise, body: Body) -> Worked:
    """Shares by the rule, with the published shares of the exercise put over them."""
    asked = [Asked(d.action, d.demand, d.stretched, d.shortened) for d in exercise.demands]
    worked = body.work(asked, exercise.hold, exercise.hardest, exercise.spine_moment)
    if not exercise.published:
        return worked
    rows = {part.id: row for row, part in enumerate(body.parts)}
    shares, spread = worked.shares.copy(), worked.spread.copy()
    for part, published in exercise.published.items():
        shares[rows[part]] = published.share
        spread[rows[part]] = PUBLISHED_SPREAD
    return Worked(shares, spread, np.where(shares > 0, worked.stretch, 0.0))


def profile_of(exercise: Exercise, parts: Sequence[Part], worked: Worked) -> Profile:
    """The profile of an exercise from its arrays over the parts."""
    shares = tuple(
        Share(
            part.id,
            round(float(worked.shares[row]), 3),
            round(float(max(worked.shares[row] - NINETY * worked.spread[row], 0.0)), 3),
            round(float(min(worked.shares[row] + NINETY * worked.spread[row], 1.0)), 3),
            round(float(worked.stretch[row]), 3),
            exercise.published[part.id].source if part.id in exercise.published else RULE,
        )
        for row, part in enumerate(parts)
        if worked.shares[row] > 0
    )
    ordered = tuple(sorted(shares, key=lambda share: -share.value))
    limiting = _limiting(exercise, parts, worked.shares)
    weights = worked.shares[limiting]
    total = float(weights.sum())
    stretch = float(weights @ worked.stretch[limiting]) / total if total else 0.0
    return Profile(
        exercise.id,
        ordered,
        tuple(parts[row].id for row in limiting),
        round(spinal_load(exercise), 3),
        round(stretch, 3),
    )


def spinal_load(exercise: Exercise) -> float:
    """Burden on the spine, 0 to 1, from the declared axial load and trunk moment."""
    return AXIAL_WEIGHT * exercise.spine_axial + MOMENT_WEIGHT * exercise.spine_moment


def _limiting(
    exercise: Exercise, parts: Sequence[Part], shares: NDArray[np.float64]
) -> NDArray[np.intp]:
    largest = max(demand.demand for demand in exercise.demands)
    actions = {demand.action for demand in exercise.demands if demand.demand == largest}
    there = np.array([bool(actions & part.actions.keys()) for part in parts])
    best = float(shares[there].max(initial=0.0))
    return np.flatnonzero(there & (shares > 0) & (shares >= best - LIMITING_WITHIN))
