"""A person, a gym and a log made of plain figures."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import pytest

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit, stock_of
from setwright.plan.intake import Intake, Screening, TrainingDay
from setwright.plan.week import Entry
from setwright.training.block import Block
from setwright.training.done import DoneSet
from setwright.training.ladder import Ladder, ladder
from setwright.training.lifter import Lifter
from setwright.training.past import Past
from setwright.training.policy import plan_sets
from setwright.training.sets import Prescribed
from setwright.training.trouble import NONE, Trouble

MONDAY = 739500 - (739500 - 1) % 7
MASS = 80.0


def person(**changes: object) -> Intake:
    fields: dict[str, object] = {
        "setwright": "intake/1",
        "name": "Mara",
        "experience": "intermediate",
        "age_band": "18-39",
        "body_mass_kg": MASS,
        "screening": Screening(active_last_3_months=True),
        "setting": "with a partner or staff",
        "days": tuple(
            TrainingDay(day=day, minutes=60) for day in ("monday", "wednesday", "friday")
        ),
        "gym": "full gym",
    }
    return Intake.model_validate({**fields, **changes})


def entry(exercise: str = "lat-pulldown", **changes: object) -> Entry:
    fields: dict[str, object] = {
        "exercise": exercise,
        "sets": 3,
        "reps": (8, 12),
        "rir": (2, 2),
        "rest_s": (120, 180),
    }
    return Entry.model_validate({**fields, **changes})


@dataclass
class Diary:
    """A log made by hand, and what follows from it."""

    intake: Intake = field(default_factory=person)
    past: Past = field(default_factory=Past)
    block: Block = field(default_factory=lambda: Block(MONDAY - 700, ()))

    def __post_init__(self) -> None:
        self.lifter = Lifter.start(self.intake.sex, self.intake.experience)
        self.gym: GymKit = stock_of(self.intake.gym, self.intake.kit)

    def outing(
        self,
        day: int,
        load_kg: float,
        reps: Sequence[float],
        rir: float | None = 2.0,
        exercise: str = "lat-pulldown",
        trouble: Trouble = NONE,
        to_failure: bool = False,
    ) -> tuple[DoneSet, ...]:
        """One exercise on one day, ``day`` counted from a Monday."""
        steps = ladder(catalogue.exercise(exercise), self.gym)
        done = []
        for number, count in enumerate(reps, start=1):
            one = DoneSet(
                f"{day}-{exercise}-{number}", MONDAY + day, 600.0 + 4 * number, exercise, number,
                load_kg, steps.system(load_kg, MASS), count, rir, to_failure,
                150.0 if number > 1 else None,
            )  # fmt: skip
            self.lifter.fold(one)
            self.past.add(one, trouble)
            done.append(one)
        return tuple(done)

    def nothing(self, day: int, load_kg: float, exercise: str = "lat-pulldown") -> None:
        """A day on which no repetition could be done."""
        self.past.tried(exercise, MONDAY + day, load_kg)

    def entry(self, exercise: str = "lat-pulldown", **changes: object) -> Entry:
        """An entry of a plan."""
        return entry(exercise, **changes)

    def ladder(self, exercise: str) -> Ladder:
        """Loads of an exercise."""
        return ladder(catalogue.exercise(exercise), self.gym)

    def plan(self, day: int, *entries: Entry) -> tuple[Prescribed, ...]:
        """What is asked on a day."""
        chosen = entries or (entry(),)
        return plan_sets(
            self.lifter, chosen, MONDAY + day, self.block, self.intake, self.gym, self.past
        )


@pytest.fixture(scope="session")
def new_diary() -> Callable[..., Diary]:
    """A diary of a person who differs from the usual one in the fields given."""

    def made(**changes: object) -> Diary:
        return Diary(person(**changes))

    return made


@pytest.fixture
def diary(new_diary: Callable[..., Diary]) -> Diary:
    return new_diary()
