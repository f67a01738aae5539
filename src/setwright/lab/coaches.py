"""Who writes the sets in the closed loop, and this project's own policy.

A coach writes load and repetitions; what is done with them is the lifter's affair.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
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
