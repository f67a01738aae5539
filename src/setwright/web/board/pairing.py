"""Joining exercises to a superset and taking them apart."""

from __future__ import annotations

from string import ascii_uppercase

from setwright.plan.week import Plan
from setwright.web.board.changing import At, EditError, entry_at, session_at, with_entries
from setwright.web.board.moving import span


def with_next(plan: Plan, at: At) -> Plan:
    """Alternate an exercise with the one after it, and with all either is alternated with.

    Raises:
        EditError: when it is the last of its session.
    """
    entry_at(plan, at)
    session = session_at(plan, at.session)
    start, end = span(session, at.position)
    if end >= len(session.exercises):
        raise EditError("No exercise comes after it.")
    _, last = span(session, end)
    held = {one.superset for one in session.exercises}
    joined = [session.exercises[n].superset for n in (at.position, end)]
    letter = next(filter(None, joined), None) or next(
        one for one in ascii_uppercase if one not in held
    )
    entries = [
        one.model_copy(update={"superset": letter}) if start <= n < last else one
        for n, one in enumerate(session.exercises)
    ]
    return with_entries(plan, at.session, entries)


def apart(plan: Plan, at: At) -> tuple[Plan, At]:
    """Take an exercise out of its superset and put it after.

    Returns:
        The plan, and where the exercise stands in it.

    Raises:
        EditError: when it is in none.
    """
    entry, session = entry_at(plan, at), session_at(plan, at.session)
    if entry.superset is None:
        raise EditError("It is done alone already.")
    _, end = span(session, at.position)
    entries = [one for n, one in enumerate(session.exercises) if n != at.position]
    entries.insert(end - 1, entry.model_copy(update={"superset": None}))
    return with_entries(plan, at.session, entries), At(at.session, end - 1)
