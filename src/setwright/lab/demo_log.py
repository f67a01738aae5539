"""Eight weeks of one virtual lifter on a plan, as records of a log: worth reading in a review.

Loads come from this project's own coaching, week by week. What goes wrong is laid down, not
drawn, so that every review has something to find: two sessions missed, an exercise skipped, one
replaced, one that falls back, mild pain, a load in the wrong unit, a figure corrected, calls that
are off.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from datetime import date, datetime, timedelta
from uuid import UUID

import numpy as np

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit, stock_of
from setwright.lab.attempt import Luck, Outcome, Told, do_set
from setwright.lab.body import Body
from setwright.lab.demo_events import (
    ILL,
    NO_TIME,
    SORE,
    STALLS_BY,
    STALLS_FROM,
    as_written,
    replacement,
    session_as_done,
    stalled,
    together,
)
from setwright.lab.demo_person import kind_of, person_of
from setwright.plan.intake import DAYS, Intake
from setwright.plan.log import (
    BodyMass,
    Missed,
    Pain,
    Record,
    SetRecord,
    log_of,
)
from setwright.plan.week import Entry, Plan, Session
from setwright.training.block import block_of
from setwright.training.from_log import done_sets
from setwright.training.ladder import Ladder, ladder
from setwright.training.lifter import Lifter
from setwright.training.past import Past, past_from_log
from setwright.training.policy import plan_sets
from setwright.training.seeds import seeds_of
from setwright.training.sets import PlannedSet

FIRST_MONDAY = date(2026, 9, 7)
# Where the person of the demo hurts, by the movement: the shoulder if the session asks for it.
SHOULDER = (
    "vertical press",
    "lateral raise",
    "shoulder extension",
    "dip",
    "horizontal press",
    "incline press",
)
KNEE = ("squat", "lunge", "knee extension")
SET_S, CHANGE_S = 35, 120


def demo_log(
    intake: Intake, plan: Plan, weeks: int = 8, seed: int = 1, start: date = FIRST_MONDAY
) -> tuple[Record, ...]:
    """Records of a log, in the order in which they were written.

    Args:
        intake: the client.
        plan: the client's week, done again and again.
        weeks: to train, 1 or more.
        seed: of everything that is drawn.
        start: Monday of the first week.
    """
    return tuple(_Diary(intake, plan, seed, start).write(weeks))


@dataclass
class _Session:
    """One session under way: where it stands, the clock, and what is on the body of the log."""

    week: int
    number: int
    plan: Session
    at: datetime
    records: list[Record] = field(default_factory=list)
    heaviest: str | None = None

    @property
    def place(self) -> tuple[int, int]:
        """Week and session from 0."""
        return self.week, self.number


class _Diary:
    """Lives the weeks and writes the log."""

    def __init__(self, intake: Intake, plan: Plan, seed: int, start: date) -> None:
        self._intake, self._plan, self._start = intake, plan, start
        self._rng = np.random.default_rng(np.random.SeedSequence([seed, 4]))
        self._gym: GymKit = stock_of(intake.gym, intake.kit)
        self._swap = replacement(plan, self._gym)
        self._stalled = stalled(plan)
        extra = (self._swap[1],) if self._swap else ()
        names = {entry.exercise for session in plan.sessions for entry in session.exercises}
        self._ladders: dict[str, Ladder] = {
            name: ladder(catalogue.exercise(name), self._gym) for name in (*names, *extra)
        }
        self._mass = intake.body_mass_kg or 70.0
        self._body = Body(person_of(intake, plan, extra, self._ladders, seed))
        self._lifter = Lifter.start(intake.sex, intake.experience, seeds_of(intake))
        self._past = Past()
        self._written: list[Record] = []
        self._block = block_of(intake, start.toordinal())
        self._drift = 0.0
        self._lived = 0

    def write(self, weeks: int) -> Iterator[Record]:
        """All records."""
        for week in range(weeks):
            self._drift = 0.8 * self._drift + float(self._rng.normal(0, 0.2))
            for number, session in enumerate(self._plan.sessions):
                day = self._start + timedelta(days=7 * week + DAYS.index(session.day))
                for record in self._day(week, number, session, day):
                    self._written.append(record)
                    yield record

    def _day(self, week: int, number: int, session: Session, day: date) -> Iterator[Record]:
        while self._lived < (day - self._start).days:
            self._body.sleep()
            self._lived += 1
        at = datetime(day.year, day.month, day.day, 18, 0)
        if (week, number) in (NO_TIME, ILL):
            reason = "ill" if (week, number) == ILL else "no time"
            yield Missed(id=self._id(), at=at, session=session.name, reason=reason)
            return
        if number == 0:
            self._mass = round(self._mass + float(self._rng.normal(0.05, 0.2)), 1)
            yield BodyMass(id=self._id(), at=at, kg=self._mass)
        self._body.wake(0.012 * float(self._rng.standard_t(4.0)))
        under_way = _Session(week, number, session, at + timedelta(minutes=8))
        self._train(under_way)
        yield from under_way.records
        self._learn(under_way.records)

    def _learn(self, records: Sequence[Record]) -> None:
        weighed = BodyMass(id=self._id(), at=records[0].at, kg=self._mass)
        for done in done_sets(log_of([weighed, *records]), self._intake):
            self._lifter.fold(done)
        self._past = past_from_log(log_of(self._written), self._intake)

    def _id(self) -> str:
        return str(UUID(bytes=self._rng.bytes(16), version=4))

    def _train(self, now: _Session) -> None:
        entries, changed = session_as_done(now.plan, now.place, now.at, self._swap, self._id)
        now.records.extend(changed)
        day = now.at.toordinal()
        asked = plan_sets(
            self._lifter, entries, day, self._block, self._intake, self._gym, self._past, self._mass
        )
        loads = {k: one.sets[0].load_kg or 0.0 for k, one in enumerate(asked) if one.sets}
        top = max(loads, key=lambda k: loads[k], default=0)
        now.heaviest = entries[top].exercise if loads.get(top, 0.0) > 0 else None
        shapes = {entry.exercise: 0.009 * float(self._rng.standard_t(4.0)) for entry in entries}
        if self._stalled in shapes:
            shapes[self._stalled] -= STALLS_BY * max(now.week - STALLS_FROM + 1, 0)
        names = [one.exercise for one in entries]
        sore = next((name for name in names if kind_of(name) in SHOULDER), names[0])
        for group in together(entries):
            for turn in range(max(len(asked[k].sets) for k in group)):
                for k in group:
                    if turn < len(asked[k].sets):
                        planned = asked[k].sets[turn]
                        painful = now.place == SORE and entries[k].exercise == sore and turn == 1
                        self._set(now, entries[k], planned, shapes, len(group), painful)
            now.at += timedelta(seconds=CHANGE_S)
            self._body.rest(CHANGE_S)

    def _set(
        self,
        now: _Session,
        entry: Entry,
        planned: PlannedSet,
        shapes: dict[str, float],
        partners: int,
        painful: bool,
    ) -> None:
        exercise, first = entry.exercise, planned.number == 1
        steps = self._ladders[exercise]
        load = planned.load_kg
        if load is None:
            load = self._by_feel(exercise, entry, steps)
        rest = round(float(self._rng.uniform(*entry.rest_s)) / partners / 5) * 5
        if not first or partners > 1:
            now.at += timedelta(seconds=rest)
            self._body.rest(float(rest))
        uniform = self._rng.random(4)
        luck = Luck(
            shapes[exercise], float(self._rng.normal()), float(self._rng.normal()), self._drift,
            (float(uniform[0]), float(uniform[1]), float(uniform[2])),
        )  # fmt: skip
        told = Told(steps.system(load, self._mass), planned.rir, planned.most)
        out = do_set(self._body, exercise, told, luck)
        now.at += timedelta(seconds=SET_S)
        between = None if first or uniform[3] < 0.15 else float(rest * partners)
        record = self._record(now, exercise, load, planned.number, out, between)
        if painful:
            pain = Pain(where=_where(exercise), level=3)
            note = "eased when I went lighter"
            record = record.model_copy(update={"pain": pain, "note": note})
        slips = exercise == now.heaviest and record.number == 2 and record.load_kg > 0
        now.records.extend(as_written(now.place, record, self._id) if slips else (record,))

    def _record(
        self,
        now: _Session,
        exercise: str,
        load: float,
        number: int,
        out: Outcome,
        rest_s: float | None,
    ) -> SetRecord:
        return SetRecord(
            id=self._id(),
            at=now.at,
            exercise=exercise,
            load_kg=round(load, 2),
            reps=out.effort.reps,
            number=number,
            rir=out.called,
            to_failure=out.failed,
            rest_s=rest_s,
        )

    def _by_feel(self, exercise: str, entry: Entry, steps: Ladder) -> float:
        own = self._body.traits.own[exercise]
        wanted = sum(entry.reps) / 2 + sum(entry.rir) / 2
        if steps.steps is None:
            return 0.0
        best = [
            load
            for load in steps.steps
            if self._body.can_do(
                exercise, self._body.fraction(exercise, steps.system(load, self._mass)), 0.0
            )
            >= wanted
        ]
        return max(best) if best and own.one_rm > 0 else steps.lightest()


def _where(exercise: str) -> str:
    kind = kind_of(exercise)
    if kind in SHOULDER:
        return "front of the right shoulder"
    return "front of the left knee" if kind in KNEE else "lower back"
