"""What the columns of the board show."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection
from dataclasses import dataclass

from setwright.audit.audit import AuditReport
from setwright.exercises import catalogue
from setwright.handout.timeline import Block, Lane, blocks
from setwright.handout.wording import counted, listed, rest_words, rir_words, span
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.model import RehearsedSession
from setwright.web.board.geometry import lines_in, rem, strip, ticks
from setwright.web.board.locks import key


@dataclass(frozen=True)
class Card:
    """One exercise on the board.

    Attributes:
        at: ``session.position``.
        dose: sets, repetitions and effort in short.
        label: everything in words, for a screen reader.
        strip: SVG of its sets to scale.
        misses: remarks that miss at this place.
        lines: lines of text that fit into it, three at most counted.
    """

    at: str
    exercise: str
    name: str
    letter: str
    dose: str
    rest: str
    label: str
    strip: str
    locked: bool
    misses: int
    close: int
    lines: int


@dataclass(frozen=True)
class Group:
    """A block of a column: an exercise alone, or a superset side by side."""

    cards: tuple[Card, ...]


@dataclass(frozen=True)
class Column:
    """A session on the board.

    Attributes:
        minutes: as rehearsed; ``low`` and ``high`` span the 80 % interval.
        limit: minutes to be had, or None.
        limit_height: how far down the board that is.
        over: minutes that the session is too long.
    """

    number: int
    day: str
    name: str
    minutes: float
    low: float
    high: float
    sets: int
    limit: int | None
    limit_height: str
    over: float
    groups: tuple[Group, ...]


@dataclass(frozen=True)
class Columns:
    """All columns on one scale.

    Attributes:
        ticks: minutes marked.
        height: of the scale.
    """

    columns: tuple[Column, ...]
    ticks: tuple[int, ...]
    height: str


def columns_of(plan: Plan, report: AuditReport, locked: Collection[str]) -> Columns:
    """The columns of a week.

    Args:
        plan: the week.
        report: its audit.
        locked: keys of exercises that a new design keeps.
    """
    marks: Counter[tuple[int, int, str]] = Counter(
        (one.place.session, one.place.entry, one.verdict)
        for one in report.remarks
        if one.place is not None and one.place.entry is not None and one.unavoidable is None
    )
    found = tuple(
        _column(number, session, lived, locked, marks)
        for number, (session, lived) in enumerate(
            zip(plan.sessions, report.rehearsal.sessions, strict=True)
        )
    )
    marked = ticks(max(max(one.minutes, one.limit or 0) for one in found))
    return Columns(found, tuple(marked), rem(60 * marked[-1]))


def _column(
    number: int,
    session: Session,
    lived: RehearsedSession,
    locked: Collection[str],
    marks: Counter[tuple[int, int, str]],
) -> Column:
    minutes = lived.total_s / 60
    groups = tuple(
        Group(tuple(_card(number, session, block, lane, locked, marks) for lane in block.lanes))
        for block in blocks(session, lived)
    )
    return Column(
        number,
        session.day.capitalize(),
        session.name,
        minutes,
        lived.low_s / 60,
        lived.high_s / 60,
        sum(entry.sets for entry in session.exercises),
        session.minutes,
        rem(60 * (session.minutes or 0)),
        max(minutes - session.minutes, 0.0) if session.minutes else 0.0,
        groups,
    )


def _card(
    number: int,
    session: Session,
    block: Block,
    lane: Lane,
    locked: Collection[str],
    marks: Counter[tuple[int, int, str]],
) -> Card:
    entry = session.exercises[lane.position]
    name = catalogue.exercise(entry.exercise).name
    partners = [
        catalogue.exercise(session.exercises[other.position].exercise).name
        for other in block.lanes
        if other.position != lane.position
    ]
    held = key(session.day, entry.exercise) in locked
    misses, close = (marks[number, lane.position, word] for word in ("misses", "close"))
    dose = f"{entry.sets} × {span(*entry.reps, mark='–')}"
    return Card(
        f"{number}.{lane.position}",
        entry.exercise,
        name,
        entry.superset or "",
        f"{dose} · RIR {rir_words(entry)}",
        rest_words(entry.rest_s, "–"),
        _label(name, entry, block, partners, held, misses, close),
        strip(block, lane),
        held,
        misses,
        close,
        lines_in(block.whole.end_s - block.whole.start_s),
    )


def _label(
    name: str,
    entry: Entry,
    block: Block,
    partners: list[str],
    held: bool,
    misses: int,
    close: int,
) -> str:
    words = [
        f"{name}: {counted(entry.sets, 'set')} of {span(*entry.reps, mark=' to ')}",
        f"{rir_words(entry)} in reserve".replace(">", "then"),
        f"rest {rest_words(entry.rest_s, ' to ')}",
        f"{block.minutes:.0f} minutes",
    ]
    if partners:
        words.append(f"alternated with {listed(partners)}")
    if held:
        words.append("locked")
    if misses:
        words.append(f"{counted(misses, 'remark')} missed")
    if close:
        words.append(f"{close} close")
    return ", ".join(words)
