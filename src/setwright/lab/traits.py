"""A virtual lifter's own constants, drawn once from the seed."""

from __future__ import annotations

from dataclasses import dataclass
from math import exp
from typing import Literal

import numpy as np

from setwright.lab.movements import MOVEMENTS, Group

Sex = Literal["female", "male"]
Experience = Literal["beginner", "intermediate", "advanced"]
EXPERIENCE: tuple[Experience, ...] = ("beginner", "intermediate", "advanced")

# 1RM over that of an intermediate (common practice).
STRENGTH = {"beginner": 0.7, "intermediate": 1.0, "advanced": 1.3}
# SD between lifters of the offset: one part the person, one the group.
CALL_SPREAD: dict[Group, float] = {"legs": 1.15, "press": 0.3, "pull": 0.4, "single": 0.4}
# Log 1RM still to be gained, and gain a week of an ordinary week of an untouched lifter.
ROOM = {"beginner": 0.45, "intermediate": 0.26, "advanced": 0.16}
RATE = {"beginner": 0.040, "intermediate": 0.045, "advanced": 0.045}
# Mean of (real less called) reserve, and of its growth with the reserve called, by group: the
# squat and bench studies (rir-accuracy-squat-70-percent-2021, rir-accuracy-bench-75-percent-2023).
CALL_OFFSET: dict[Group, float] = {"legs": 0.8, "press": -0.1, "pull": 0.0, "single": 0.0}
CALL_GROWTH: dict[Group, float] = {"legs": 0.36, "press": 0.02, "pull": 0.05, "single": 0.05}


@dataclass(frozen=True)
class Own:
    """On one movement: 1RM at the start (kg, as lifted) and the curve's two constants."""

    one_rm: float
    floor: float
    pace: float


@dataclass(frozen=True)
class Traits:
    """A lifter's constants.

    Attributes:
        sex: women tire less.
        experience: training status.
        mass_kg: body mass.
        own: by exercise id.
        room: log 1RM that training can still add.
        rate: share of the room gained in a week of reference training.
        decay_weeks: time constant of losing what was gained lately.
        tires: share of the fatigue of an ordinary lifter, within a session.
        refills: time constants of recovery within a session, over those of men.
        lasting: fatigue that lasts for minutes, over that of men.
        recovery_days: time constant of fatigue between sessions.
        day_sd: scale of a day's log strength (Student t with 4 degrees).
        call_offset: real less called reserve, by group.
        call_growth: its growth with the reserve called.
        call_sd: SD of a single call.
        says: chance that a reserve is written down.
    """

    sex: Sex
    experience: Experience
    mass_kg: float
    own: dict[str, Own]
    room: float
    rate: float
    decay_weeks: float
    tires: float
    refills: float
    lasting: float
    recovery_days: float
    day_sd: float
    call_offset: dict[Group, float]
    call_growth: dict[Group, float]
    call_sd: float
    says: float


def draw_traits(rng: np.random.Generator, experience: Experience | None = None) -> Traits:
    """Draw a lifter; ``experience`` fixes the training status."""
    sex: Sex = "female" if rng.random() < 0.4 else "male"
    drawn = EXPERIENCE[int(rng.choice(3, p=(0.35, 0.45, 0.20)))]
    status = experience or drawn
    mass = float(rng.normal(66 if sex == "female" else 80, 9))
    strength = STRENGTH[status] * (0.65 if sex == "female" else 1.0) * exp(rng.normal(0, 0.14))
    floor_shift, pace_shift = float(rng.normal(0, 0.025)), float(rng.normal(0, 0.7))
    own = {}
    for key, one in MOVEMENTS.items():
        own[key] = Own(
            one.per_mass * mass * strength * exp(float(rng.normal(0, 0.12))),
            min(max(one.floor + floor_shift + float(rng.normal(0, 0.025)), 0.2), 0.55),
            one.pace * exp(one.spread * (0.7 * pace_shift + 0.7 * float(rng.normal()))),
        )
    offset, growth = float(rng.normal(0, 0.6)), exp(float(rng.normal(0, 0.4)))
    return Traits(
        sex=sex,
        experience=status,
        mass_kg=mass,
        own=own,
        room=ROOM[status] * exp(float(rng.normal(0, 0.35))),
        rate=RATE[status] * exp(float(rng.normal(0, 0.35))),
        decay_weeks=float(rng.uniform(10, 22)),
        tires=(0.98 if sex == "female" else 1.0) * exp(float(rng.normal(0, 0.22))),
        refills=(0.75 if sex == "female" else 1.0) * exp(float(rng.normal(0, 0.15))),
        lasting=0.22 if sex == "female" else 1.0,
        recovery_days=float(rng.uniform(0.9, 1.9)),
        day_sd=0.012 * exp(float(rng.normal(0, 0.3))),
        call_offset={
            g: mean + offset + CALL_SPREAD[g] * float(rng.normal())
            for g, mean in CALL_OFFSET.items()
        },
        call_growth={g: mean * growth for g, mean in CALL_GROWTH.items()},
        call_sd=0.35 * exp(float(rng.normal(0, 0.25))),
        says=float(rng.uniform(0.7, 1.0)),
    )
