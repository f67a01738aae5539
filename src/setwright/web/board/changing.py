"""What every edit of a plan stands on: a place, a refusal, and a plan that is valid again."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from pydantic import ValidationError

from setwright.exercises import catalogue
from setwright.plan.checking import plan_clashes
from setwright.plan.week import Entry, Plan, Session


class At(NamedTuple):
    """Where an exercise stands: index of its session and its position there."""

    session: int
    position: int


class EditError(ValueError):
    """An edit that cannot be made; its text says why in plain words."""


def entry_at(plan: Plan, at: At) -> Entry:
    """The exercise at a place.

    Raises:
        EditError: when nothing stands there.
    """
    session = session_at(plan, at.session)
    if not 0 <= at.position < len(session.exercises):
        raise EditError("The exercise is not there any more.")
    return session.exercises[at.position]


def session_at(plan: Plan, number: int) -> Session:
    """A session by its index.

    Raises:
        EditError: when there is none.
    """
    if not 0 <= number < len(plan.sessions):
        raise EditError("The session is not there any more.")
    return plan.sessions[number]


def name_at(plan: Plan, at: At) -> str:
    """Name of the exercise at a place."""
    return catalogue.exercise(entry_at(plan, at).exercise).name


def with_entries(plan: Plan, number: int, entries: Sequence[Entry]) -> Plan:
    """The plan with other exercises in a session; an empty session goes.

    Raises:
        EditError: when the week would be empty, or the session too full.
    """
    sessions = list(plan.sessions)
    if entries:
        together = tuple(whole_supersets(entries))
        sessions[number] = sessions[number].model_copy(update={"exercises": together})
    else:
        del sessions[number]
    return with_sessions(plan, sessions)


def with_sessions(plan: Plan, sessions: Sequence[Session]) -> Plan:
    """The plan with other sessions.

    Raises:
        EditError: when the week would be empty.
    """
    if not sessions:
        raise EditError("A week holds at least one exercise. Put another in first.")
    return checked(plan.model_copy(update={"sessions": tuple(sessions)}))


def whole_supersets(entries: Sequence[Entry]) -> list[Entry]:
    """Exercises whose superset letters are shared by neighbours only; a lone one loses its letter.

    Where a letter stands in two places, the longer run keeps it, the first of equal ones.
    """
    runs: list[list[int]] = []
    for position, entry in enumerate(entries):
        if runs and entry.superset and entries[runs[-1][0]].superset == entry.superset:
            runs[-1].append(position)
        else:
            runs.append([position])
    kept: dict[str, list[int]] = {}
    for run in runs:
        letter = entries[run[0]].superset
        if letter and len(run) > max(1, len(kept.get(letter, ()))):
            kept[letter] = run
    keep = {position for run in kept.values() for position in run}
    return [
        entry if position in keep or entry.superset is None
        else entry.model_copy(update={"superset": None})
        for position, entry in enumerate(entries)
    ]  # fmt: skip


def checked(plan: Plan) -> Plan:
    """The plan itself when it is valid.

    Raises:
        EditError: saying what is not.
    """
    try:
        valid = Plan.model_validate(plan.model_dump())
    except ValidationError as error:
        first = error.errors()[0]
        field = " ".join(str(step) for step in first["loc"] if not isinstance(step, int))
        raise EditError(f"{field}: {first['msg']}.") from None
    for path, found, allowed in plan_clashes(valid):
        raise EditError(f"{path[-1]}: {found}; allowed: {allowed}.")
    return valid
