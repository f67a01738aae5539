"""One stand-in for each exercise of a week, for the day its station is taken.

The full ranking of `swap` asks what is best for the week and may answer with another kind of work;
on the gym floor the stand-in should do the same job. So only the exercises most like the one that
goes are tried, first those of its movement pattern and on other kit, and `swap` then says which of
them the week likes best.
"""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from setwright.design.swap import Swap, candidates, figures, limits_of, swaps
from setwright.exercises import catalogue
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.week import Plan

# Common practice: shares that point the same way (cosine) train the same parts.
SIMILAR = 0.8
TRIED = 3


def substitutes(plan: Plan, intake: Intake | None = None) -> Mapping[str, Swap]:
    """The stand-in of every exercise that has one.

    Args:
        plan: the week.
        intake: the person's limits and kit; a full gym without it.

    Returns:
        Exercise id to its stand-in; an exercise without a similar one is left out.
    """
    person = limits_of(intake)
    found = {}
    before = figures(plan, intake)
    held = dict.fromkeys(entry.exercise for one in plan.sessions for entry in one.exercises)
    for ident in held:
        old = catalogue.exercise(ident)
        among = _likest(old, candidates(old, None, None, person))
        ranked = swaps(plan, ident, intake=intake, among=among, before=before) if among else ()
        best = next((one for one in ranked if one.within_limits or one.spine_change <= 0), None)
        if best is not None:
            found[ident] = best
    return found


def _likest(old: Exercise, choices: tuple[Exercise, ...]) -> tuple[str, ...]:
    """The few choices most like an exercise: of its pattern and on other kit where there are any.

    Its own pattern counts before other kit.
    """
    shares = catalogue.shares()
    own = shares[catalogue.row(old.id)]
    rows = shares[[catalogue.row(one.id) for one in choices]]
    size = np.linalg.norm(rows, axis=1) * np.linalg.norm(own)
    likeness = rows @ own / np.maximum(size, 1e-9)
    needed = set(old.kit)

    def rank(n: int) -> tuple[bool, bool]:
        return choices[n].pattern != old.pattern, bool(needed & set(choices[n].kit))

    like = [n for n in range(len(choices)) if likeness[n] >= SIMILAR]
    best = min(map(rank, like), default=None)
    order = sorted(
        (n for n in like if rank(n) == best), key=lambda n: (-likeness[n], choices[n].id)
    )
    return tuple(choices[n].id for n in order[:TRIED])
