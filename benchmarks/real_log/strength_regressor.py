"""A gradient-boosted regressor on sixteen hand-made features of the log, by scikit-learn."""

from __future__ import annotations

import math
from collections import defaultdict
from typing import Any

import numpy as np
from sets_to_failure import Row
from strength_baselines import SLOPE, from_last_one_rm

LATE = 3
FOLDS = 10


def features(past: list[Row], today: list[float], row: Row) -> list[float]:
    """What is known before a set.

    Args:
        past: earlier sets on the machine, three or more.
        today: how far off the last set's 1RM was, repetitions, for the sets of the day so far.
        row: the set; only its load, machine and day are used.
    """
    strengths = [one.load_kg * (1 + SLOPE * one.reps) for one in past]
    days = [one.day for one in past]
    reps = [one.reps for one in past]
    told = [from_last_one_rm([one], row.load_kg) for one in past]
    slope = float(np.polyfit(days, np.log(strengths), 1)[0]) if len(set(days)) > 1 else 0.0
    return [
        told[-1],
        told[-2],
        told[-3],
        float(np.mean(told)),
        float(np.mean(told[-3:])),
        reps[-1],
        reps[-2],
        float(np.mean(reps)),
        float(np.std(reps)),
        math.log(row.load_kg / past[-1].load_kg),
        math.log(row.load_kg / past[0].load_kg),
        row.day - days[-1],
        row.day,
        len(past),
        7 * slope,
        float(np.mean(today)) if today else math.nan,
    ]


def table(log: dict[int, list[Row]]) -> tuple[Any, Any, Any]:
    """Features, repetitions and person of every set after a person's third on a machine."""
    x, y, who_of = [], [], []
    for who, rows in log.items():
        past: dict[str, list[Row]] = defaultdict(list)
        today: list[float] = []
        day = -1
        for row in rows:
            if row.day != day:
                today, day = [], row.day
            before = past[row.exercise]
            if len(before) >= LATE:
                x.append(features(before, today, row))
                y.append(row.reps)
                who_of.append(who)
            if before:
                today.append(row.reps - from_last_one_rm(before, row.load_kg))
            before.append(row)
    return np.array(x), np.array(y), np.array(who_of)


def cross_validated(log: dict[int, list[Row]]) -> tuple[Any, Any]:
    """Repetitions got and predicted by regressors that never saw the person.

    Raises:
        ImportError: scikit-learn is not installed.
    """
    from sklearn.ensemble import HistGradientBoostingRegressor
    from sklearn.model_selection import GroupKFold

    x, y, who = table(log)
    told = np.zeros(len(y))
    for known, held in GroupKFold(FOLDS).split(x, y, who):
        model = HistGradientBoostingRegressor(
            max_iter=120,
            learning_rate=0.04,
            max_leaf_nodes=8,
            min_samples_leaf=40,
            l2_regularization=1.0,
            random_state=0,
        )
        told[held] = model.fit(x[known], y[known]).predict(x[held])
    return y, told
