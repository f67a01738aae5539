"""What was done before, exercise by exercise: the facts that the next load stands on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field
from datetime import date

from setwright.plan.intake import Intake
from setwright.plan.log import Log, Missed, SetRecord, Skipped
from setwright.plan.symptoms import Symptom
from setwright.training.done import DoneSet
from setwright.training.from_log import done_sets
from setwright.training.trouble import (
    CARRY_ON,
    NONE,
    TRY_AGAIN_DAYS,
    Trouble,
    together,
    trouble_of,
)

# Outings kept of each exercise: enough for the load before a break and its transition.
KEPT = 24
# A load this many times the day's middle one, or as many times less, is taken for a slip.
SLIP = 1.6


@dataclass(frozen=True, slots=True)
class Outing:
    """One exercise on one day: its working sets in order, at least one."""

    day: int
    sets: tuple[DoneSet, ...]

    @property
    def first(self) -> DoneSet:
        """The first working set, a slip of the pen in its load apart.

        A load far from the middle one of the day is one (a unit or a digit that slipped).
        """
        if len(self.sets) > 2 and self.sets[0].load_kg > 0:
            middle = sorted(one.load_kg for one in self.sets)[len(self.sets) // 2]
            near = (one for one in self.sets if middle < SLIP * one.load_kg < SLIP**2 * middle)
            return next(near, self.sets[0])
        return self.sets[0]

    @property
    def load_kg(self) -> float:
        """Load of the first working set, as lifted."""
        return self.first.load_kg


@dataclass
class Past:
    """Outings and reports by exercise, in time order; changed in place.

    Attributes:
        outings: of each exercise, at most the last ``KEPT``.
        reports: pain, technique and symptoms by exercise and day.
        days: days on which anything was trained, rising.
        ill_until: last day on which illness was reported, or None.
        nothing: last day on which a set ended without a repetition, by exercise, and the lightest
            load of such sets on it.
    """

    outings: dict[str, list[Outing]] = field(default_factory=dict)
    reports: dict[str, dict[int, Trouble]] = field(default_factory=dict)
    days: list[int] = field(default_factory=list)
    ill_until: int | None = None
    nothing: dict[str, tuple[int, float]] = field(default_factory=dict)

    def add(self, done: DoneSet, trouble: Trouble = NONE) -> None:
        """One more set, not earlier than those before it."""
        if not self.days or done.day > self.days[-1]:
            self.days.append(done.day)
        known = self.outings.setdefault(done.exercise, [])
        if known and known[-1].day == done.day:
            known[-1] = Outing(done.day, (*known[-1].sets, done))
        else:
            known.append(Outing(done.day, (done,)))
            if len(known) > KEPT:
                del known[0]
        self.report(done.exercise, done.day, trouble)

    def report(self, exercise: str, day: int, trouble: Trouble) -> None:
        """Trouble of a set, also of one that says nothing of strength."""
        if trouble != NONE:
            by_day = self.reports.setdefault(exercise, {})
            by_day[day] = together(by_day.get(day, NONE), trouble)

    def tried(self, exercise: str, day: int, load_kg: float) -> None:
        """A set in which no repetition could be done, not earlier than those before it."""
        known = self.nothing.get(exercise)
        if known is not None and known[0] == day:
            load_kg = min(load_kg, known[1])
        self.nothing[exercise] = (day, load_kg)

    def failed_kg(self, exercise: str, day: int) -> float | None:
        """Load at which nothing could be done, up to a day; None when a set was done since."""
        known = self.nothing.get(exercise)
        if known is None or known[0] > day:
            return None
        done = any(known[0] <= one.day <= day for one in self.outings.get(exercise, ()))
        return None if done else known[1]

    def failed_on(self, exercise: str, day: int) -> float | None:
        """Lightest load at which a set of that day ended without a repetition, or None."""
        known = self.nothing.get(exercise)
        return known[1] if known is not None and known[0] == day else None

    def before(self, exercise: str, day: int) -> tuple[Outing, ...]:
        """Outings of an exercise before a day, in time order."""
        known = self.outings.get(exercise, ())
        return tuple(one for one in known if one.day < day)

    def trouble(self, exercise: str, day: int, cleared_on: date | None = None) -> Trouble:
        """What was reported the last time the exercise was done, or tried, before a day.

        Args:
            exercise: id.
            day: of the session to come.
            cleared_on: day a health professional cleared training; earlier symptoms stop it no
                longer.
        """
        by_day = self.reports.get(exercise)
        if not by_day:
            return NONE
        last = max((one.day for one in self.outings.get(exercise, ()) if one.day < day), default=0)
        found = NONE
        for reported, one in by_day.items():
            if last <= reported < day:
                found = together(found, one.later(reported, day, cleared_on))
            elif reported < last and day - reported < TRY_AGAIN_DAYS and one.pain > CARRY_ON:
                found = together(found, Trouble(pain=CARRY_ON))
        return found

    def open_symptoms(self, day: int, cleared_on: date | None) -> tuple[Symptom, ...]:
        """Symptoms reported up to a day that stand against any further training on it."""
        found = NONE
        for by_day in self.reports.values():
            for reported, one in by_day.items():
                if reported <= day and one.ends_session:
                    found = together(found, one.later(reported, day, cleared_on))
        return found.symptoms


def past_of(done: Iterable[DoneSet]) -> Past:
    """The past out of sets without reports, in time order."""
    past = Past()
    for one in done:
        past.add(one)
    return past


def past_from_log(
    log: Log, intake: Intake | None = None, done: Iterable[DoneSet] | None = None
) -> Past:
    """The past out of a client's log, reports and illness included.

    Args:
        log: of the client.
        intake: for body mass before anything was weighed.
        done: its sets, when they were read before.
    """
    past = past_of(done_sets(log, intake) if done is None else done)
    for record in log.standing():
        day = record.at.toordinal()
        if isinstance(record, SetRecord):
            past.report(record.exercise, day, trouble_of((record,)))
            if record.role == "working" and record.reps + record.partial_reps == 0:
                past.tried(record.exercise, day, record.load_kg)
        elif isinstance(record, Skipped | Missed) and record.reason == "ill":
            past.ill_until = day
    return past
