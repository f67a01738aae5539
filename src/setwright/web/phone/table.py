"""The next set worked out beforehand, for a phone without a network.

For every set that may come next, and what may come of it (load, repetitions, reserve as felt), the
engine says what it would ask for then. Sets before it are taken as they were done, or else as they
were asked for. The phone looks its set up; it computes nothing itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from setwright.exercises import catalogue
from setwright.plan.week import Entry
from setwright.training.client import Client
from setwright.training.done import DoneSet
from setwright.training.due import step_after, trouble_now
from setwright.training.ladder import Ladder, ladder
from setwright.training.lifter import Lifter
from setwright.training.next_session import PlannedExercise
from setwright.training.sets import PlannedSet
from setwright.training.trouble import ACCEPTABLE, NONE, Trouble, together

Kind = Literal["plain", "not heavier", "lighter"]
# What may be reported with the set, and what the engine makes of it.
REPORTS: dict[Kind, Trouble] = {
    "plain": NONE,
    "not heavier": Trouble(technique=True),
    "lighter": Trouble(pain=ACCEPTABLE),
}
# Repetitions looked at around those asked for, and reserves; further off the nearest is taken.
FEWER, MORE = 5, 4
RESERVES = (0.0, 1.0, 2.0, 3.0, 4.0, None)
# For loads that were not asked for, and with pain, fewer of them.
FEW_RESERVES = (0.0, 2.0, 4.0)
COARSE = 2
WORDS: dict[Kind, str] = {
    "plain": "",
    "not heavier": "Pain or technique was reported: not heavier.",
    "lighter": "Pain: a step lighter; stop if it grows.",
}
# When nothing was done yet today, minutes since midnight; and seconds a set lasts.
NOON, SET_S = 720.0, 35.0


@dataclass(frozen=True, slots=True)
class Row:
    """One outcome of a set and the set after it.

    Attributes:
        kind: what was reported with it.
        number: of the set that is done.
        kg: its load as lifted.
        reps: its repetitions.
        rir: reserve as felt; None when not said.
        next_kg: load to take next, or None when nothing more is to be lifted.
        next_reps: to aim at; 0 when nothing more is to be lifted.
        next_rir: to stop at, as felt.
        rest_s: before it.
        because: why.
    """

    kind: Kind
    number: int
    kg: float
    reps: int
    rir: float | None
    next_kg: float | None
    next_reps: int
    next_rir: float
    rest_s: int
    because: tuple[str, ...]


def table(
    client: Client, entry: Entry, planned: PlannedExercise, only_next: bool = False
) -> tuple[Row, ...]:
    """What to do after every set that is left, whatever comes of it.

    Args:
        client: with the sets of today.
        entry: of the plan.
        planned: its sets; the load of the first must be known, or a set be done.
        only_next: after the very next set only.

    Returns:
        Nothing when no load is known yet, or nothing is left to decide.
    """
    trouble = trouble_now(client, entry.exercise)
    sets = planned.prescribed.sets
    done = [one for one in client.today() if one.exercise == entry.exercise]
    if trouble.stop or not sets:
        return ()
    ahead = _Ahead(client, entry, planned, trouble)
    lifter, today = client.lifter, client.today()
    rows: list[Row] = []
    for number in range(len(done) + 1, len(sets)):
        asked = sets[number - 1]
        base = asked.load_kg if not done else done[-1].load_kg
        if base is None:
            break
        rows += ahead.rows(lifter, today, asked, base)
        if only_next:
            break
        as_asked = ahead.done(today, asked, base, asked.reps, asked.rir)
        lifter = lifter.copy()
        lifter.fold(as_asked)
        today = (*today, as_asked)
    return tuple(rows)


@dataclass(frozen=True)
class _Ahead:
    """One exercise, looked at ahead."""

    client: Client
    entry: Entry
    planned: PlannedExercise
    trouble: Trouble

    @property
    def steps(self) -> Ladder:
        """Loads of the gym."""
        return ladder(catalogue.exercise(self.entry.exercise), self.client.gym)

    def rows(
        self, lifter: Lifter, today: Sequence[DoneSet], asked: PlannedSet, base_kg: float
    ) -> Iterator[Row]:
        """What comes of one set."""
        reps = range(max(asked.reps - FEWER, 1), max(asked.reps, asked.most) + MORE)
        around = (self.steps.below(base_kg), self.steps.above(base_kg))
        for made in reps:
            for rir in RESERVES:
                yield from self._row(lifter, today, asked, base_kg, made, rir, _few(made, rir))
        for kg in (one for one in around if one is not None and self.steps.measured):
            for made in reps[::COARSE]:
                for rir in FEW_RESERVES:
                    yield from self._row(lifter, today, asked, kg, made, rir, lighter=False)

    def _row(
        self,
        lifter: Lifter,
        today: Sequence[DoneSet],
        asked: PlannedSet,
        kg: float,
        reps: int,
        rir: float | None,
        lighter: bool,
    ) -> Iterator[Row]:
        known = lifter.copy()
        done = self.done(today, asked, kg, reps, rir)
        known.fold(done)
        sets = (*today, done)
        plain = self._after(known, sets, "plain", done)
        yield plain
        if plain.next_kg is not None and plain.next_kg > kg:
            yield self._after(known, sets, "not heavier", done)
        if lighter:
            yield self._after(known, sets, "lighter", done)

    def _after(self, lifter: Lifter, sets: Sequence[DoneSet], kind: Kind, done: DoneSet) -> Row:
        trouble = together(self.trouble, REPORTS[kind])
        step = step_after(self.client, lifter, self.entry, self.planned.prescribed, sets, trouble)
        held = done.load_kg if step.load_kg is None and not step.over else step.load_kg
        because = step.because if kind == "plain" else (WORDS[kind],)
        return Row(
            kind, done.number, done.load_kg, int(done.reps), done.rir,
            held, step.reps, step.rir, step.rest_s, because,
        )  # fmt: skip

    def done(
        self,
        today: Sequence[DoneSet],
        asked: PlannedSet,
        kg: float,
        reps: int,
        rir: float | None,
    ) -> DoneSet:
        """A set as if it were done, after the plan's usual rest."""
        mass = self.client.body_mass_kg or 0.0
        rest_s = sum(self.entry.rest_s) / 2
        return DoneSet(
            id="ahead",
            day=self.client.day,
            minute=(today[-1].minute if today else NOON) + (rest_s + SET_S) / 60,
            exercise=self.entry.exercise,
            number=asked.number,
            load_kg=kg,
            system_kg=self.steps.system(kg, mass),
            reps=float(reps),
            rir=rir,
            to_failure=False,
            rest_s=rest_s if asked.number > 1 else None,
        )


def _few(reps: int, rir: float | None) -> bool:
    return rir in FEW_RESERVES and reps % COARSE == 0
