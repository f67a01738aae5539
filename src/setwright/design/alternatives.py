"""Other choices that would make nearly the same week."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from setwright.audit.criteria.merit import merit_of
from setwright.design.options import allowed
from setwright.design.problem import LEAST_MERIT, Problem
from setwright.design.settle import within, worth
from setwright.design.swap import put
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.rehearsal.rehearse import rehearse

# An exercise is tried in the place of another when their shares point the same way (cosine).
SIMILAR = 0.85
TRIED = 3
# A week is nearly equal when its weighted growth falls by no more than this, relative.
NEAR = 0.01


@dataclass(frozen=True)
class Alternative:
    """A substitute with which the week stays nearly as good and within its minutes.

    Attributes:
        exercise: id of the substitute.
        instead_of: id of the exercise it replaces wherever it stands.
        growth_change: change of the week's weighted growth, relative.
    """

    exercise: str
    instead_of: str
    growth_change: float


def _like(ident: str, choices: tuple[str, ...]) -> list[str]:
    """The choices most like an exercise by their shares, the likest first."""
    shares = catalogue.shares()
    own = shares[catalogue.row(ident)]
    rows = shares[[catalogue.row(other) for other in choices]]
    size = np.linalg.norm(rows, axis=1) * np.linalg.norm(own)
    cosine = rows @ own / np.maximum(size, 1e-9)
    ranked = np.argsort(-cosine, kind="stable")[:TRIED]
    return [choices[n] for n in ranked if cosine[n] >= SIMILAR]


def alternatives(plan: Plan, intake: Intake, problem: Problem) -> tuple[Alternative, ...]:
    """Replace one exercise at a time and keep what the rehearsal finds nearly equal.

    Args:
        plan: the settled week.
        intake: the person's limits.
        problem: the same limits as the model sees them.

    Returns:
        Nearly equal substitutes, the best first.
    """
    now = worth(plan, intake, problem)
    held = {entry.exercise for session in plan.sessions for entry in session.exercises}
    choices = tuple(
        one.id for one in allowed(intake) if one.id not in held and merit_of(one.id) >= LEAST_MERIT
    )
    if not choices or now <= 0:
        return ()
    found = []
    stay = {entry.exercise for _, entry in problem.kept.entries}
    for old in sorted(held - stay):
        for new in _like(old, choices):
            tried = put(plan, old, catalogue.exercise(new), intake)
            if tried is None or not _fits(tried, intake, problem):
                continue
            change = worth(tried, intake, problem) / now - 1.0
            if change >= -NEAR:
                found.append(Alternative(new, old, change))
    return tuple(sorted(found, key=lambda row: (-row.growth_change, row.instead_of, row.exercise)))


def _fits(plan: Plan, intake: Intake, problem: Problem) -> bool:
    """Whether every session stays within its minutes, and the week within the other limits."""
    lived = rehearse(plan, intake).sessions
    return all(
        (session.minutes is None or one.total_s <= 60 * session.minutes)
        and within(plan, number, problem)
        for number, (session, one) in enumerate(zip(plan.sessions, lived, strict=True))
    )
