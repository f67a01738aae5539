"""Plain ways to foretell the next set's repetitions."""

from __future__ import annotations

from collections import defaultdict

import numpy as np
from sets_to_failure import Row

# 1RM is the load times one and this for each repetition (Epley's equation).
SLOPE = 0.033
LATE = 3


def last_repeated(past: list[Row], load_kg: float) -> float:
    """The last repetitions again, whatever the load."""
    return past[-1].reps


def from_last_one_rm(past: list[Row], load_kg: float) -> float:
    """Repetitions that the last set's 1RM allows at the load."""
    return max((past[-1].load_kg * (1 + SLOPE * past[-1].reps) / load_kg - 1) / SLOPE, 0.0)


def mean_of_three(past: list[Row], load_kg: float) -> float:
    """The mean of the last three."""
    return float(np.mean([one.reps for one in past[-3:]]))


BASELINES = {
    "last repetitions repeated": last_repeated,
    "last set's 1RM by equation": from_last_one_rm,
    "mean of the last three": mean_of_three,
}


def told_by_baselines(log: dict[int, list[Row]]) -> tuple[list[float], dict[str, list[float]]]:
    """Repetitions got and foretold, for sets after a person's third on a machine."""
    got: list[float] = []
    told: dict[str, list[float]] = {name: [] for name in BASELINES}
    for rows in log.values():
        past: dict[str, list[Row]] = defaultdict(list)
        for row in rows:
            before = past[row.exercise]
            if len(before) >= LATE:
                got.append(row.reps)
                for name, way in BASELINES.items():
                    told[name].append(way(before, row.load_kg))
            before.append(row)
    return got, told
