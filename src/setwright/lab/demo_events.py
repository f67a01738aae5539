"""What goes wrong in the demo's eight weeks: laid down, so that every review finds something."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit
from setwright.lab.demo_person import kind_of
from setwright.lab.slips import LB
from setwright.plan.log import Record, Replaced, SetRecord, Skipped, Withdrawn
from setwright.plan.week import Entry, Plan, Session

# Week and session, from 0: what happens when.
NO_TIME, ILL = (1, 1), (5, 2)
CORRECTED, SKIPPED, WRONG_UNIT, REPLACED, SORE = (1, 0), (2, 0), (3, 0), (4, 1), (6, 2)

Place = tuple[int, int]
STALLS_FROM, STALLS_BY = 3, 0.026
"""Week, from 0, from which one exercise falls back, and its log strength lost a week."""


def stalled(plan: Plan) -> str | None:
    """The exercise that falls back: the last with a load that the week has twice."""
    seen: set[str] = set()
    found = None
    for session in plan.sessions:
        for entry in session.exercises:
            if entry.exercise in seen and entry.load_kg is not None:
                found = entry.exercise
            seen.add(entry.exercise)
    return found


def replacement(plan: Plan, gym: GymKit) -> tuple[str, str] | None:
    """An exercise of the replaced session, and one of its pattern for its place."""
    planned = {entry.exercise for one in plan.sessions for entry in one.exercises}
    number = min(REPLACED[1], len(plan.sessions) - 1)
    for entry in plan.sessions[number].exercises:
        for other in catalogue.exercises():
            alike = other.pattern == kind_of(entry.exercise) and other.id not in planned
            if alike and other.loading in ("stack", "plates") and gym.can_do(other):
                return entry.exercise, other.id
    return None


def session_as_done(
    session: Session,
    place: Place,
    at: datetime,
    swap: tuple[str, str] | None,
    new_id: Callable[[], str],
) -> tuple[tuple[Entry, ...], tuple[Record, ...]]:
    """The exercises that are really done, and the records of those that are not.

    Args:
        session: as planned.
        place: week and session, from 0.
        at: its start.
        swap: exercise planned and exercise done for it.
        new_id: makes ids.
    """
    entries = list(session.exercises)
    if place == SKIPPED and len(entries) > 1:
        gone = entries.pop()
        skipped = Skipped(id=new_id(), at=at, exercise=gone.exercise, reason="no time")
        return tuple(entries), (skipped,)
    if place != REPLACED or swap is None:
        return tuple(entries), ()
    planned, by = swap
    place_in = next(k for k, entry in enumerate(entries) if entry.exercise == planned)
    entries[place_in] = entries[place_in].model_copy(update={"exercise": by, "load_kg": None})
    note = "the machine was being mended"
    replaced = Replaced(id=new_id(), at=at, exercise=planned, by=by, reason="equipment", note=note)
    return tuple(entries), (replaced,)


def as_written(place: Place, record: SetRecord, new_id: Callable[[], str]) -> tuple[Record, ...]:
    """What the log holds of a set that may be written wrongly."""
    if place == WRONG_UNIT:
        return (record.model_copy(update={"load_kg": round(record.load_kg * LB)}),)
    if place == CORRECTED:
        wrong = record.model_copy(update={"id": new_id(), "reps": record.reps * 10})
        gone = Withdrawn(id=new_id(), at=record.at, of=wrong.id, note="a zero too many")
        return wrong, gone, record
    return (record,)


def together(entries: Sequence[Entry]) -> list[list[int]]:
    """Places of the exercises, those of a superset together."""
    groups: list[list[int]] = []
    for k, entry in enumerate(entries):
        partner = groups and entries[groups[-1][-1]].superset
        if entry.superset is not None and partner == entry.superset:
            groups[-1].append(k)
        else:
            groups.append([k])
    return groups
