"""Who writes the sets in the closed loop: this project's policy, and two fixed progressions.

Each writes load and repetitions; what is done with them is the lifter's affair. The fixed ones
are given more than the policy: they see every set as it was, the policy sees the log with its
slips.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Protocol

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit, stock_of
from setwright.lab.attempt import Outcome
from setwright.lab.movements import BAND, MOVEMENTS, SETS
from setwright.lab.traits import Traits
from setwright.plan.intake import Intake
from setwright.plan.week import Entry
from setwright.training.block import block_of
from setwright.training.done import DoneSet
from setwright.training.ladder import Ladder, ladder
from setwright.training.lifter import Lifter
from setwright.training.past import Past
from setwright.training.policy import plan_sets

RIR = (2, 1)
FAILED_TWICE = 2
STEP_DOWN = 0.9
RESTS_S = {"legs": 180, "press": 150, "pull": 120, "single": 90}


@dataclass(frozen=True, slots=True)
class Written:
    """One set as it was written.

    Attributes:
        load_kg: as lifted; None when the lifter is to find it by feel.
        reps: repetitions written.
        most: repetitions to stop at.
        rir: felt reserve to stop at, or None when the repetitions alone count.
    """

    load_kg: float | None
    reps: int
    most: int
    rir: float | None


class Coach(Protocol):
    """Writes a session, then hears of it."""

    def write(self, names: Sequence[str], day: int) -> dict[str, list[Written]]:
        """Sets of each exercise of a session."""

    def hear(self, exercise: str, sets: Sequence[tuple[Written, float, Outcome]]) -> None:
        """Sets of an exercise as they really went: written, load as lifted, outcome."""

    def log(self, lines: Sequence[DoneSet]) -> None:
        """Lines of the log, slips and all."""


def gym() -> GymKit:
    """The gym everybody trains in."""
    return stock_of("full gym")


def steps(exercise: str) -> Ladder:
    """Loads an exercise can take there."""
    return ladder(catalogue.exercise(exercise), gym())


def entry(exercise: str) -> Entry:
    """What the plan asks of an exercise."""
    group = MOVEMENTS[exercise].group
    rest = RESTS_S[group]
    return Entry(exercise=exercise, sets=SETS, reps=BAND[group], rir=RIR, rest_s=(rest, rest))


def intake_of(traits: Traits) -> Intake:
    """The lifter's answers."""
    return Intake.model_validate(
        {
            "setwright": "intake/1",
            "name": "Virtual",
            "experience": traits.experience,
            "age_band": "18-39",
            "sex": traits.sex,
            "body_mass_kg": round(min(max(traits.mass_kg, 40.0), 130.0), 1),
            "setting": "with a partner or staff",
            "screening": {"active_last_3_months": True},
            "gym": "full gym",
            "days": [{"day": day, "minutes": 60} for day in ("monday", "wednesday", "friday")],
        }
    )


class Ours:
    """The policy of this project on its own estimate."""

    def __init__(self, traits: Traits, first_day: int) -> None:
        """A new person with nothing logged."""
        self._intake = intake_of(traits)
        self._lifter = Lifter.start(traits.sex, traits.experience)
        self._past = Past()
        self._block = block_of(self._intake, first_day)
        self._gym = gym()

    def write(self, names: Sequence[str], day: int) -> dict[str, list[Written]]:
        """See ``Coach``."""
        entries = [entry(name) for name in names]
        found = plan_sets(
            self._lifter, entries, day, self._block, self._intake, self._gym, self._past
        )
        return {
            one.exercise: [Written(s.load_kg, s.reps, s.most, s.rir) for s in one.sets]
            for one in found
        }

    def hear(self, exercise: str, sets: Sequence[tuple[Written, float, Outcome]]) -> None:
        """The policy reads the log only."""

    def log(self, lines: Sequence[DoneSet]) -> None:
        """See ``Coach``."""
        for line in lines:
            self._lifter.fold(line)
            self._past.add(line)


@dataclass
class RepsThenLoad:
    """One repetition more a visit up to the top of the band, then one step of load.

    A visit with a set that could not be done is repeated; after two in a row the load falls by a
    tenth (common practice).
    """

    loads: dict[str, float] = field(default_factory=dict)
    reps: dict[str, int] = field(default_factory=dict)
    failed: dict[str, int] = field(default_factory=dict)

    def write(self, names: Sequence[str], day: int) -> dict[str, list[Written]]:
        """See ``Coach``."""
        found = {}
        for name in names:
            reps = self.reps.setdefault(name, BAND[MOVEMENTS[name].group][0])
            found[name] = [Written(self.loads.get(name), reps, reps, None)] * SETS
        return found

    def hear(self, exercise: str, sets: Sequence[tuple[Written, float, Outcome]]) -> None:
        """See ``Coach``."""
        low, top = BAND[MOVEMENTS[exercise].group]
        load = sets[0][1]
        self.loads[exercise] = load
        if any(outcome.effort.reps < written.reps for written, _, outcome in sets):
            self.failed[exercise] = self.failed.get(exercise, 0) + 1
            if self.failed[exercise] >= FAILED_TWICE:
                self.failed[exercise] = 0
                self.reps[exercise] = low
                lower = steps(exercise).at_most(load * STEP_DOWN)
                self.loads[exercise] = load if lower is None else lower
            return
        self.failed[exercise] = 0
        if self.reps[exercise] < top:
            self.reps[exercise] += 1
            return
        above = steps(exercise).above(load)
        if above is not None:
            self.loads[exercise] = above
            self.reps[exercise] = low

    def log(self, lines: Sequence[DoneSet]) -> None:
        """It hears of the sets as they were."""


@dataclass
class WeeklyPercentage:
    """The first load, so many percent heavier every week; repetitions at the middle of the band.

    Attributes:
        percent: of the first load, a week.
    """

    percent: float
    first: dict[str, tuple[float, int]] = field(default_factory=dict)
    day: int = 0

    def write(self, names: Sequence[str], day: int) -> dict[str, list[Written]]:
        """See ``Coach``."""
        self.day = day
        found = {}
        for name in names:
            low, top = BAND[MOVEMENTS[name].group]
            reps = (low + top) // 2
            load = None
            if name in self.first:
                start, since = self.first[name]
                target = start * (1.0 + self.percent / 100.0 * ((day - since) // 7))
                load = steps(name).at_most(target)
            found[name] = [Written(load, reps, reps, None)] * SETS
        return found

    def hear(self, exercise: str, sets: Sequence[tuple[Written, float, Outcome]]) -> None:
        """See ``Coach``."""
        self.first.setdefault(exercise, (sets[0][1], self.day))

    def log(self, lines: Sequence[DoneSet]) -> None:
        """It reads nothing."""
