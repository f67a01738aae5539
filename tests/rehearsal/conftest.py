"""A small catalogue of our own, so that the rehearsal is tested on shares we can reason about."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from setwright.exercises.model import Exercise

PARTS = ("chest", "front delts", "triceps", "quads", "glutes", "hamstrings", "lats", "biceps")
ROWS = {
    "bench-press": (1.0, 0.6, 0.5, 0, 0, 0, 0, 0),
    "triceps-extension": (0, 0, 1.0, 0, 0, 0, 0, 0),
    "chest-fly": (1.0, 0.4, 0, 0, 0, 0, 0, 0),
    "squat": (0, 0, 0, 1.0, 0.8, 0.1, 0, 0),
    "leg-press": (0, 0, 0, 1.0, 0.6, 0, 0, 0),
    "leg-extension": (0, 0, 0, 1.0, 0, 0, 0, 0),
    "leg-curl": (0, 0, 0, 0, 0, 1.0, 0, 0),
    "row": (0, 0, 0, 0, 0, 0, 1.0, 0.6),
    "curl": (0, 0, 0, 0, 0, 0, 0, 1.0),
    "pull-up": (0, 0, 0, 0, 0, 0, 1.0, 0.6),
    "split-squat": (0, 0, 0, 1.0, 0.9, 0, 0, 0),
}
FREE = {"bench-press": "barbell", "squat": "barbell", "curl": "dumbbell pair"}
KIT = {
    "bench-press": [["barbell", "bench", "rack"]],
    "squat": [["barbell", "rack"]],
    "curl": [["dumbbells"]],
    "leg-press": [["leg press"]],
    "leg-extension": [["leg extension"]],
    "leg-curl": [["lying leg curl"]],
    "triceps-extension": [["cable"]],
    "chest-fly": [["fly machine"]],
    "row": [["seated row machine"]],
    "pull-up": [["pull-up bar"]],
    "split-squat": [["dumbbells", "bench"]],
}
WHOLE = {"squat": 0.9, "leg-press": 0.7, "bench-press": 0.4, "row": 0.4, "pull-up": 0.4}


def make(exercise_id: str, **changes: object) -> Exercise:
    loading = FREE.get(exercise_id, "stack")
    compound = exercise_id in WHOLE or exercise_id == "split-squat"
    fields: dict[str, object] = {
        "id": exercise_id,
        "name": exercise_id.replace("-", " "),
        "pattern": "horizontal press",
        "kind": "compound" if compound else "isolation",
        "actions": {"elbow extension": 1},
        "resistance": "free weight" if loading != "stack" else "machine",
        "loading": loading,
        "kit": KIT[exercise_id],
        "setup_s": 60 if loading == "barbell" else 20,
        "stability": 0.5,
        "whole_body": WHOLE.get(exercise_id, 0.2),
        "rep_band": (5, 30),
        "cues": ("one", "two"),
    }
    if exercise_id == "leg-press":
        fields |= {"rep_curve": "leg press", "loading": "plates"}
    if exercise_id == "bench-press":
        fields |= {"rep_curve": "bench press"}
    if exercise_id == "pull-up":
        fields |= {
            "loading": "bodyweight", "resistance": "bodyweight", "bodyweight_share": 0.95,
        }  # fmt: skip
    if exercise_id == "split-squat":
        fields |= {"loading": "dumbbell pair", "sides": "one", "bodyweight_share": 0.8}
    return Exercise.model_validate(fields | changes)


class SmallCatalogue:
    def __init__(self) -> None:
        self._exercises = {name: make(name) for name in ROWS}
        self._ids = list(ROWS)

    def exercise(self, exercise_id: str) -> Exercise:
        return self._exercises[exercise_id]

    def row(self, exercise_id: str) -> int:
        return self._ids.index(exercise_id)

    def shares(self) -> NDArray[np.float64]:
        return np.array([ROWS[name] for name in self._ids], dtype=float)


@pytest.fixture(scope="session")
def small() -> SmallCatalogue:
    return SmallCatalogue()
