"""What the last edit did to the week: minutes, doses, and the audit, before and after."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.anatomy.atlas import part
from setwright.audit.audit import AuditReport
from setwright.plan.intake import DAYS
from setwright.plan.week import Plan

# Doses that changed are named, the largest changes first, up to this many.
NAMED = 8
LEAST = 0.05
# When more days than these became longer or shorter, the week as a whole is said.
DAYS_NAMED = 2


@dataclass(frozen=True)
class Change:
    """One figure before and after, in words."""

    name: str
    before: str
    after: str


@dataclass(frozen=True)
class Effect:
    """What an edit did.

    Attributes:
        what: the edit.
        minutes: days that became longer or shorter, or the week when many did.
        doses: parts that get more or fewer sets a week.
        more: how many parts besides.
        missed: misses before and after.
    """

    what: str
    minutes: tuple[Change, ...]
    doses: tuple[Change, ...]
    more: int
    missed: Change | None


def effect_of(
    what: str, before: tuple[Plan, AuditReport], after: tuple[Plan, AuditReport]
) -> Effect:
    """Hold the week after an edit against the one before it."""
    old, new = before[1], after[1]
    sets = old.response.weekly_sets, new.response.weekly_sets
    change = sets[1] - sets[0]
    order = [n for n in abs(change).argsort()[::-1] if abs(change[n]) >= LEAST]
    doses = tuple(
        Change(part(new.response.parts[n]).name, f"{sets[0][n]:.1f}", f"{sets[1][n]:.1f}")
        for n in order[:NAMED]
    )
    misses = len(old.misses), len(new.misses)
    missed = Change("missed", str(misses[0]), str(misses[1])) if misses[0] != misses[1] else None
    return Effect(what, _minutes(before, after), doses, max(len(order) - NAMED, 0), missed)


def _minutes(
    before: tuple[Plan, AuditReport], after: tuple[Plan, AuditReport]
) -> tuple[Change, ...]:
    old, new = _by_day(*before), _by_day(*after)
    changed = tuple(
        Change(day.capitalize(), f"{old.get(day, 0.0):.0f}", f"{new.get(day, 0.0):.0f}")
        for day in DAYS
        if round(old.get(day, 0.0)) != round(new.get(day, 0.0))
    )
    if len(changed) <= DAYS_NAMED:
        return changed
    return (Change("Week", f"{sum(old.values()):.0f}", f"{sum(new.values()):.0f}"),)


def _by_day(plan: Plan, report: AuditReport) -> dict[str, float]:
    found: dict[str, float] = {}
    for session, lived in zip(plan.sessions, report.rehearsal.sessions, strict=True):
        found[session.day] = found.get(session.day, 0.0) + lived.total_s / 60
    return found
