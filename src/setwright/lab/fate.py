"""Everything that chance does to a lifter, drawn before training begins.

Whoever plans the training, the same lifter meets the same days: common random numbers, so that a
difference between two plans is the plans' own.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.lab.movements import MOVEMENTS, SESSIONS, SETS

Floats = NDArray[np.float64]
TAILS = 4.0
"""Degrees of freedom of a day's noise: Student t, heavier than normal."""

SPELL_A_WEEK = 0.11
ILL_SHARE = 0.35
DRIFT_SD = 0.35
DRIFT_STAYS = 0.8
WEEKDAYS = (0, 2, 4)


@dataclass(frozen=True)
class Fate:
    """The chances of one lifter; sessions numbered from 0, S of them, over D days.

    Attributes:
        days: day of each session, from 0, shape (S,).
        missed: whether it is missed, shape (S,).
        shape: log strength of the day from sleep and illness, 0 or below, shape (D,).
        day: unit noise common to all movements, heavy tails, shape (D,).
        day_own: the same for one movement, shape (S, 4).
        set_noise: unit normal noise of a set, shape (S, 4, SETS).
        call_noise: unit normal noise of a call, shape (S, 4, SETS).
        drift: real less called reserve, change from the start, by week, shape (W,).
        luck: uniform numbers for habits and slips, shape (S, 4, SETS, 6).
        guess: log error of the first load of each movement, by exercise id.
    """

    days: NDArray[np.intp]
    missed: NDArray[np.bool_]
    shape: Floats
    day: Floats
    day_own: Floats
    set_noise: Floats
    call_noise: Floats
    drift: Floats
    luck: Floats
    guess: dict[str, float]


def draw_fate(rng: np.random.Generator, weeks: int, steady: bool = False) -> Fate:
    """Draw the chances of a lifter.

    Args:
        rng: of this lifter alone.
        weeks: to train, 1 or more.
        steady: supervised: no session missed, no spell, no break, as in a trial.
    """
    days = np.array([7 * week + day for week in range(weeks) for day in WEEKDAYS], dtype=np.intp)
    sessions, length = len(days), 7 * weeks
    shape = np.zeros(length)
    off = np.zeros(length, dtype=bool)
    for _ in range(int(rng.poisson(SPELL_A_WEEK * weeks))):
        start, lasts = int(rng.integers(length)), int(rng.integers(2, 9))
        depth, ill = float(rng.uniform(0.015, 0.06)), bool(rng.random() < ILL_SHARE)
        shape[start : start + lasts] -= depth
        off[start : start + lasts] |= ill
    if rng.random() < 0.35:
        start = int(rng.integers(length))
        off[start : start + int(rng.integers(7, 22))] = True
    missed = (rng.random(sessions) < rng.uniform(0.02, 0.15)) | off[days]
    drift = np.zeros(weeks)
    for week in range(1, weeks):
        step = float(rng.normal(0, DRIFT_SD * np.sqrt(1 - DRIFT_STAYS**2)))
        drift[week] = DRIFT_STAYS * drift[week - 1] + step
    fate = Fate(
        days=days,
        missed=missed,
        shape=shape,
        day=rng.standard_t(TAILS, length),
        day_own=rng.standard_t(TAILS, (sessions, 4)),
        set_noise=rng.normal(0, 1, (sessions, 4, SETS)),
        call_noise=rng.normal(0, 1, (sessions, 4, SETS)),
        drift=drift,
        luck=rng.random((sessions, 4, SETS, 6)),
        guess={key: float(rng.normal(0, 0.06)) for key in MOVEMENTS},
    )
    if steady:
        fate.shape[:] = 0.0
        fate.missed[:] = False
    return fate


def session_of(number: int) -> tuple[str, ...]:
    """Movements of a session, which repeat in turn."""
    return SESSIONS[number % len(SESSIONS)]
