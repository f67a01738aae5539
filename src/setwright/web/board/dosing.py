"""Changing what is prescribed: sets, repetitions, effort, rest, load, note."""

from __future__ import annotations

from typing import Any

from setwright.plan.week import Plan
from setwright.web.board.changing import At, EditError, entry_at, with_entries

MOST_SETS = 20


def change(plan: Plan, at: At, **fields: Any) -> Plan:
    """Prescribe an exercise anew; fields that are not given stay.

    Raises:
        EditError: when there is no such exercise, or a figure is out of bounds.
    """
    entry = entry_at(plan, at)
    entries = list(plan.sessions[at.session].exercises)
    entries[at.position] = entry.model_copy(update=fields)
    return with_entries(plan, at.session, entries)


def more_sets(plan: Plan, at: At, by: int) -> Plan:
    """Add working sets, or take some away.

    Raises:
        EditError: when fewer than one or more than 20 would be left.
    """
    sets = entry_at(plan, at).sets + by
    if sets < 1:
        raise EditError("One set is the fewest. Take the exercise out instead.")
    if sets > MOST_SETS:
        raise EditError(f"{MOST_SETS} sets are the most.")
    return change(plan, at, sets=sets)
