"""The loads an exercise can take in a gym, one step after another."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from dataclasses import dataclass
from functools import lru_cache

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit
from setwright.exercises.model import Exercise, Kit, Pattern
from setwright.rehearsal.loads import hands
from setwright.rehearsal.strength import external_load, system_load
from setwright.training.from_log import UNASSISTED

# Steps of assistance where the machine or the bands have no figures (common practice).
ASSISTANCE_STEP_KG = 5.0
MOST_ASSISTANCE_KG = 60.0
# Body-weight movements that can be made lighter, and what makes them so.
ASSISTED: frozenset[Pattern] = frozenset(("vertical pull", "dip"))
HELP: frozenset[Kit] = frozenset(("assisted pull-up machine", "band"))
# Step where any load can be had (progression-load-increment-position-2009: 2 to 10 %).
FREE_STEP = 0.025
HAIR_KG = 1e-6


@dataclass(frozen=True)
class Ladder:
    """Loads as lifted, kg: a hand for dumbbells, added to body weight, below 0 for assistance.

    Attributes:
        steps: rising; None when any load can be had.
        measured: False for bands, whose load has no figure.
        share: of body mass that is lifted.
        helped: the same when the load is assistance, as the log counts it.
        hands: 2 when a load is held in each hand.
        of_system: whether a step is judged against the load the muscles move, as for body-weight
            exercises, or against the load in the hands.
    """

    steps: tuple[float, ...] | None
    measured: bool
    share: float
    helped: float
    hands: int
    of_system: bool

    def system(self, load_kg: float, body_mass_kg: float) -> float:
        """Load the muscles move, kg, at least a kilogram."""
        share = self.helped if load_kg < 0 else self.share
        return max(system_load(load_kg, body_mass_kg, share, self.hands), 1.0)

    def external(self, system_kg: float, body_mass_kg: float) -> float:
        """Load as lifted for a system load, any figure."""
        load = external_load(system_kg, body_mass_kg, self.helped, self.hands)
        return load if load < 0 else external_load(system_kg, body_mass_kg, self.share, self.hands)

    def untold(self, load_kg: float) -> bool:
        """Whether a load of an assisted exercise leaves the help untold."""
        return self.steps is not None and self.steps[-1] < 0 <= load_kg

    def at_most(self, load_kg: float) -> float | None:
        """The heaviest load not above a figure; None when all are heavier."""
        if self.steps is None:
            return max(load_kg, 0.0)
        place = bisect_right(self.steps, load_kg + HAIR_KG)
        return self.steps[place - 1] if place else None

    def lightest(self) -> float:
        """The lightest load there is."""
        return self.steps[0] if self.steps else 0.0

    def above(self, load_kg: float) -> float | None:
        """The next heavier load; None at the top."""
        if self.steps is None:
            return load_kg * (1 + FREE_STEP) if load_kg > 0 else None
        place = bisect_right(self.steps, load_kg + HAIR_KG)
        return self.steps[place] if place < len(self.steps) else None

    def below(self, load_kg: float) -> float | None:
        """The next lighter load; None at the bottom."""
        if self.steps is None:
            return load_kg * (1 - FREE_STEP) if load_kg > 0 else None
        place = bisect_left(self.steps, load_kg - HAIR_KG)
        return self.steps[place - 1] if place else None

    def rise(self, from_kg: float, to_kg: float, body_mass_kg: float) -> float:
        """A step as a share of the load it starts from."""
        if self.of_system or from_kg <= 0:
            start = self.system(from_kg, body_mass_kg)
            return self.system(to_kg, body_mass_kg) / start - 1
        return to_kg / from_kg - 1


def ladder(exercise: Exercise, gym: GymKit) -> Ladder:
    """The loads an exercise can take in a gym."""
    return _ladder(exercise.id, gym)


@lru_cache(maxsize=1024)
def _ladder(exercise_id: str, gym: GymKit) -> Ladder:
    exercise = catalogue.exercise(exercise_id)
    steps = gym.loads(exercise)
    if exercise.pattern in ASSISTED and exercise.loading == "bodyweight" and gym.has & HELP:
        # An assisted exercise without a figure for its help is not a load.
        free = () if exercise.id in UNASSISTED else steps or (0.0,)
        steps = (*_assistance(exercise, gym), *free)
    return Ladder(
        steps,
        exercise.loading != "band",
        exercise.bodyweight_share,
        catalogue.exercise(UNASSISTED.get(exercise_id, exercise_id)).bodyweight_share,
        hands(exercise),
        exercise.loading == "bodyweight",
    )


def _assistance(exercise: Exercise, gym: GymKit) -> tuple[float, ...]:
    """Loads below 0, rising: the machine's own figures, or steps of common practice."""
    machine = next((line for line in gym.lines if line.kit == "assisted pull-up machine"), None)
    steps: tuple[float, ...] = ()
    if machine is not None and ("assisted pull-up machine",) in exercise.kit:
        listed = machine.loads_kg
        if machine.from_kg is not None and machine.to_kg is not None and machine.step_kg:
            count = int((machine.to_kg - machine.from_kg) / machine.step_kg + HAIR_KG)
            listed = tuple(machine.from_kg + machine.step_kg * k for k in range(count + 1))
        steps = tuple(sorted(-kg for kg in listed if kg > 0))
    if steps:
        return steps
    count = int(MOST_ASSISTANCE_KG / ASSISTANCE_STEP_KG)
    return tuple(-ASSISTANCE_STEP_KG * k for k in range(count, 0, -1))
