"""Sets remembered at the intake, which start the estimate before there is a log."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises import catalogue
from setwright.exercises.names import match
from setwright.plan.intake import Intake
from setwright.rehearsal.loads import hands
from setwright.rehearsal.strength import system_load


@dataclass(frozen=True)
class Seed:
    """A set remembered.

    Attributes:
        exercise: id in the catalogue.
        system_kg: load the muscles moved.
        reps: repetitions done.
        rir: repetitions in reserve.
    """

    exercise: str
    system_kg: float
    reps: float
    rir: float = 0.0


def seeds_of(intake: Intake) -> tuple[Seed, ...]:
    """The known loads of an intake; one whose system load cannot be told is left out."""
    found = []
    for known in intake.known_loads:
        ident = known.exercise if known.exercise in catalogue.ids() else match(known.exercise).sure
        if ident is None:
            continue
        exercise = catalogue.exercise(ident)
        share = exercise.bodyweight_share
        if share > 0 and intake.body_mass_kg is None:
            continue
        system = system_load(known.load_kg, intake.body_mass_kg or 0.0, share, hands(exercise))
        if system > 0:
            found.append(Seed(ident, system, known.reps, known.rir))
    return tuple(found)
