"""The virtual lifter behind the demo's log: strength from the intake's known loads."""

from __future__ import annotations

from math import exp

import numpy as np

from setwright.exercises import catalogue
from setwright.lab.curve import fraction_for
from setwright.lab.movements import group_of
from setwright.lab.traits import Own, Sex, Traits
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan
from setwright.training.ladder import Ladder

FLOOR, PACE, STEEP_PACE = 0.40, 18.0, 24.0
REALLY_MORE = 1.5
"""Repetitions that were left in a remembered set beyond those said."""
CARRIED = {"male": 1.0, "female": 0.6}
CARRIED_NOT_SAID = 0.8
"""Outer load of a set beside the own mass that is lifted with it, in squats and their like
(from memory)."""
HELD_AT_MOST = 0.6
"""Of body mass: the load of a press or pull that is not remembered (from memory)."""


def person_of(
    intake: Intake, plan: Plan, others: tuple[str, ...], ladders: dict[str, Ladder], seed: int
) -> Traits:
    """A lifter who can do what the intake remembers.

    The 1RM is the load the muscles move, so that body-weight exercises have one too.

    Args:
        intake: the person.
        plan: the week; exercises without a known load start inside its band.
        others: exercises beside those of the plan.
        ladders: loads of every exercise.
        seed: of what is drawn.
    """
    rng = np.random.default_rng(np.random.SeedSequence([seed, 3]))
    mass = intake.body_mass_kg or 70.0
    entries = {entry.exercise: entry for session in plan.sessions for entry in session.exercises}
    known = {one.exercise: one for one in intake.known_loads}
    own: dict[str, Own] = {}
    for exercise in sorted({*entries, *others}):
        pace = (STEEP_PACE if group_of(exercise) == "legs" else PACE) * exp(
            float(rng.normal(0, 0.15))
        )
        ladder = ladders[exercise]
        seen = known.get(exercise)
        if seen is not None:
            system, reps = ladder.system(seen.load_kg, mass), seen.reps + seen.rir + REALLY_MORE
        else:
            system, reps = _unknown(entries.get(exercise), ladder, mass, intake.sex)
            if ladder.share == 0 and group_of(exercise) in ("press", "pull"):
                system = min(system, HELD_AT_MOST * mass)
        fraction = fraction_for(reps * exp(float(rng.normal(0, 0.05))), FLOOR, pace)
        own[exercise] = Own(system / fraction, FLOOR, pace)
    sex: Sex = "male" if intake.sex == "male" else "female"
    return Traits(
        sex=sex,
        experience=intake.experience,
        mass_kg=mass,
        own=own,
        room=0.30,
        rate=0.045,
        decay_weeks=16.0,
        tires=0.8 if sex == "female" else 1.0,
        refills=0.75 if sex == "female" else 1.0,
        lasting=0.3 if sex == "female" else 1.0,
        recovery_days=1.3,
        day_sd=0.012,
        call_offset={"legs": 1.6, "press": 0.6, "pull": 1.0, "single": 0.8},
        call_growth={"legs": 0.3, "press": 0.1, "pull": 0.1, "single": 0.1},
        call_sd=0.35,
        says=0.9,
    )


def _unknown(
    entry: Entry | None, ladder: Ladder, mass_kg: float, sex: str | None
) -> tuple[float, float]:
    """System load and repetitions to failure of an exercise without a remembered set."""
    reps = 12.0 if entry is None else sum(entry.reps) / 2 + sum(entry.rir) / 2 + REALLY_MORE
    if entry is not None and entry.load_kg is not None:
        return ladder.system(entry.load_kg, mass_kg), reps
    if ladder.share > 0 and not ladder.of_system:
        carried = CARRIED.get(sex or "", CARRIED_NOT_SAID)
        return ladder.share * mass_kg * (1 + carried), reps
    if ladder.share > 0 or ladder.steps is None:
        return ladder.system(0.0, mass_kg), reps
    middle = ladder.steps[min(len(ladder.steps) // 5, len(ladder.steps) - 1)]
    return ladder.system(middle, mass_kg), reps


def kind_of(exercise: str) -> str:
    """Pattern of an exercise, in the catalogue's words."""
    return catalogue.exercise(exercise).pattern
