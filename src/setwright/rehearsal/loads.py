"""The load of each exercise: from known sets, from the plan, or as a fraction only."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises.kit import Direction, GymKit, nearest_load
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.limits import rir_floor
from setwright.plan.week import Entry
from setwright.rehearsal.clock import rep_seconds
from setwright.rehearsal.coefficients import COEFFICIENTS
from setwright.rehearsal.strength import (
    KnownSet,
    external_load,
    fraction_at,
    one_rm_from,
    reps_at,
    reps_sd,
    rir_sd,
    system_load,
)

SLOWEST_S = 12.0


# A band at least this wide, in repetitions, takes up a load that is a step too heavy.
RANGE_FROM = 2


@dataclass(frozen=True)
class Working:
    """The working load of one exercise.

    Attributes:
        load_kg: as lifted, or None when no load is known.
        fraction: of 1RM.
        fresh: repetitions to failure when fresh.
        fresh_sd: SD of ``fresh``: between people when the 1RM is known, of the RIR call when the
            load is found by feel.
    """

    load_kg: float | None
    fraction: float
    fresh: float
    fresh_sd: float


def tempo_factor(exercise: Exercise, entry: Entry) -> float:
    """Repetitions at the written tempo over those at the exercise's own pace.

    Finding reps-by-speed-and-load-knee-extension-2007: slower repetitions are fewer.
    """
    if entry.tempo is None:
        return 1.0
    pace = min(max(rep_seconds(exercise, entry.tempo), 1.0), SLOWEST_S) / exercise.rep_s
    return float(pace**COEFFICIENTS.strength.tempo_exponent)


def known_one_rm(exercise: Exercise, intake: Intake | None) -> float | None:
    """1RM as system load, kg, from every known set of the exercise; None without one."""
    if intake is None:
        return None
    names = {exercise.id, exercise.name.lower(), *(word.lower() for word in exercise.synonyms)}
    sets = []
    for known in intake.known_loads:
        if known.exercise in names or known.exercise.lower() in names:
            system = _system(exercise, known.load_kg, intake)
            if system:
                sets.append(KnownSet(system, known.reps, known.rir))
    return one_rm_from(sets, exercise.rep_curve).median if sets else None


def working_load(
    exercise: Exercise, entry: Entry, intake: Intake | None, gym: GymKit | None
) -> Working:
    """The load the first set needs for the top of its band and its RIR, as the kit can make it.

    A load written in the plan stays as it is. Without a known 1RM the plan's own first set is
    taken at its word: its repetitions and RIR say which fraction it is.
    """
    slow = tempo_factor(exercise, entry)
    wanted = (entry.reps[1] + entry.rir[0]) / slow
    one_rm = known_one_rm(exercise, intake)
    curve = exercise.rep_curve
    if one_rm is None or intake is None:
        fraction = float(fraction_at(wanted, curve))
        sd = float(rir_sd(wanted, max(entry.rir[0], 1.0)))
        return Working(entry.load_kg, fraction, wanted * slow, sd * slow)
    load = entry.load_kg
    if load is None:
        mass = intake.body_mass_kg or 0.0
        target = external_load(
            one_rm * float(fraction_at(wanted, curve)),
            mass,
            exercise.bodyweight_share,
            hands(exercise),
        )
        load = _reachable(exercise, max(target, 0.0), gym, _direction(exercise, entry, intake))
    fraction = (_system(exercise, load, intake) or 0.0) / one_rm
    return Working(
        load,
        fraction,
        float(reps_at(fraction, curve)) * slow,
        float(reps_sd(fraction, curve)) * slow,
    )


def hands(exercise: Exercise) -> int:
    """2 when the load is held in each hand."""
    return 2 if exercise.loading == "dumbbell pair" else 1


def _system(exercise: Exercise, load_kg: float, intake: Intake) -> float | None:
    """System load, kg; None when body mass is lifted and not known, or nothing is lifted."""
    share = exercise.bodyweight_share
    if share > 0 and intake.body_mass_kg is None:
        return None
    return system_load(load_kg, intake.body_mass_kg or 0.0, share, hands(exercise)) or None


def _direction(exercise: Exercise, entry: Entry, intake: Intake) -> Direction:
    """Down as a rule; nearest where a band of repetitions takes up the step and no cap is crossed.

    Source: round-prescribe.
    """
    ranged = entry.reps[1] - entry.reps[0] >= RANGE_FROM
    return "nearest" if ranged and rir_floor(intake, exercise).rir == 0 else "down"


def _reachable(
    exercise: Exercise, target_kg: float, gym: GymKit | None, direction: Direction
) -> float:
    if gym is None or not gym.can_do(exercise):
        return target_kg
    choice = nearest_load(exercise, target_kg, gym, direction)
    if choice.load_kg is not None:
        return choice.load_kg
    lightest = gym.loads(exercise)
    return lightest[0] if lightest else target_kg
