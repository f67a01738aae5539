"""Locks: which exercises a new design keeps as they stand."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from setwright.plan.week import Plan


def key(day: str, exercise: str) -> str:
    """How a lock names an exercise: ``monday/back-squat``."""
    return f"{day}/{exercise}"


def keys(plan: Plan) -> set[str]:
    """Keys of every exercise of a week."""
    return {
        key(session.day, entry.exercise) for session in plan.sessions for entry in session.exercises
    }


def following(locked: Iterable[str], before: Plan, after: Plan) -> list[str]:
    """Locks after an edit: a lock goes with its exercise to another day, and is gone with it."""
    there, was = keys(after), keys(before)
    arrived = sorted(there - was)
    found = []
    for one in locked:
        if one in there:
            found.append(one)
            continue
        exercise = one.partition("/")[2]
        moved = [new for new in arrived if new.partition("/")[2] == exercise]
        if one in was and len(moved) == 1:
            found.append(moved[0])
    return found


def kept_part(plan: Plan, locked: Collection[str]) -> Plan | None:
    """Only what is locked, or None when nothing is."""
    sessions = []
    for session in plan.sessions:
        entries = tuple(
            entry for entry in session.exercises if key(session.day, entry.exercise) in locked
        )
        if entries:
            sessions.append(session.model_copy(update={"exercises": entries}))
    return plan.model_copy(update={"sessions": tuple(sessions)}) if sessions else None
