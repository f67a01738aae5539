"""What the virtual lifters do: movements, their groups, and the weeks they train.

Real 1RM over body mass and the spread of repetitions are wide and common practice; the checks of
published.py hold them against published cells.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.exercises import catalogue

Group = Literal["legs", "press", "pull", "single"]


@dataclass(frozen=True)
class Movement:
    """A movement of the lab.

    Attributes:
        exercise: id in the catalogue.
        group: lifters call their reserve alike within a group.
        per_mass: 1RM as lifted over body mass of an intermediate man (common practice).
        step_kg: step of its loads.
        pace: mean of the curve's pace constant, repetitions.
        floor: mean fraction of 1RM that could be repeated without end.
        spread: SD of the log pace between lifters.
    """

    exercise: str
    group: Group
    per_mass: float
    step_kg: float
    pace: float
    floor: float
    spread: float


MOVEMENTS: dict[str, Movement] = {
    one.exercise: one
    for one in (
        Movement("back-squat", "legs", 1.35, 2.5, 21.0, 0.40, 0.25),
        Movement("leg-press", "legs", 2.4, 5.0, 24.0, 0.38, 0.28),
        Movement("romanian-deadlift", "legs", 1.3, 2.5, 18.0, 0.40, 0.25),
        Movement("barbell-bench-press", "press", 1.05, 2.5, 16.2, 0.40, 0.16),
        Movement("machine-shoulder-press", "press", 0.75, 2.5, 17.0, 0.40, 0.20),
        Movement("machine-row", "pull", 0.95, 5.0, 18.0, 0.40, 0.22),
        Movement("lat-pulldown", "pull", 0.95, 5.0, 18.0, 0.40, 0.22),
        Movement("leg-extension", "single", 0.95, 5.0, 21.5, 0.39, 0.30),
        Movement("seated-leg-curl", "single", 0.75, 5.0, 17.0, 0.39, 0.22),
        Movement("cable-curl", "single", 0.45, 2.5, 17.0, 0.39, 0.22),
    )
}

_GROUP_OF_PATTERN: dict[str, Group] = {
    "squat": "legs", "lunge": "legs", "hinge": "legs", "horizontal press": "press",
    "incline press": "press", "vertical press": "press", "dip": "press", "vertical pull": "pull",
    "horizontal pull": "pull",
}  # fmt: skip


def group_of(exercise: str) -> Group:
    """Group of any exercise of the catalogue."""
    if exercise in MOVEMENTS:
        return MOVEMENTS[exercise].group
    return _GROUP_OF_PATTERN.get(catalogue.exercise(exercise).pattern, "single")


# Sessions in turn; four movements each, three sets a movement.
SESSIONS: tuple[tuple[str, ...], ...] = (
    ("back-squat", "barbell-bench-press", "machine-row", "seated-leg-curl"),
    ("romanian-deadlift", "machine-shoulder-press", "lat-pulldown", "leg-extension"),
    ("leg-press", "barbell-bench-press", "lat-pulldown", "cable-curl"),
)
SETS = 3
BAND = {"legs": (6, 10), "press": (6, 10), "pull": (8, 12), "single": (10, 15)}
