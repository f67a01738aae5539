"""A plan lived through, session by session, set by set, on the clock."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from math import ceil, floor, hypot
from typing import Protocol

import numpy as np
from numpy.typing import NDArray

from setwright.exercises.kit import GymKit, stock_of
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal import clock
from setwright.rehearsal.coefficients import COEFFICIENTS
from setwright.rehearsal.fatigue import Fatigue, Sex, extra_rest, overlap
from setwright.rehearsal.loads import Working, working_load
from setwright.rehearsal.model import (
    Rehearsal,
    RehearsedSession,
    RehearsedSet,
    WarmUpSet,
)
from setwright.rehearsal.strength import Z80
from setwright.rehearsal.warm_up import WARM, ramp

# Performance holds when a set loses no more than this share of the set before (common practice).
TOLERATED_LOSS = 0.15


class Catalogue(Protocol):
    """Where exercises and their shares come from."""

    def exercise(self, exercise_id: str, /) -> Exercise:
        """The declaration of one exercise."""

    def row(self, exercise_id: str, /) -> int:
        """Its row in ``shares``."""

    def shares(self) -> NDArray[np.float64]:
        """Shares of every exercise, shape (E, P)."""


def rehearse(
    plan: Plan, intake: Intake | None = None, catalogue: Catalogue | None = None
) -> Rehearsal:
    """Live the plan through.

    Args:
        plan: the week.
        intake: the person; without it no load is computed and the person counts as a man.
        catalogue: exercises and shares; the built-in catalogue by default.

    Raises:
        KeyError: an exercise the catalogue does not have.
    """
    known = catalogue or _built_in()
    gym = stock_of(intake.gym, intake.kit) if intake is not None else None
    sex: Sex = intake.sex if intake is not None else "unstated"
    return Rehearsal(
        tuple(
            _Session(index, session, intake, gym, sex, known).run()
            for index, session in enumerate(plan.sessions)
        )
    )


def _built_in() -> Catalogue:
    from setwright.exercises import catalogue

    return catalogue


def groups(entries: Sequence[Entry]) -> list[list[int]]:
    """Indices of the entries done together: one alone, or the letters of a superset, in order."""
    found: list[list[int]] = []
    lettered: dict[str, list[int]] = {}
    for index, entry in enumerate(entries):
        if entry.superset is None:
            found.append([index])
        elif entry.superset in lettered:
            lettered[entry.superset].append(index)
        else:
            lettered[entry.superset] = [index]
            found.append(lettered[entry.superset])
    return found


@dataclass
class _Done:
    """A set as it went, with the state it started from."""

    made: RehearsedSet
    local: float
    general: float
    had_s: float
    wanted: float


@dataclass
class _Session:
    """One session under way."""

    index: int
    session: Session
    intake: Intake | None
    gym: GymKit | None
    sex: Sex
    catalogue: Catalogue
    now: float = 0.0
    working_s: float = 0.0
    resting_s: float = 0.0
    warm_up_s: float = 0.0
    changing_s: float = 0.0
    rest_half_width_s: float = 0.0
    done: list[_Done] = field(default_factory=list)
    warm_up: list[tuple[int, WarmUpSet]] = field(default_factory=list)
    ended: dict[int, float] = field(default_factory=dict)
    last: dict[int, float] = field(default_factory=dict)
    started: list[int] = field(default_factory=list)

    def run(self) -> RehearsedSession:
        """Do everything in order and take the time."""
        entries = self.session.exercises
        self.exercises = [self.catalogue.exercise(entry.exercise) for entry in entries]
        rows = [self.catalogue.row(entry.exercise) for entry in entries]
        self.reach = overlap(self.catalogue.shares()[rows])
        whole = np.array([exercise.whole_body for exercise in self.exercises])
        self.state = Fatigue(self.reach, whole, self.sex)
        self.loads = [
            working_load(exercise, entry, self.intake, self.gym)
            for exercise, entry in zip(self.exercises, entries, strict=True)
        ]
        for group in groups(entries):
            self._group(group)
        span = clock.spread(
            self.now, self.working_s + self.warm_up_s, self.changing_s, self.rest_half_width_s
        )
        return RehearsedSession(
            self.index,
            self._sets(),
            tuple(self.warm_up),
            self.now,
            span.low_s,
            span.high_s,
            self.working_s,
            self.resting_s,
            self.warm_up_s,
            self.changing_s,
        )

    def _pass(self, seconds: float) -> None:
        self.now += seconds
        self.state.rest(seconds)

    def _group(self, group: list[int]) -> None:
        entries = self.session.exercises
        for index in group:
            self._change(clock.change_seconds(self.exercises[index]))
            self._warm_up(index)
        rounds = max(entries[index].sets for index in group)
        for number in range(1, rounds + 1):
            members = [index for index in group if entries[index].sets >= number]
            for place, index in enumerate(members):
                if place:
                    self._change(clock.PARTNER_S)
                self._set(index, number)
            if number < rounds:
                self._rest([index for index in group if entries[index].sets > number])

    def _change(self, seconds: float) -> None:
        self.changing_s += seconds
        self._pass(seconds)

    def _rest(self, members: list[int]) -> None:
        bands = [self.session.exercises[index].rest_s for index in members]
        low, high = max(bands, key=sum)
        self.resting_s += (low + high) / 2
        self.rest_half_width_s += abs(high - low) / 2
        self._pass((low + high) / 2)

    def _warm_up(self, index: int) -> None:
        exercise, load = self.exercises[index], self.loads[index]
        warm = any(self.reach[index, other] >= WARM for other in self.started)
        for one in ramp(exercise, load.fraction, warm):
            seconds = clock.ramp_seconds(exercise, one.reps)
            weight = self._ramp_load(exercise, load, one.of_working)
            self.warm_up.append(
                (index, WarmUpSet(one.of_working, one.reps, weight, self.now, seconds, one.rest_s))
            )
            self.warm_up_s += seconds + one.rest_s
            self._pass(seconds + one.rest_s)
        self.started.append(index)

    def _ramp_load(self, exercise: Exercise, load: Working, of_working: float) -> float | None:
        if load.load_kg is None:
            return None
        target = load.load_kg * of_working
        reachable = self.gym.loads(exercise) if self.gym is not None else None
        if not reachable:
            return target
        return max((one for one in reachable if one <= target), default=reachable[0])

    def _set(self, index: int, number: int) -> None:
        entry, exercise, load = (
            self.session.exercises[index],
            self.exercises[index],
            self.loads[index],
        )
        rir = rir_of(entry, number)
        local, general = self.state.local(index), self.state.general
        possible = load.fresh * self.state.kept(index)
        reps = reps_of(entry, possible, rir)
        real = possible - reps
        spread = hypot(
            load.fresh_sd * (possible / load.fresh if load.fresh else 0.0),
            COEFFICIENTS.fatigue.between_people * (load.fresh - possible),
        )
        actual = min(float(reps), possible)
        seconds = clock.set_seconds(exercise, entry, actual, real, number == entry.sets)
        had = self.now - self.ended[index] if index in self.ended else 0.0
        before = self.last.get(index)
        wanted = 0.0 if before is None or not load.fresh else before / load.fresh
        self.done.append(
            _Done(
                RehearsedSet(
                    entry=index,
                    number=number,
                    start_s=self.now,
                    work_s=seconds,
                    rest_s=0.0,
                    load_kg=load.load_kg,
                    fraction=load.fraction,
                    reps=reps,
                    possible=possible,
                    possible_low=max(possible - Z80 * spread, 0.0),
                    possible_high=possible + Z80 * spread,
                    fresh=load.fresh,
                    rir=rir,
                    rir_real=real,
                    rest_needed_s=0.0,
                ),
                local,
                general,
                had,
                wanted * (1 - TOLERATED_LOSS),
            )
        )
        self.last[index] = possible
        self.working_s += seconds
        self._pass(seconds)
        self.state.work(index, actual, real)
        self.ended[index] = self.now

    def _sets(self) -> tuple[RehearsedSet, ...]:
        """The sets with the rests around them filled in."""
        had = np.array([one.had_s for one in self.done])
        more = extra_rest(
            np.array([one.local for one in self.done]),
            np.array([one.general for one in self.done]),
            np.array([one.wanted for one in self.done]),
            had,
        )
        needed = np.where(had > 0, had + more, 0.0)
        after = {
            (one.made.entry, one.made.number - 1): one.had_s
            for one in self.done
            if one.made.number > 1
        }
        return tuple(
            replace(
                one.made,
                rest_needed_s=float(need),
                rest_s=after.get((one.made.entry, one.made.number), 0.0),
            )
            for one, need in zip(self.done, needed, strict=True)
        )


def rir_of(entry: Entry, number: int) -> float:
    """Planned repetitions in reserve of a set: straight from the first set to the last."""
    first, last = entry.rir
    if entry.sets == 1:
        return first
    return first + (last - first) * (number - 1) / (entry.sets - 1)


def reps_of(entry: Entry, possible: float, rir: float) -> int:
    """Repetitions to do: what leaves the planned RIR, halves going down, within the band.

    Never more than can be done, unless the bottom of the band asks for it.
    """
    reps = min(ceil(possible - rir - 0.5), floor(possible), entry.reps[1])
    return max(reps, entry.reps[0])
