"""The weeks anyone would write down: three sets of ten everywhere, cut to the same minutes."""

from __future__ import annotations

from setwright.design.problem import ordered_days
from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit, stock_of
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.limits import avoidance
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.rehearse import rehearse

UPPER = ("horizontal press", "horizontal pull", "vertical press", "vertical pull", "elbow flexion",
         "elbow extension", "lateral raise")  # fmt: skip
LOWER = ("squat", "hinge", "knee extension", "knee flexion", "calf raise", "trunk flexion")
PUSH = ("horizontal press", "incline press", "vertical press", "lateral raise", "elbow extension")
PULL = ("vertical pull", "horizontal pull", "shrug", "rear raise", "elbow flexion")
FULL = ("squat", "horizontal press", "horizontal pull", "hinge", "vertical press", "vertical pull",
        "trunk flexion")  # fmt: skip
CIRCUIT = ("squat", "knee extension", "knee flexion", "horizontal press", "vertical pull",
           "vertical press", "horizontal pull", "trunk flexion")  # fmt: skip
CHEST = ("horizontal press", "incline press", "chest fly", "dip")
BACK = ("vertical pull", "horizontal pull", "shoulder extension", "shrug")
SHOULDERS = ("vertical press", "lateral raise", "rear raise", "front raise")
ARMS = ("elbow flexion", "elbow extension", "wrist and grip")
WEEKS: dict[str, tuple[tuple[str, ...], ...]] = {
    "full body": (FULL,),
    "upper/lower": (UPPER, LOWER),
    "push/pull/legs": (PUSH, PULL, LOWER),
    "body part": (CHEST, BACK, LOWER, SHOULDERS, ARMS),
    "machine circuit": (CIRCUIT,),
}


def _usual(pattern: str, intake: Intake, gym: GymKit, *, machine: bool) -> Exercise | None:
    """The first exercise of a pattern that can be done here, as the catalogue lists them."""
    found = [
        exercise
        for exercise in catalogue.exercises()
        if exercise.pattern == pattern
        and gym.can_do(exercise)
        and avoidance(intake, exercise) is None
    ]
    found.sort(key=lambda exercise: machine and exercise.resistance != "machine")
    return found[0] if found else None


def ordinary_weeks(intake: Intake) -> dict[str, Plan]:
    """Five ordinary weeks on the person's days, each session cut where its minutes end."""
    return {name: _week(name, patterns, intake) for name, patterns in WEEKS.items()}


def _week(name: str, patterns: tuple[tuple[str, ...], ...], intake: Intake) -> Plan:
    gym = stock_of(intake.gym, intake.kit)
    sessions = []
    for number, day in enumerate(ordered_days(intake)):
        entries: list[Entry] = []
        session = None
        for pattern in patterns[number % len(patterns)]:
            exercise = _usual(pattern, intake, gym, machine=name == "machine circuit")
            if exercise is None:
                continue
            entry = Entry(
                exercise=exercise.id, sets=3, reps=(10, 10), rir=(2, 2), rest_s=(120, 120)
            )
            tried = Session(
                name=name, day=day.day, minutes=day.minutes, exercises=(*entries, entry)
            )
            plan = Plan(setwright="plan/1", title=name, sessions=(tried,))
            if session and rehearse(plan, intake).sessions[0].total_s > 60 * day.minutes:
                break
            entries.append(entry)
            session = tried
        if session:
            sessions.append(session)
    return Plan(setwright="plan/1", title=f"Ordinary {name}", sessions=tuple(sessions))
