"""What stands beside the board about the exercise or the session that is looked at."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

from setwright.audit.audit import AuditReport
from setwright.audit.remark import Place
from setwright.exercises import catalogue
from setwright.handout.wording import counted
from setwright.plan.week import Plan
from setwright.web.board.changing import At, entry_at, session_at
from setwright.web.board.days import free_days
from setwright.web.board.locks import key
from setwright.web.board.moving import span
from setwright.web.board.remarks import RemarkLine, line


@dataclass(frozen=True)
class Target:
    """A place an exercise can be moved to."""

    value: str
    label: str


@dataclass(frozen=True)
class Targets:
    """The places of one day."""

    day: str
    places: tuple[Target, ...]


@dataclass(frozen=True)
class ExercisePanel:
    """An exercise in its place.

    Attributes:
        earlier: place to move it to, one earlier; empty when it is first.
        later: the same, one later.
        joins: name of the exercise it can be alternated with.
        rehearsed: what the rehearsal expects of each set, in words.
    """

    at: str
    exercise: str
    name: str
    day: str
    place: str
    letter: str
    locked: bool
    earlier: str
    later: str
    joins: str
    targets: tuple[Targets, ...]
    rehearsed: tuple[str, ...]
    remarks: tuple[RemarkLine, ...]
    cues: tuple[str, ...]


def exercise_panel(
    plan: Plan, at: At, report: AuditReport, locked: Collection[str]
) -> ExercisePanel:
    """What there is to say about an exercise.

    Raises:
        EditError: when nothing stands there.
    """
    entry, session = entry_at(plan, at), session_at(plan, at.session)
    exercise = catalogue.exercise(entry.exercise)
    _, end = span(session, at.position)
    following = session.exercises[end : end + 1]
    first, last = at.position == 0, at.position == len(session.exercises) - 1
    remarks = tuple(
        line(one) for one in report.remarks if one.verdict != "holds" and one.place == Place(*at)
    )
    return ExercisePanel(
        f"{at.session}.{at.position}",
        entry.exercise,
        exercise.name,
        session.day.capitalize(),
        f"{at.position + 1} of {len(session.exercises)}",
        entry.superset or "",
        key(session.day, entry.exercise) in locked,
        "" if first else f"{at.session}.{at.position - 1}",
        "" if last else f"{at.session}.{at.position + 2}",
        catalogue.exercise(following[0].exercise).name if following else "",
        targets_of(plan, at),
        _rehearsed(report, at),
        remarks,
        exercise.cues,
    )


def targets_of(plan: Plan, at: At) -> tuple[Targets, ...]:
    """Every place the exercise can go to: before or after what stands there, or a free day."""
    found = []
    for number, session in enumerate(plan.sessions):
        places = []
        for position in range(len(session.exercises) + 1):
            here = number == at.session and position in (at.position, at.position + 1)
            start = span(session, position)[0] if position < len(session.exercises) else position
            if here or start != position:
                continue
            label = f"{session.day[:3].capitalize()}, first"
            if position:
                before = session.exercises[position - 1].exercise
                label = f"{session.day[:3].capitalize()}, after {catalogue.exercise(before).name}"
            places.append(Target(f"{number}.{position}", label))
        if places:
            found.append(Targets(f"{session.day.capitalize()}, {session.name}", tuple(places)))
    free = tuple(Target(day, day.capitalize()) for day in free_days(plan))
    return (*found, Targets("A day without a session", free)) if free else tuple(found)


def _rehearsed(report: AuditReport, at: At) -> tuple[str, ...]:
    sets = [one for one in report.rehearsal.sessions[at.session].sets if one.entry == at.position]
    return tuple(
        f"set {one.number}: {counted(one.reps, 'repetition')} of about {one.possible:.0f} possible "
        f"({one.possible_low:.0f} to {one.possible_high:.0f})"
        for one in sets
    )
