"""A virtual lifter in training: fitness gained and lost, fatigue that comes and goes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import exp

import numpy as np
from numpy.typing import NDArray

from setwright.exercises import catalogue
from setwright.lab.curve import capacity
from setwright.lab.response import dose_worth, effort_worth, load_worth
from setwright.lab.traits import Traits

Floats = NDArray[np.float64]

# Within a session: two stores that empty with effort and fill at two rates; fitted by
# published.py's rest studies (10RM bench press of men at 1, 2 and 3 minutes).
FAST_LOST, FAST_S = 0.55, 75.0
SLOW_LOST, SLOW_S = 0.27, 900.0
EFFORT_POWER = 3.0
"""A set with 3 of 10 repetitions left costs a third of one to failure, with 1 left a half
and more: fatigue-by-rir-bench-2023 (8, 13 and 25 % of bar speed)."""

# Between sessions: log strength a set to failure takes, and its time course in traits.
SET_FATIGUE = 0.014
REGAIN = 2.0
"""Times faster that lost strength comes back than it was gained: layoff-regain."""

LOST_AT_MOST = 0.22
IDLE_SETS = 1.0


@cache
def reach(exercises: tuple[str, ...]) -> Floats:
    """How far work on one exercise reaches into another: likeness of their shares, 0 to 1."""
    shares = catalogue.shares()[[catalogue.row(key) for key in exercises]]
    unit = shares / np.linalg.norm(shares, axis=1, keepdims=True)
    return np.asarray(unit @ unit.T)


@dataclass(frozen=True, slots=True)
class Effort:
    """A set as it really was.

    Attributes:
        reps: done.
        possible: whole repetitions that could have been done.
        capacity: the same, not rounded.
        fraction: load over the 1RM of the moment, fatigue of the set apart.
    """

    reps: int
    possible: int
    capacity: float
    fraction: float


class Body:
    """Strength and fatigue of one lifter; days must be lived one after another."""

    def __init__(self, traits: Traits) -> None:
        """Start untrained in the lab: gains and fatigue 0."""
        count = len(traits.own)
        self.traits = traits
        self._row = {key: row for row, key in enumerate(traits.own)}
        self._reach = reach(tuple(traits.own))
        self.gained = np.zeros(count)
        self._peak = np.zeros(count)
        self._tired = np.zeros(count)
        self._sets = np.full(count, 2.0)
        self._worth = np.full(count, 1.4)
        self._fast = np.zeros(count)
        self._slow = np.zeros(count)
        self._today = np.zeros(count)

    def sleep(self) -> None:
        """One night and the day up to the next session."""
        t = self.traits
        self._sets *= exp(-1.0 / 7.0)
        self._worth *= exp(-1.0 / 7.0)
        worth = dose_worth(self._sets) * self._worth / self._sets
        rate = t.rate / 7.0 * np.where(self.gained < self._peak - 1e-6, REGAIN, 1.0)
        idle = np.maximum(1.0 - self._sets / IDLE_SETS, 0.0)
        loss = idle * (self.gained - (self._peak - LOST_AT_MOST)) / (7.0 * t.decay_weeks)
        self.gained += rate * worth * np.maximum(t.room - self.gained, 0.0) - loss
        self._peak = np.maximum(self._peak, self.gained)
        self._tired *= exp(-1.0 / t.recovery_days)
        self._fast[:] = 0.0
        self._slow[:] = 0.0

    def wake(self, shape: float) -> None:
        """Set the day's strength: log, common to all movements."""
        self._today[:] = shape

    def fresh_one_rm(self, exercise: str) -> float:
        """1RM as lifted, without fatigue or the day's noise, kg."""
        return self.traits.own[exercise].one_rm * exp(float(self.gained[self._row[exercise]]))

    def fraction(self, exercise: str, load_kg: float, own_shape: float = 0.0) -> float:
        """Load over the 1RM of the day, both as lifted, as in the published studies."""
        row = self._row[exercise]
        now = self._today[row] + own_shape - self._tired[row]
        return load_kg / (self.fresh_one_rm(exercise) * exp(float(now)))

    def rest(self, seconds: float) -> None:
        """Rest within a session."""
        refills = self.traits.refills
        self._fast *= exp(-seconds / (FAST_S * refills))
        self._slow *= exp(-seconds / (SLOW_S * refills))

    def can_do(self, exercise: str, fraction: float, noise: float) -> float:
        """Repetitions to failure now, not rounded; ``noise`` is the log error of this set."""
        own, row = self.traits.own[exercise], self._row[exercise]
        kept = max(1.0 - float(self._fast[row] + self._slow[row]), 0.05)
        fresh = capacity(fraction, own.floor, own.pace)
        return fresh * kept * exp(noise)

    def work(self, exercise: str, effort: Effort) -> None:
        """Take in a set that was done."""
        row = self._row[exercise]
        used = min(effort.reps / max(effort.capacity, 1.0), 1.0) ** EFFORT_POWER * self.traits.tires
        far = self._reach[:, row]
        short = min(effort.capacity / 6.0, 1.0)
        self._fast += far * FAST_LOST * used * short * (1.0 - self._fast)
        self._slow += far * SLOW_LOST * self.traits.lasting * used * short * (1.0 - self._slow)
        self._tired += far * SET_FATIGUE * used
        left = max(effort.capacity - effort.reps, 0.0)
        self._sets += far
        self._worth += far * load_worth(effort.fraction) * effort_worth(left)
