"""A proposal: what to change, why, what to expect, and what happens without it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from hashlib import sha256

from pydantic import JsonValue

from setwright.audit.compare import Comparison, Difference, compare
from setwright.plan.intake import Intake
from setwright.plan.week import Plan

ChangeData = Mapping[str, JsonValue]


@dataclass(frozen=True)
class PartEffect:
    """Growth of a part with the change less that without, percent a week."""

    part: str
    sets: tuple[float, float]
    growth: Difference


@dataclass(frozen=True)
class Expected:
    """What a change is computed to do.

    Attributes:
        growth: of the whole person, parts weighted by the aims, percent a week; None when the
            plan itself does not change.
        parts: that change most, at most three.
        minutes: change of the week's minutes.
        words: what no figure says; may be empty.
    """

    growth: Difference | None = None
    parts: tuple[PartEffect, ...] = ()
    minutes: float = 0.0
    words: str = ""


@dataclass(frozen=True)
class Proposal:
    """One proposal.

    Attributes:
        id: the same for the same kind, subject and week.
        kind: of the proposal.
        subject: exercise, part, session or pattern it is about.
        title: in a few words, for the coach.
        change: as data; the values may be edited. Empty when there is nothing to change in a plan.
        evidence: from the log, one or two sentences with figures.
        expected: effect.
        if_declined: what happens then.
        sources: ids of findings.
        weight: how much speaks for it; a declined proposal comes back when that has grown.
        rank: order of kinds, lowest first.
    """

    id: str
    kind: str
    subject: str
    title: str
    change: ChangeData
    evidence: tuple[str, ...]
    expected: Expected
    if_declined: str
    sources: tuple[str, ...]
    weight: float
    rank: int = field(default=0)


def proposal_id(kind: str, subject: str, monday: date) -> str:
    """Eight hexadecimal digits that stay the same for a kind, subject and week."""
    text = f"{kind}|{subject}|{monday.isoformat()}"
    return sha256(text.encode("utf-8")).hexdigest()[:8]


def effect_of(found: Comparison, words: str = "", first: str = "", most: int = 3) -> Expected:
    """What a changed plan is expected to do, from its comparison with the plan in force.

    Args:
        found: the comparison.
        words: what no figure says.
        first: part to name before the others.
        most: parts to name.
    """
    moved = [one for one in found.parts if one.growth.differs]
    moved.sort(key=lambda one: (one.part != first, -abs(one.growth.median), one.part))
    return Expected(
        found.growth,
        tuple(PartEffect(one.part, one.sets, one.growth) for one in moved[:most]),
        found.second.minutes - found.first.minutes,
        words,
    )


def compared(
    before: Plan, after: Plan, intake: Intake, words: str = "", first: str = ""
) -> Expected:
    """What a changed plan is expected to do."""
    return effect_of(compare(before, after, intake), words, first)
