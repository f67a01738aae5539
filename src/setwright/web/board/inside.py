"""One exercise of the board looked into: what it trains, why it is there, what could replace it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from setwright.anatomy.atlas import part
from setwright.design.swap import Swap, candidates, limits_of, swaps
from setwright.exercises import catalogue
from setwright.handout.explain import LABELS, explain
from setwright.handout.explained import ExplainedSession
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.sources.library import findings
from setwright.web.board.changing import At, entry_at
from setwright.web.board.figures import rehearsal_of
from setwright.web.memory import held

# Substitutes that are measured: those whose shares point most the same way.
MEASURED = 12
LONG, MIDDLE = 0.6, 0.35


@dataclass(frozen=True)
class ShareRow:
    """How much of a set counts for a part, and how long the part is where it is loaded."""

    part: str
    share: float
    low: float
    high: float
    length: str
    measured: bool


@dataclass(frozen=True)
class Reason:
    """A statement of why, with the sources it stands on."""

    label: str
    words: str
    sources: tuple[str, ...]


@dataclass(frozen=True)
class Substitute:
    """An exercise that could stand here, and what the week would gain (positive) or lose."""

    exercise: str
    name: str
    growth: float
    spine: float
    minutes: float
    within_limits: bool


def profile_of(exercise: str) -> tuple[ShareRow, ...]:
    """What an exercise trains, the largest share first."""
    return tuple(
        ShareRow(
            part(one.part).name,
            one.value,
            one.low,
            one.high,
            "long" if one.stretch >= LONG else "middle" if one.stretch >= MIDDLE else "short",
            one.basis != "mechanics",
        )
        for one in catalogue.profile(exercise).shares
    )


@held(16)
def _explained(plan: Plan, intake: Intake | None) -> tuple[ExplainedSession, ...]:
    return explain(plan, intake, rehearsal_of(plan, intake))


def reasons(plan: Plan, at: At, intake: Intake | None) -> tuple[Reason, ...]:
    """Why an exercise stands where it stands."""
    entry_at(plan, at)
    found = _explained(plan, intake)[at.session].exercises[at.position]
    topics: list[str] = []
    rows = []
    for said in found.said:
        label = "" if said.topic in topics else LABELS[said.topic]
        topics.append(said.topic)
        rows.append(Reason(label, said.words, tuple(_cited(one) for one in said.sources)))
    return tuple(rows)


def _cited(ident: str) -> str:
    known = findings()[ident]
    if not known.citations:
        return str(known.basis)
    one = known.citations[0]
    return ", ".join(
        str(piece) for piece in (one.title, one.journal, one.year, one.doi and f"doi {one.doi}")
        if piece
    )  # fmt: skip


def substitutes(plan: Plan, at: At, intake: Intake | None) -> tuple[Substitute, ...]:
    """The likest exercises that the kit and the person allow, each measured in this place."""
    old = catalogue.exercise(entry_at(plan, at).exercise)
    allowed = [one.id for one in candidates(old, None, None, limits_of(intake))]
    among = likest(old.id, allowed)
    found = swaps(plan, old.id, intake=intake, among=among, only=at.session)
    return tuple(_substitute(one) for one in found)


def likest(exercise: str, choices: list[str]) -> list[str]:
    """The choices whose shares point most the same way."""
    if not choices:
        return []
    shares = catalogue.shares()
    own = shares[catalogue.row(exercise)]
    rows = shares[[catalogue.row(one) for one in choices]]
    size = np.linalg.norm(rows, axis=1) * np.linalg.norm(own)
    likeness = rows @ own / np.maximum(size, 1e-9)
    return [choices[n] for n in np.argsort(-likeness, kind="stable")[:MEASURED]]


def _substitute(one: Swap) -> Substitute:
    return Substitute(
        one.exercise,
        catalogue.exercise(one.exercise).name,
        100 * one.growth_change,
        one.spine_change,
        one.minutes_change,
        one.within_limits,
    )
