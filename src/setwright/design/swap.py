"""Substitutes for an exercise, ranked by what the week loses or gains."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass
from typing import Literal

from setwright.audit.criteria.spine import MOST_SESSION
from setwright.design.options import SKILL, prescription
from setwright.documents.errors import DocumentError, Fault
from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake, Screening, TrainingDay
from setwright.plan.limits import avoidance
from setwright.plan.week import Entry, Plan
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import central_growth, doses_of, person_of
from setwright.response.targets import priority_weights

SKILL_ORDER = ("low", "moderate", "high")


@dataclass(frozen=True)
class Swap:
    """A substitute and what it does to the week.

    Attributes:
        exercise: id of the substitute.
        growth_change: change of the week's weighted growth, relative; positive is a gain.
        spine_change: change of sets weighted by spinal load.
        minutes_change: change of the week's minutes.
        within_limits: whether the spinal load of its session stays within the audit's limit.
    """

    exercise: str
    growth_change: float
    spine_change: float
    minutes_change: float
    within_limits: bool


# Weighted growth, spinal sets and minutes of a week.
Figures = tuple[float, float, float]


def limits_of(intake: Intake | None) -> Intake:
    """The person's limits; without an intake a full gym and none."""
    return intake or Intake(
        setwright="intake/1",
        name="anyone",
        experience="intermediate",
        age_band="18-39",
        screening=Screening(active_last_3_months=True),
        days=(TrainingDay(day="monday", minutes=60),),
        gym="full gym",
    )


def candidates(
    old: Exercise, without: str | None, avoid: str | None, intake: Intake
) -> tuple[Exercise, ...]:
    """Every exercise that the kit, the person's limits and the reason of the swap allow."""
    gym = stock_of(intake.gym, intake.kit)
    found = []
    for exercise in catalogue.exercises():
        if exercise.id == old.id or not gym.can_do(exercise):
            continue
        if (
            avoidance(intake, exercise) is not None
            or exercise.skill not in SKILL[intake.experience]
        ):
            continue
        if without and all(without in kit for kit in exercise.kit):
            continue
        if avoid == "pain" and exercise.pattern == old.pattern:
            continue
        if avoid == "skill" and SKILL_ORDER.index(exercise.skill) >= max(
            SKILL_ORDER.index(old.skill), 1
        ):
            continue
        found.append(exercise)
    return tuple(found)


def figures(plan: Plan, intake: Intake | None) -> Figures:
    """Weighted growth, spinal sets and minutes of a week."""
    rehearsal = rehearse(plan, intake)
    grown = central_growth(doses_of(plan, rehearsal), person_of(intake), len(plan.sessions))
    spine = sum(
        entry.sets * catalogue.profile(entry.exercise).spinal_load
        for session in plan.sessions
        for entry in session.exercises
    )
    minutes = sum(session.total_s for session in rehearsal.sessions) / 60
    return float(priority_weights(intake) @ grown), spine, minutes


def put(
    plan: Plan, exercise: str, candidate: Exercise, person: Intake, only: int | None = None
) -> Plan | None:
    """The plan with a candidate wherever an exercise stood, its sets and superset kept.

    Args:
        plan: the week.
        exercise: id of the exercise that goes.
        candidate: what takes its place, with the prescription that suits the person.
        person: limits of the person.
        only: index of the one session it is replaced in; every one when None.

    Returns:
        The new plan, or None when a session would hold the candidate twice.
    """
    sessions = []
    for number, session in enumerate(plan.sessions):
        if only is not None and number != only:
            sessions.append(session)
            continue
        held = {entry.exercise for entry in session.exercises}
        if exercise in held and candidate.id in held:
            return None
        entries = tuple(
            stand_in(entry, candidate, person) if entry.exercise == exercise else entry
            for entry in session.exercises
        )
        sessions.append(session.model_copy(update={"exercises": entries}))
    return plan.model_copy(update={"sessions": tuple(sessions)})


def stand_in(entry: Entry, candidate: Exercise, person: Intake) -> Entry:
    """A candidate in an entry's place, with its own prescription; sets and superset stay."""
    fresh = prescription(candidate, person)
    rest_s = entry.rest_s if entry.superset else fresh.rest_s
    kept = {"sets": entry.sets, "superset": entry.superset, "rest_s": rest_s}
    return fresh.model_copy(update=kept)


def swaps(
    plan: Plan,
    exercise: str,
    without: str | None = None,
    avoid: Literal["pain", "preference", "skill"] | str | None = None,
    intake: Intake | None = None,
    among: Collection[str] | None = None,
    only: int | None = None,
    before: Figures | None = None,
) -> tuple[Swap, ...]:
    """Put every substitute in the exercise's place and compute the week again.

    Args:
        plan: the week.
        exercise: id of the exercise to replace, wherever it stands.
        without: kit that is not to be had.
        avoid: why it goes: ``pain`` leaves out its whole movement pattern, ``skill`` asks for
            something simpler, ``preference`` for anything else.
        intake: the person's limits.
        among: ids of the only substitutes to try; all when None.
        only: index of the one session it is replaced in; every one when None.
        before: ``figures`` of the plan as it is, for a caller who asks about many exercises.

    Returns:
        Substitutes, best for the week's weighted growth first.

    Raises:
        DocumentError: when the plan does not hold the exercise.
    """
    held = sorted({entry.exercise for session in plan.sessions for entry in session.exercises})
    if exercise not in held:
        raise DocumentError("plan", (Fault("exercise", exercise, f"one of {', '.join(held)}"),))
    person = limits_of(intake)
    old = catalogue.exercise(exercise)
    growth, spine, minutes = before or figures(plan, intake)
    found = []
    for candidate in candidates(old, without, avoid, person):
        if among is not None and candidate.id not in among:
            continue
        new = put(plan, exercise, candidate, person, only)
        if new is None:
            continue
        grown, load, length = figures(new, intake)
        within = all(
            sum(
                entry.sets * catalogue.profile(entry.exercise).spinal_load
                for entry in session.exercises
            )
            <= MOST_SESSION
            for session in new.sessions
        )
        found.append(
            Swap(
                candidate.id,
                (grown - growth) / max(growth, 1e-9),
                load - spine,
                length - minutes,
                within,
            )
        )
    return tuple(sorted(found, key=lambda row: (-row.growth_change, row.exercise)))
