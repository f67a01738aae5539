"""Published protocols, done by virtual lifters: one lifter at a time, one number or a few back."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from setwright.lab.attempt import SET_SD
from setwright.lab.body import Body, Effort
from setwright.lab.calls import caller
from setwright.lab.curve import capacity, fraction_for
from setwright.lab.traits import Traits

LOST_IN_A_DAY_SETS = 8


def rested(traits: Traits, rng: np.random.Generator, fraction_sd: float = 0.02) -> Body:
    """A fresh lifter in the laboratory; the day and an error of the measured 1RM as noise."""
    body = Body(traits)
    body.wake(float(rng.normal(0, fraction_sd)))
    return body


def to_failure(body: Body, exercise: str, fraction: float, rng: np.random.Generator) -> Effort:
    """One set to failure at a fraction of the measured 1RM."""
    load = fraction * body.fresh_one_rm(exercise)
    real = body.fraction(exercise, load)
    can = body.can_do(exercise, real, SET_SD * float(rng.normal()))
    reps = int(can + 0.5)
    effort = Effort(reps, reps, can, real)
    body.work(exercise, effort)
    return effort


def failure_sets(
    traits: Traits,
    rng: np.random.Generator,
    exercise: str,
    fraction: float,
    rest_s: float,
    sets: int,
) -> list[int]:
    """Repetitions of sets to failure with a fixed load and rest."""
    body = rested(traits, rng)
    done = []
    for _ in range(sets):
        done.append(to_failure(body, exercise, fraction, rng).reps)
        body.rest(rest_s)
    return done


def ten_rm_total(traits: Traits, rng: np.random.Generator, exercise: str, rest_s: float) -> int:
    """Repetitions of three sets with the lifter's ten-repetition load, stopped at ten."""
    own = traits.own[exercise]
    body = Body(traits)
    fraction = fraction_for(10.0, own.floor, own.pace)
    total = 0
    for _ in range(3):
        can = body.can_do(exercise, fraction, SET_SD * float(rng.normal()))
        reps = min(int(can + 0.5), 10)
        total += reps
        body.work(exercise, Effort(reps, int(can + 0.5), can, fraction))
        body.rest(rest_s)
    return total


@dataclass(frozen=True)
class Called:
    """Calls within one set to failure.

    Attributes:
        length: repetitions of the set.
        errors: real less called reserve at the first repetition felt to leave so many, by call.
    """

    length: int
    errors: dict[int, float]


def called_in_set(
    traits: Traits,
    rng: np.random.Generator,
    exercise: str,
    fraction: float,
    calls: tuple[int, ...],
) -> Called:
    """Say when so many repetitions are left, then go on to failure; one feeling a call."""
    body = rested(traits, rng)
    effort = to_failure(body, exercise, fraction, rng)
    errors = {}
    for call in calls:
        feels = caller(traits, exercise, effort.capacity, float(rng.normal(0, 0.35)), rng.normal())
        reps = next(
            (n for n in range(1, effort.reps + 1) if feels.felt(effort.capacity - n) < call + 0.5),
            effort.reps,
        )
        errors[call] = float(effort.reps - reps - call)
    return Called(effort.reps, errors)


def lost_after(traits: Traits, rng: np.random.Generator, exercise: str, days: int) -> int:
    """Change of repetitions with the ten-repetition load, days after eight sets to failure."""
    own = traits.own[exercise]
    fraction = fraction_for(10.0, own.floor, own.pace)
    body = Body(traits)
    before = to_failure(body, exercise, fraction, rng).reps
    for _ in range(LOST_IN_A_DAY_SETS - 1):
        body.rest(120.0)
        to_failure(body, exercise, fraction, rng)
    for _ in range(days):
        body.sleep()
    body.wake(float(rng.normal(0, 0.012)))
    load = fraction * body.fresh_one_rm(exercise)
    can = body.can_do(exercise, body.fraction(exercise, load), SET_SD * float(rng.normal()))
    return int(can + 0.5) - before


def trained(
    traits: Traits,
    rng: np.random.Generator,
    exercise: str,
    weeks: list[bool],
    fraction: float = 0.75,
    sets: int = 3,
    left: float = 0.5,
    a_week: int = 3,
) -> list[float]:
    """Fresh 1RM over that at the start, at the end of each week of a supervised programme.

    Args:
        traits: of the lifter.
        rng: not used: a supervised programme goes as written.
        exercise: id.
        weeks: whether each week is trained.
        fraction: load over 1RM.
        sets: a session.
        left: repetitions really left at the end of each set.
        a_week: sessions.
    """
    body = Body(traits)
    start = body.fresh_one_rm(exercise)
    own = traits.own[exercise]
    course = []
    for on in weeks:
        for day in range(7):
            if on and day in (0, 2, 4)[:a_week]:
                full = max(capacity(fraction, own.floor, own.pace), 1.0)
                for _ in range(sets):
                    reps = max(int(full - left), 1)
                    body.work(exercise, Effort(reps, int(full), full, fraction))
                    body.rest(180.0)
            body.sleep()
        course.append(body.fresh_one_rm(exercise) / start)
    return course
