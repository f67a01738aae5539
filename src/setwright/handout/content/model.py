"""The content of a handout: the same words for paper, page, workbook and calendar."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.plan.intake import Day


@dataclass(frozen=True)
class SetLine:
    """One working set to fill in.

    Attributes:
        number: from 1.
        rir: planned repetitions in reserve, to the nearest half.
    """

    number: int
    rir: str


@dataclass(frozen=True)
class Line:
    """One exercise of a session.

    Attributes:
        mark: place in the session, with the letter of its superset: ``3`` or ``4A``.
        exercise: catalogue id.
        name: of the exercise.
        reps: band, for example ``8-12``.
        sides: `` a side`` for a one-sided exercise, else empty.
        rir: first to last set, for example ``2 > 1``.
        rest: between sets of the exercise.
        tempo: seconds lowering/stretched/lifting/top; empty for a pace of its own.
        load: of the first working set, or its share of the 1RM.
        load_kg: the same load as a figure, or None when none is known.
        range_cue: through which range, in one sentence.
        cues: how to do it.
        ramp: warm-up sets with their loads.
        substitute: name of an exercise that can stand in, or empty.
        note: the coach's own words.
        sets: working sets in order.
    """

    mark: str
    exercise: str
    name: str
    reps: str
    sides: str
    rir: str
    rest: str
    tempo: str
    load: str
    load_kg: float | None
    range_cue: str
    cues: str
    ramp: tuple[str, ...]
    substitute: str
    note: str
    sets: tuple[SetLine, ...]

    @property
    def dose(self) -> str:
        """Sets times repetitions, for example ``3 x 8-12 a side``."""
        return f"{len(self.sets)} × {self.reps}{self.sides}"


@dataclass(frozen=True)
class Group:
    """An exercise alone, or the exercises of a superset.

    Attributes:
        letter: of the superset; empty for an exercise alone.
        lines: in the order they are done.
    """

    letter: str
    lines: tuple[Line, ...]


@dataclass(frozen=True)
class SessionContent:
    """One session.

    Attributes:
        day: of the week.
        name: as the coach calls it.
        minutes: as rehearsed, whole minutes.
        interval: the 80 % interval of the minutes, in words.
        to_be_had: minutes that are there, or None.
    """

    day: Day
    name: str
    minutes: int
    interval: str
    to_be_had: int | None
    groups: tuple[Group, ...]

    @property
    def heading(self) -> str:
        """Day and name."""
        return f"{self.day.capitalize()}: {self.name}"

    @property
    def lines(self) -> tuple[Line, ...]:
        """Every exercise in order."""
        return tuple(line for group in self.groups for line in group.lines)


@dataclass(frozen=True)
class PartRow:
    """What one part gets.

    Attributes:
        sets: fractional sets a week.
        target: least to most, or empty when nothing is asked.
        standing: within, below or above the target, or ``no target``.
        days: on how many days it is trained.
        growth: expected percent of size a week with the 80 % interval, in words.
    """

    muscle: str
    part: str
    sets: float
    least: float
    most: float
    target: str
    standing: str
    days: int
    growth: str


@dataclass(frozen=True)
class Finding:
    """One remark of the audit in words."""

    criterion: str
    words: str
    mend: str
    unavoidable: str


@dataclass(frozen=True)
class CoachContent:
    """What only the coach gets: the audit and the per-part table.

    Attributes:
        counts: how many checks hold, are close and miss.
        holds: titles of the criteria that hold throughout.
    """

    counts: str
    misses: tuple[Finding, ...]
    close: tuple[Finding, ...]
    holds: tuple[str, ...]
    parts: tuple[PartRow, ...]


@dataclass(frozen=True)
class Content:
    """A whole handout.

    Attributes:
        summary: sessions, exercises, working sets and minutes of the week.
        unit: of every load.
        own_cautions: those the person's answers ask for.
        stop_signs: for everybody.
        ask: whom to ask, and what the plan is not.
        coach: None on a client's handout.
    """

    title: str
    person: str
    unit: str
    summary: str
    sessions: tuple[SessionContent, ...]
    own_cautions: tuple[str, ...]
    stop_signs: tuple[str, ...]
    ask: tuple[str, ...]
    coach: CoachContent | None
