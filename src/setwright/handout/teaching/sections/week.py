"""The week at a glance."""

from __future__ import annotations

from setwright.audit.context import Context
from setwright.exercises import catalogue
from setwright.handout.teaching.content import Section, Table, Words
from setwright.handout.wording import (
    counted,
    first_load,
    heading,
    rest_words,
    rir_words,
    sets_of,
    span,
)
from setwright.plan.week import Session
from setwright.rehearsal.model import RehearsedSession

READING = (
    "RIR: repetitions in reserve, first set → last set. Rest: between sets of the same exercise. A "
    "letter joins exercises that are alternated."
)


def week_section(context: Context, in_full: bool) -> tuple[Section, ...]:
    """Days, minutes and sets; in full every session with its exercises, too."""
    plan, lived = context.plan, context.rehearsal.sessions
    total = sum(one.total_s for one in lived) / 60
    summary = (
        f"{counted(len(plan.sessions), 'session')}, {counted(len(context.placed), 'exercise')}, "
        f"{counted(sets_of(plan), 'working set')}, {total:.0f} min as rehearsed."
    )
    table = Table(
        "Minutes as rehearsed, with the 80 % interval between people",
        ("day", "session", "exercises", "sets", "minutes", "interval", "to be had"),
        tuple(_row(context, number) for number in range(len(lived))),
        figures=(2, 3, 4, 5, 6),
        wide=(1,),
    )
    first = Section("week", "The week at a glance", (Words(summary), table))
    if not in_full:
        return (first,)
    sessions = (
        Section(f"week-{number}", heading(session), (_table(context, session, one),), level=3)
        for number, (session, one) in enumerate(zip(plan.sessions, lived, strict=True), start=1)
    )
    return (Section(first.ident, first.title, (*first.blocks, Words(READING))), *sessions)


def _row(context: Context, number: int) -> tuple[str, ...]:
    session, lived = context.plan.sessions[number], context.rehearsal.sessions[number]
    return (
        session.day.capitalize(),
        session.name,
        str(len(session.exercises)),
        str(sum(entry.sets for entry in session.exercises)),
        f"{lived.total_s / 60:.0f}",
        f"{lived.low_s / 60:.0f} to {lived.high_s / 60:.0f}",
        "" if session.minutes is None else str(session.minutes),
    )


def _table(context: Context, session: Session, lived: RehearsedSession) -> Table:
    noted = any(entry.note for entry in session.exercises)
    rows = []
    for position, entry in enumerate(session.exercises):
        row = (
            f"{position + 1}{entry.superset or ''}",
            catalogue.exercise(entry.exercise).name,
            _together(f"{entry.sets} × {span(*entry.reps, mark='–')}"),
            _together(rir_words(entry).replace(" > ", " → ")),
            _together(rest_words(entry.rest_s, mark="–")),
            _together(first_load(lived, position, context.plan)),
        )
        rows.append((*row, entry.note) if noted else row)
    heads = ("", "exercise", "sets × reps", "RIR", "rest", "first load")
    return Table(
        "", (*heads, "note") if noted else heads, tuple(rows), wide=(1, 6) if noted else (1,)
    )


def _together(figure: str) -> str:
    """A figure that is not broken over two lines."""
    return figure.replace(" ", "\u00a0")
