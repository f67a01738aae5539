"""Changes as data, read with care: what a coach edited may be anything."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import date

from pydantic import JsonValue

from setwright.documents.errors import DocumentError, Fault
from setwright.plan.week import Entry, Plan, Session
from setwright.training.labels import labels

Change = Mapping[str, JsonValue]


def refuse(field: str, found: object, allowed: str) -> DocumentError:
    """A change that cannot be applied."""
    return DocumentError("the change", (Fault(field, repr(found), allowed),))


def text_of(change: Change, field: str) -> str:
    """A text of the change.

    Raises:
        DocumentError: when it is missing or no text.
    """
    value = change.get(field)
    if not isinstance(value, str) or not value:
        raise refuse(field, value, "text")
    return value


def whole_of(change: Change, field: str, least: int, most: int) -> int:
    """A whole number of the change within limits.

    Raises:
        DocumentError: when it is missing, no whole number or out of the limits.
    """
    value = change.get(field)
    if isinstance(value, bool) or not isinstance(value, int) or not least <= value <= most:
        raise refuse(field, value, f"a whole number from {least} to {most}")
    return value


def session_in(plan: Plan, name: str, field: str = "session") -> int:
    """Place of a session in the plan, by its label.

    Raises:
        DocumentError: when the plan has no such session.
    """
    known = labels(plan)
    if name in known:
        return known.index(name)
    raise refuse(field, name, f"a session of the plan: {', '.join(known)}")


def with_session(plan: Plan, number: int, session: Session | None) -> Plan:
    """The plan with a session in place of another, or without it."""
    sessions = list(plan.sessions)
    sessions[number : number + 1] = [] if session is None else [session]
    if not sessions:
        raise refuse("session", plan.sessions[number].name, "a plan keeps at least one session")
    return plan.model_copy(update={"sessions": tuple(sessions)})


def with_entry(
    plan: Plan, exercise: str, change: Callable[[Entry], Entry | None], session: int | None = None
) -> Plan:
    """The plan with an exercise changed, or left out, wherever it stands or in one session.

    Raises:
        DocumentError: when the exercise is not there, or nothing of a session would be left.
    """
    found = False
    sessions = []
    for number, one in enumerate(plan.sessions):
        entries = []
        for entry in one.exercises:
            if entry.exercise == exercise and session in (None, number):
                found = True
                changed = change(entry)
                entries += [] if changed is None else [changed]
            else:
                entries.append(entry)
        if not entries:
            raise refuse("exercise", exercise, f"something must be left of {one.name}")
        sessions.append(one.model_copy(update={"exercises": tuple(entries)}))
    if not found:
        names = sorted({entry.exercise for one in plan.sessions for entry in one.exercises})
        raise refuse("exercise", exercise, f"an exercise of the plan: {', '.join(names)}")
    return plan.model_copy(update={"sessions": tuple(lone_letters_gone(sessions))})


def lone_letters_gone(sessions: list[Session]) -> list[Session]:
    """Sessions in which no superset letter stands alone."""
    found = []
    for session in sessions:
        letters = [entry.superset for entry in session.exercises]
        entries = tuple(
            entry.model_copy(update={"superset": None})
            if entry.superset is not None and letters.count(entry.superset) == 1
            else entry
            for entry in session.exercises
        )
        found.append(session.model_copy(update={"exercises": entries}))
    return found


def monday_in(change: Change, field: str) -> date:
    """A Monday of the change.

    Raises:
        DocumentError: when it is none.
    """
    try:
        day = date.fromisoformat(text_of(change, field))
    except ValueError:
        raise refuse(field, change.get(field), "a Monday such as 2026-09-07") from None
    if day.weekday() != 0:
        raise refuse(field, change.get(field), "a Monday such as 2026-09-07")
    return day
