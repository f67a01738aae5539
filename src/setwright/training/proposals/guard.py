"""The rule that no proposal may break: nothing gets more where it hurts."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import index
from setwright.exercises import catalogue
from setwright.plan.week import Plan
from setwright.training.facts.week import Facts
from setwright.training.pain import may_rise

LEAST_SETS = 0.01


def fractional_sets(plan: Plan) -> NDArray[np.float64]:
    """Fractional sets a week of every part, shape (P,)."""
    sets = np.zeros(catalogue.shares().shape[1])
    for session in plan.sessions:
        for entry in session.exercises:
            sets += entry.sets * catalogue.shares()[catalogue.row(entry.exercise)]
    return sets


def loads_sore_parts_more(facts: Facts, before: Plan, after: Plan) -> bool:
    """Whether a changed plan has more sets for a part that hurt lately, or a heavier load there."""
    sore = [index()[one] for one in facts.sore_parts]
    more = fractional_sets(after)[sore] - fractional_sets(before)[sore]
    if bool(np.any(more > LEAST_SETS)):
        return True
    log, day = facts.client.folder.log, facts.day
    loads = {
        (session.name, session.day, entry.exercise): entry.load_kg
        for session in before.sessions
        for entry in session.exercises
    }
    return any(
        entry.load_kg is not None
        and (was := loads.get((session.name, session.day, entry.exercise))) is not None
        and entry.load_kg > was
        and not may_rise(entry.exercise, log, day)
        for session in after.sessions
        for entry in session.exercises
    )
