"""Sessions and sets done against those planned, and how well the plan was kept to."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, timedelta

from setwright.plan.intake import DAYS
from setwright.plan.log import Missed, Record, Replaced, SetRecord, Skipped
from setwright.plan.week import Entry, Plan
from setwright.rehearsal.rehearse import rehearse
from setwright.training.after_break import coming_back
from setwright.training.attended import session_of
from setwright.training.client import Client
from setwright.training.labels import session_label

WEEKS = 4
# Without times of day, or with all of them the same, the minutes of a session are not known.
LEAST_MINUTES = 5.0


@dataclass(frozen=True)
class SessionDone:
    """One session of the plan and what came of it.

    Attributes:
        session: its label.
        planned_on: its day.
        done_on: day it was done on, or None.
        planned_sets: working sets; fewer than the plan's in a lighter week.
        done_sets: working sets of the day, other exercises included.
        planned_minutes: as rehearsed.
        done_minutes: from the first to the last set as logged; None when times do not tell.
        reason: why it was missed, as logged; empty when nothing was said.
    """

    session: str
    planned_on: date
    done_on: date | None
    planned_sets: int
    done_sets: int
    planned_minutes: float
    done_minutes: float | None
    reason: str


@dataclass(frozen=True)
class WeekKept:
    """Sets and sessions of one week, done against planned."""

    monday: date
    planned_sessions: int
    done_sessions: int
    planned_sets: int
    done_sets: int


@dataclass(frozen=True)
class Unable:
    """An exercise of which no repetition could be done, the last times it was tried.

    Attributes:
        exercise: id.
        days: on end on which every set of it failed.
        load_kg: lightest load tried on them, as lifted.
    """

    exercise: str
    days: int
    load_kg: float


@dataclass(frozen=True)
class LeftOut:
    """An exercise skipped or replaced, how often this week, and the reasons said."""

    exercise: str
    by: str | None
    times: int
    reasons: tuple[str, ...]


def days_done(sets: Iterable[SetRecord], monday: date) -> dict[int, list[SetRecord]]:
    """Working sets of a week by weekday, 0 for Monday; a left and a right set are two."""
    found: dict[int, list[SetRecord]] = {}
    for one in sets:
        weekday = (one.at.date() - monday).days
        if 0 <= weekday < 7 and one.role == "working" and one.reps + one.partial_reps > 0:
            found.setdefault(weekday, []).append(one)
    return found


def counted_sets(sets: Iterable[SetRecord]) -> int:
    """Working sets, a left and a right one taken as one."""
    sides: Counter[tuple[str, str | None]] = Counter((one.exercise, one.side) for one in sets)
    exercises = {exercise for exercise, _ in sides}
    return sum(
        sides[name, None] + max(sides[name, "left"], sides[name, "right"]) for name in exercises
    )


def matched(
    plan: Plan, by_day: dict[int, list[SetRecord]], replaced: dict[str, str]
) -> dict[int, int]:
    """Sessions done: index of the session to weekday. A substitute counts as what it replaced."""
    found: dict[int, int] = {}
    for weekday in sorted(by_day):
        names = {replaced.get(one.exercise, one.exercise) for one in by_day[weekday]}
        session = session_of(plan, names, weekday, found)
        if session is not None:
            found[session] = weekday
    return found


def sessions_done(client: Client, plan: Plan, monday: date) -> tuple[SessionDone, ...]:
    """Every session of a week's plan and what came of it, up to the client's day."""
    by_day = days_done(_sets_until(client), monday)
    done = matched(plan, by_day, _replaced(client, monday))
    lived = rehearse(plan, client.folder.intake).sessions
    reasons = _missed(client, plan, monday)
    rows = []
    for number, session in enumerate(plan.sessions):
        weekday = done.get(number)
        sets = by_day[weekday] if weekday is not None else []
        on = monday + timedelta(DAYS.index(session.day))
        rows.append(
            SessionDone(
                session_label(plan, number),
                on,
                None if weekday is None else monday + timedelta(weekday),
                sum(asked_sets(client, entry, on) for entry in session.exercises),
                counted_sets(sets),
                lived[number].total_s / 60,
                _minutes(sets),
                reasons.get(number, ""),
            )
        )
    return tuple(rows)


def asked_sets(client: Client, entry: Entry, on: date) -> int:
    """Sets asked of an exercise on a day: fewer in a lighter week or after a break."""
    day = on.toordinal()
    share = client.block.place(day).sets_share
    back = coming_back(client.past.before(entry.exercise, day), day, client.past.days)
    if back is not None:
        share = min(share, back.sets_share)
    return entry.sets if share >= 1.0 else max(round(entry.sets * share - 1e-9), 1)


def weeks_kept(client: Client, monday: date, weeks: int = WEEKS) -> tuple[WeekKept, ...]:
    """Sets and sessions done against planned, oldest week first, the week itself last.

    Weeks before the first plan are left out. Sessions that are still to come in a week under way
    count neither as planned nor as missed.
    """
    found = []
    for back in range(weeks - 1, -1, -1):
        start = monday - timedelta(7 * back)
        plan = client.folder.plan_on(start)
        if plan is None:
            continue
        rows = [
            row
            for row in sessions_done(client, plan, start)
            if row.done_on is not None or row.planned_on.toordinal() <= client.day
        ]
        found.append(
            WeekKept(
                start,
                len(rows),
                sum(row.done_on is not None for row in rows),
                sum(row.planned_sets for row in rows),
                # Further sets do not make up for those left out of another session.
                sum(min(row.done_sets, row.planned_sets) for row in rows),
            )
        )
    return tuple(found)


def left_out(client: Client, monday: date) -> tuple[LeftOut, ...]:
    """Exercises skipped or replaced in a week."""
    rows: dict[tuple[str, str | None], list[str]] = {}
    for record in _week(client, monday):
        if isinstance(record, Skipped):
            rows.setdefault((record.exercise, None), []).append(record.reason)
        elif isinstance(record, Replaced):
            rows.setdefault((record.exercise, record.by), []).append(record.reason)
    return tuple(
        LeftOut(exercise, by, len(reasons), tuple(dict.fromkeys(reasons)))
        for (exercise, by), reasons in rows.items()
    )


def unable(client: Client, monday: date) -> tuple[Unable, ...]:
    """Exercises tried this week that have failed in every set since they were last done."""
    days: dict[str, dict[int, list[SetRecord]]] = {}
    for one in _sets_until(client):
        if one.role == "working":
            days.setdefault(one.exercise, {}).setdefault(one.at.toordinal(), []).append(one)
    found = []
    for exercise, by_day in days.items():
        failed: list[SetRecord] = []
        count = 0
        for on in sorted(by_day, reverse=True):
            if any(one.reps + one.partial_reps for one in by_day[on]):
                break
            failed += by_day[on]
            count += 1
        if count and max(by_day) >= monday.toordinal():
            found.append(Unable(exercise, count, min(one.load_kg for one in failed)))
    return tuple(found)


def left_unsaid(client: Client, plan: Plan, monday: date) -> tuple[str, ...]:
    """Exercises of the week's sessions done that were left out without a record of why."""
    by_day = days_done(_sets_until(client), monday)
    said = {one.exercise for one in left_out(client, monday)}
    said |= {one.exercise for one in unable(client, monday)}
    found: list[str] = []
    for number, weekday in matched(plan, by_day, _replaced(client, monday)).items():
        done = {one.exercise for one in by_day[weekday]}
        names = [entry.exercise for entry in plan.sessions[number].exercises]
        found += [name for name in names if name not in done | said]
    return tuple(dict.fromkeys(found))


def _sets_until(client: Client) -> tuple[SetRecord, ...]:
    return tuple(one for one in client.folder.log.sets() if one.at.toordinal() <= client.day)


def _week(client: Client, monday: date) -> tuple[Record, ...]:
    return tuple(
        record
        for record in client.folder.log.standing()
        if 0 <= (record.at.date() - monday).days < 7 and record.at.toordinal() <= client.day
    )


def _replaced(client: Client, monday: date) -> dict[str, str]:
    """Substitute to the exercise of the plan it stood in for."""
    found = _week(client, monday)
    return {one.by: one.exercise for one in found if isinstance(one, Replaced)}


def _missed(client: Client, plan: Plan, monday: date) -> dict[int, str]:
    """Reasons said by index of the session; of two with one name, the one of that day."""
    found: dict[int, str] = {}
    for one in _week(client, monday):
        if not isinstance(one, Missed):
            continue
        named = [
            number
            for number, session in enumerate(plan.sessions)
            if one.session in (session.name, session_label(plan, number))
        ]
        day = DAYS[one.at.weekday()]
        named.sort(key=lambda number: plan.sessions[number].day != day)
        if named:
            found[named[0]] = one.reason
    return found


def _minutes(sets: list[SetRecord]) -> float | None:
    if len(sets) < 2:
        return None
    minutes = (max(one.at for one in sets) - min(one.at for one in sets)).total_seconds() / 60
    return minutes if minutes >= LEAST_MINUTES else None
