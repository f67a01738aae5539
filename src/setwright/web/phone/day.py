"""A client's day: which session is due or under way, what comes after it, what was done."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, datetime, time
from functools import lru_cache

from setwright.design.substitute import substitutes
from setwright.design.swap import limits_of, stand_in
from setwright.exercises import catalogue
from setwright.plan.client_folder import ClientFolder
from setwright.plan.intake import Intake
from setwright.plan.log import Log, Missed, Record, Replaced, SetRecord, Skipped, Withdrawn
from setwright.plan.symptoms import Symptom
from setwright.plan.week import Entry, Plan, Session
from setwright.training.attended import planned_day
from setwright.training.client import Client, client_on
from setwright.training.coming import to_come
from setwright.training.due import planned_session
from setwright.training.missed import CatchUp
from setwright.training.next_session import PlannedExercise
from setwright.web.memory import held


@dataclass(frozen=True)
class Place:
    """One place of a session and who may stand in.

    Attributes:
        entry: of the plan.
        planned: its sets.
        done_as: the stand-in that was taken today, or None.
        other: entry and sets of the stand-in that is offered, or was taken; None without one.
    """

    entry: Entry
    planned: PlannedExercise
    done_as: str | None
    other: tuple[Entry, PlannedExercise] | None

    @property
    def now(self) -> tuple[Entry, PlannedExercise]:
        """What is done here today."""
        if self.done_as is not None and self.other is not None:
            return self.other
        return self.entry, self.planned


@dataclass(frozen=True)
class Meeting:
    """One session on one day: its places, and what holds for all of it."""

    name: str
    day: date
    week: int
    places: tuple[Place, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True)
class Day:
    """A client's day.

    Attributes:
        today: the date where the person is.
        client: with everything that was logged, today's included.
        plan: in force.
        now: the session of today, due or under way; None on other days.
        then: the session after it.
        missed: how the week goes on after something was missed.
        symptoms: reported and not cleared: no session.
        left_out: names of sessions left out today.
        records: of today, those that hold.
    """

    today: date
    client: Client
    plan: Plan
    now: Meeting | None
    then: Meeting | None
    missed: CatchUp | None
    symptoms: tuple[Symptom, ...]
    left_out: tuple[str, ...]
    records: tuple[Record, ...]


def day_of(folder: ClientFolder, today: date) -> Day | None:
    """The day; None while no week was sent."""
    if not folder.plans:
        return None
    plan = folder.plan_on(today) or folder.plans[0][1]
    client = known_on(folder, today)
    before = known_on(_before(folder, today), today)
    records = tuple(one for one in folder.log.standing() if one.at.date() == today)
    left_out = tuple(one.session for one in records if isinstance(one, Missed))
    missed, coming = _coming(folder, before, plan, today)
    place = _of_today(coming, records, left_out, today)
    symptoms = client.past.open_symptoms(client.day, folder.intake.screening.cleared_on)
    now = None if place is None else _meeting(client, before, plan, coming[place], today, records)
    later = [
        one for n, one in enumerate(coming) if n != place and not _gone(one, left_out, client.day)
    ]
    then = _meeting(client, client, plan, later[0], None, ()) if later else None
    return Day(today, client, plan, now, then, missed, symptoms, left_out, records)


@held(32)
def known_on(folder: ClientFolder, today: date) -> Client:
    """What is known of a client; asked for again and again while a session is under way."""
    return client_on(folder, today)


@held(64)
def stand_ins(plan: Plan, intake: Intake) -> Mapping[str, str]:
    """Exercise to the one that is offered in its place, as on the handout."""
    return {ident: one.exercise for ident, one in substitutes(plan, intake).items()}


def _before(folder: ClientFolder, today: date) -> ClientFolder:
    """The client as the day began."""
    begin = datetime.combine(today, time.min)
    kept = (r for r in folder.log.records if r.at < begin or isinstance(r, Withdrawn))
    return replace(folder, log=Log(tuple(kept)))


def _coming(
    folder: ClientFolder, before: Client, plan: Plan, today: date
) -> tuple[CatchUp | None, tuple[tuple[int, Session], ...]]:
    """Sessions to come; those of the first week when it has not begun."""
    if folder.plan_on(today) is not None:
        return to_come(before, plan)
    monday = folder.plans[0][0].toordinal()
    days = sorted((planned_day(plan, n, monday), n) for n in range(len(plan.sessions)))
    return None, tuple((day, plan.sessions[n]) for day, n in days)


def _of_today(
    coming: Sequence[tuple[int, Session]],
    records: Collection[Record],
    left_out: Collection[str],
    today: date,
) -> int | None:
    """Place of the session that today's records have begun, or else of the one due today."""
    done = {r.exercise for r in records if isinstance(r, SetRecord | Skipped | Replaced)}
    done |= {r.by for r in records if isinstance(r, Replaced)}
    shared = [len(done & {e.exercise for e in session.exercises}) for _, session in coming]
    if any(shared):
        return shared.index(max(shared))
    day = today.toordinal()
    due = (n for n, one in enumerate(coming) if one[0] == day and not _gone(one, left_out, day))
    return next(due, None)


def _gone(one: tuple[int, Session], left_out: Collection[str], day: int) -> bool:
    return one[0] == day and one[1].name in left_out


def _meeting(
    client: Client,
    before: Client,
    plan: Plan,
    coming: tuple[int, Session],
    today: date | None,
    records: Collection[Record],
) -> Meeting:
    """A session with loads: exercises that have begun keep what they began with.

    Args:
        client: now.
        before: as the day began.
        plan: in force.
        coming: day and session.
        today: the day it is done on; by default the one it is planned for.
        records: of that day.
    """
    day, session = coming
    on = day if today is None else today.toordinal()
    begun = {one.exercise for one in records if isinstance(one, SetRecord)}
    swaps = (one for one in records if isinstance(one, Replaced))
    taken = {one.exercise: one.by for one in swaps if one.by in _ids()}
    intake = client.folder.intake
    offered = {**stand_ins(plan, intake), **taken}
    others = tuple(_other(entry, offered, intake) for entry in session.exercises)
    as_planned, as_begun = (planned_session(one, session, on) for one in (client, before))
    if not as_planned.exercises:
        return Meeting(session.name, date.fromordinal(on), as_planned.place.week, (), ())
    replaced = session.model_copy(update={"exercises": others})
    other_planned, other_begun = (planned_session(one, replaced, on) for one in (client, before))
    places = []
    for n, entry in enumerate(session.exercises):
        other = others[n]
        mine = as_begun if entry.exercise in begun else as_planned
        theirs = other_begun if other.exercise in begun else other_planned
        known = other is not entry and bool(theirs.exercises)
        places.append(
            Place(
                entry,
                mine.exercises[n],
                taken.get(entry.exercise) if known else None,
                (other, theirs.exercises[n]) if known else None,
            )
        )
    notes = (*as_planned.notes, *as_begun.notes)
    return Meeting(
        session.name,
        date.fromordinal(on),
        as_planned.place.week,
        tuple(places),
        tuple(dict.fromkeys(notes)),
    )


def _other(entry: Entry, offered: Mapping[str, str], intake: Intake) -> Entry:
    """The entry of the stand-in; the entry itself without one."""
    by = offered.get(entry.exercise)
    if by is None or by == entry.exercise:
        return entry
    return stand_in(entry, catalogue.exercise(by), limits_of(intake))


@lru_cache
def _ids() -> frozenset[str]:
    return frozenset(catalogue.ids())
