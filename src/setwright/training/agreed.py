"""What coach and client agreed on before: the decisions that still hold."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from setwright.plan.decision import Decision

LIGHTER_WEEK = "lighter week"


def in_force(decisions: Iterable[Decision]) -> tuple[Decision, ...]:
    """The last decision on every proposal, in the order in which they were first decided."""
    last: dict[str, Decision] = {}
    for one in decisions:
        last[one.proposal] = one
    return tuple(last.values())


def eased_weeks(decisions: Iterable[Decision]) -> frozenset[int]:
    """First days of the weeks agreed to be lighter, as ordinals."""
    found = set()
    for one in in_force(decisions):
        week = one.change.get("week")
        if one.kind == LIGHTER_WEEK and one.choice != "decline" and isinstance(week, str):
            found.add(date.fromisoformat(week).toordinal())
    return frozenset(found)
