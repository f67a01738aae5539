"""What is due now: the next set of a session under way, or the session to come."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from setwright.exercises import catalogue
from setwright.plan.log import Replaced, Skipped
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.rehearse import rir_of
from setwright.training.attended import WEEK, session_under_way
from setwright.training.client import Client
from setwright.training.coming import to_come
from setwright.training.done import DoneSet
from setwright.training.lifter import Lifter
from setwright.training.missed import CatchUp
from setwright.training.next_session import PlannedExercise, PlannedSession, next_session
from setwright.training.next_set import NextSet, next_set, stopped
from setwright.training.sets import Prescribed
from setwright.training.trouble import NONE, Trouble, together


@dataclass(frozen=True)
class DueSet:
    """The next set of today.

    Attributes:
        session: its name.
        exercise: id.
        of: sets planned.
        step: the next set of an exercise under way, or None when it has not begun.
        start: its first set with warm-up, when it has not begun.
        finished: everything of the session is done.
    """

    session: str
    exercise: str
    of: int
    step: NextSet | None
    start: PlannedExercise | None
    finished: bool


@dataclass(frozen=True)
class DueSession:
    """The session to come.

    Attributes:
        session: as computed.
        missed: how to go on after sessions missed this week, or None.
    """

    session: PlannedSession
    missed: CatchUp | None


def due_session(client: Client, plan: Plan, exercise: str | None = None) -> DueSession:
    """The session of today, or else the next one, from today on.

    After missed sessions the week goes on as ``catch_up`` finds best.

    Args:
        client: up to today.
        plan: in force.
        exercise: id; only this exercise of the session that has it.
    """
    missed, coming = to_come(client, plan)
    if exercise is not None:
        having = [one for one in coming if any(e.exercise == exercise for e in one[1].exercises)]
        coming = (*having, *coming)
    day, session = coming[0]
    planned = planned_session(client, session, day)
    if exercise is not None:
        only = tuple(one for one in planned.exercises if one.prescribed.exercise == exercise)
        planned = replace(planned, exercises=only)
    return DueSession(planned, missed)


def planned_session(client: Client, session: Session, day: int) -> PlannedSession:
    """A session as it is to be done by a client on a day."""
    return next_session(
        client.lifter,
        session,
        client.folder.intake,
        day,
        client.block,
        client.past,
        client.gym,
        client.body_mass_kg,
    )


def due_set(client: Client, plan: Plan, exercise: str | None = None) -> DueSet | None:
    """The next set when something was logged today; None when nothing was.

    Args:
        client: up to today.
        plan: in force.
        exercise: id of the exercise meant; by default the one of the last set, its partner in a
            superset, or the next of the session.
    """
    today = client.today()
    if not today:
        return None
    done = {one.exercise for one in today}
    number = session_under_way(plan, done, (client.day - 1) % WEEK)
    if number is None:
        return DueSet("", today[-1].exercise, 0, None, None, finished=True)
    session = plan.sessions[number]
    planned = planned_session(client, session, client.day)
    ended = DueSet(session.name, today[-1].exercise, 0, None, None, finished=True)
    if exercise is not None:
        asked = (one for one in session.exercises if one.exercise == exercise)
        return next((_due(client, session, planned, one) for one in asked), ended)
    for entry in _in_turn(client, session.exercises):
        found = _due(client, session, planned, entry)
        # Why the last one ends early is said; others that are over are passed by.
        early = entry.exercise == today[-1].exercise and _count(entry, today) < found.of
        if not _over(found) or early or trouble_now(client, entry.exercise).ends_session:
            return found
    return ended


def _due(client: Client, session: Session, planned: PlannedSession, entry: Entry) -> DueSet:
    """The next set of one exercise of the session under way."""
    name, today = session.name, client.today()
    trouble = trouble_now(client, entry.exercise)
    done = _count(entry, today)
    if trouble.stop:
        step = stopped(done + 1, trouble)
        return DueSet(name, entry.exercise, entry.sets, step, None, finished=False)
    start = planned.exercises[session.exercises.index(entry)]
    prescribed = start.prescribed
    if not done or not prescribed.sets:
        return DueSet(name, entry.exercise, len(prescribed.sets), None, start, finished=False)
    step = step_after(client, client.lifter, entry, prescribed, today, trouble)
    return DueSet(name, entry.exercise, len(prescribed.sets), step, None, finished=False)


def _over(found: DueSet) -> bool:
    """Nothing more of it: done, stopped, or left out today."""
    if found.step is not None:
        return found.step.over
    return found.start is not None and not found.start.prescribed.sets


def step_after(
    client: Client,
    lifter: Lifter,
    entry: Entry,
    prescribed: Prescribed,
    today: Sequence[DoneSet],
    trouble: Trouble,
) -> NextSet:
    """The next set of an exercise that is under way.

    Args:
        client: for the kit, the person and the block.
        lifter: the estimate, with the sets of today folded in.
        entry: of the plan.
        prescribed: its sets of today, at least one.
        today: sets of today, at least one of the exercise.
        trouble: reported on it.
    """
    done = sum(one.exercise == entry.exercise for one in today)
    return next_set(
        lifter,
        entry.model_copy(update={"sets": len(prescribed.sets)}),
        today,
        catalogue.exercise(entry.exercise),
        client.gym,
        client.folder.intake,
        trouble=trouble,
        rir_more=prescribed.sets[0].rir_real - rir_of(entry, 1),
        may_rise=prescribed.change != "restart" and client.block.place(client.day).may_rise,
        to_failure=prescribed.sets[-1].to_failure and done + 1 == len(prescribed.sets),
        body_mass_kg=client.body_mass_kg,
        failed_kg=client.past.failed_on(entry.exercise, client.day),
    )


def trouble_now(client: Client, exercise: str) -> Trouble:
    """Reported on the exercise today or the last time, and symptoms of anything today."""
    past, cleared_on = client.past, client.folder.intake.screening.cleared_on
    found = past.trouble(exercise, client.day, cleared_on)
    found = together(found, past.reports.get(exercise, {}).get(client.day, NONE))
    return together(found, Trouble(symptoms=past.open_symptoms(client.day, cleared_on)))


def _in_turn(client: Client, entries: tuple[Entry, ...]) -> list[Entry]:
    """Exercises in the order they are asked for: the one under way with its partners first."""
    today = client.today()
    letters = {e.superset for e in entries if e.exercise == today[-1].exercise} - {None}
    under_way = [
        entry
        for entry in entries
        if entry.exercise == today[-1].exercise or entry.superset in letters
    ]
    under_way.sort(key=lambda entry: _count(entry, today))
    left_out = {
        one.exercise
        for one in client.folder.log.standing()
        if isinstance(one, Skipped | Replaced) and one.at.date().toordinal() == client.day
    }
    rest = [entry for entry in entries if entry not in under_way]
    return [entry for entry in (*under_way, *rest) if entry.exercise not in left_out]


def _count(entry: Entry, today: Sequence[DoneSet]) -> int:
    return sum(one.exercise == entry.exercise for one in today)
