"""Exercises that come, go, or take another's place."""

from __future__ import annotations

from setwright.design.options import prescription
from setwright.design.swap import limits_of
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan
from setwright.web.board.changing import At, EditError, entry_at, session_at, with_entries


def prescribed(exercise: str, intake: Intake | None) -> Entry:
    """An exercise with what suits it and the person.

    Raises:
        EditError: when the catalogue does not have it.
    """
    if exercise not in catalogue.ids():
        raise EditError("No such exercise is in the catalogue.")
    return prescription(catalogue.exercise(exercise), limits_of(intake))


def add(plan: Plan, session: int, exercise: str, intake: Intake | None) -> tuple[Plan, At]:
    """Put an exercise at the end of a session.

    Returns:
        The plan, and where the exercise stands in it.

    Raises:
        EditError: when it is there already, unknown, or the session is full.
    """
    held = session_at(plan, session).exercises
    if exercise in {one.exercise for one in held}:
        raise EditError("It is in this session already. Add sets to it instead.")
    entries = [*held, prescribed(exercise, intake)]
    return with_entries(plan, session, entries), At(session, len(held))


def replace(plan: Plan, at: At, exercise: str, intake: Intake | None) -> Plan:
    """Put another exercise in one's place; its sets and its superset stay.

    Raises:
        EditError: when the session has it already, or it is unknown.
    """
    old, session = entry_at(plan, at), session_at(plan, at.session)
    if exercise in {one.exercise for one in session.exercises}:
        raise EditError("It is in this session already.")
    fresh = prescribed(exercise, intake)
    entries = list(session.exercises)
    entries[at.position] = fresh.model_copy(
        update={
            "sets": old.sets,
            "superset": old.superset,
            "rest_s": old.rest_s if old.superset else fresh.rest_s,
        }
    )
    return with_entries(plan, at.session, entries)


def remove(plan: Plan, at: At) -> Plan:
    """Take an exercise out; its session goes with its last one.

    Raises:
        EditError: when it is the last of the week.
    """
    entry_at(plan, at)
    held = session_at(plan, at.session).exercises
    return with_entries(plan, at.session, [one for n, one in enumerate(held) if n != at.position])
