"""What is believed of one person: a normal state over all exercises, moved from day to day.

The state holds, shared by everything: the person-wide weekly gain, curve constant, RIR bias and
how it rises with the felt reserve and the length of the set, endurance, strength of the day, form
of these weeks and how far strength follows load; for each class of exercise a curve constant and
a bias; for each exercise its level (log 1RM), its own gain, curve constant and strength of the
day. Exercises are any keys; classes are any words.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp

import numpy as np

from setwright.training.constants import CONSTANTS, Constants
from setwright.training.filter import FloatArray, Flow, Gaussian, predict

GAIN, CURVE, BIAS, STEEPER, LONGER, ENDURANCE, DAY, FORM, FOLLOW = range(9)
SHARED = 9
WEEK = 7.0


@dataclass(frozen=True, slots=True)
class Own:
    """Where the states of an exercise lie, and its class's.

    Attributes:
        log_a: log of the curve constant before the person's departures.
        level: log 1RM.
        gain: extra weekly gain.
        curve: departure of the log curve constant.
        day: strength of the day.
        class_curve: departure of the class.
        class_bias: RIR bias of the class.
    """

    log_a: float
    level: int
    gain: int
    curve: int
    day: int
    class_curve: int
    class_bias: int


class Belief:
    """The state of one person and the rules by which it moves."""

    def __init__(self, experience: str, constants: Constants = CONSTANTS) -> None:
        """Start with what holds for people in general.

        Args:
            experience: a key of ``constants.trend``.
            constants: spreads, rates and priors.
        """
        c = constants
        self.constants = c
        self.usual_gain = c.trend[experience]
        self.day: int | None = None
        self.own: dict[str, Own] = {}
        self.loads: dict[str, tuple[int, float]] = {}
        self._classes: dict[str, tuple[int, int]] = {}
        mean, spread = np.zeros(SHARED), np.zeros(SHARED)
        for place, about, sd in (
            (GAIN, self.usual_gain, c.trend_sd),
            (CURVE, 0.0, c.curve_sd),
            (BIAS, c.bias, c.bias_sd),
            (STEEPER, c.steeper, c.steeper_sd),
            (LONGER, c.longer, c.longer_sd),
            (ENDURANCE, 0.0, c.endurance_sd),
            (DAY, 0.0, c.day_sd),
            (FORM, 0.0, c.form_sd),
            (FOLLOW, c.follow, c.follow_sd),
        ):
            mean[place], spread[place] = about, sd
        self.state = Gaussian(mean, np.diag(np.square(spread)))

    def copy(self) -> Belief:
        """An independent copy."""
        other = Belief.__new__(Belief)
        other.__dict__.update(self.__dict__)
        other.own = dict(self.own)
        other._classes = dict(self._classes)
        other.loads = dict(self.loads)
        other.state = self.state.copy()
        return other

    def add(self, key: str, kind: str, log_a: float, level: float, level_sd: float) -> None:
        """Take in an exercise.

        Args:
            key: its name.
            kind: its class.
            log_a: log of its curve constant in people in general.
            level: log 1RM expected before any set.
            level_sd: its SD.
        """
        c = self.constants
        if kind not in self._classes:
            start = self._grow([0.0, 0.0], [c.curve_class_sd, c.bias_class_sd])
            self._classes[kind] = (start, start + 1)
        start = self._grow(
            [level, c.early, 0.0, 0.0], [level_sd, c.early_sd, c.curve_own_sd, c.day_own_sd]
        )
        self.own[key] = Own(log_a, start, start + 1, start + 2, start + 3, *self._classes[kind])

    def _grow(self, mean: list[float], spread: list[float]) -> int:
        start = len(self.state.mean)
        size = start + len(mean)
        cov = np.zeros((size, size))
        cov[:start, :start] = self.state.cov
        cov[range(start, size), range(start, size)] = np.square(spread)
        self.state = Gaussian(np.concatenate([self.state.mean, mean]), cov)
        return start

    def gap_weeks(self, day: int) -> float:
        """Weeks over which gains are carried on to a day."""
        if self.day is None:
            return 0.0
        return min(max(day - self.day, 0), self.constants.most_gap_days) / WEEK

    def form_left(self, day: int) -> float:
        """Share of today's form that is left on a day."""
        if self.day is None:
            return 1.0
        return exp(-max(day - self.day, 0) / WEEK / self.constants.form_weeks)

    def to_day(self, day: int) -> None:
        """Let time pass until a day; a day that is past leaves everything as it is."""
        if self.day is not None and day > self.day:
            predict(self.state, *self._motion(day - self.day, self.gap_weeks(day)))
        self.day = day if self.day is None else max(day, self.day)

    def _motion(
        self, days: int, gap: float
    ) -> tuple[FloatArray, tuple[Flow, ...], FloatArray, FloatArray]:
        """What stays, what flows, what is added and what drifts over a number of days."""
        c = self.constants
        weeks = days / WEEK
        stays = np.ones(len(self.state.mean))
        noise = np.zeros(len(stays))
        drift = np.zeros(len(stays))
        stays[GAIN] = exp(-weeks / c.trend_weeks)
        noise[GAIN] = c.trend_sd**2 * (1 - stays[GAIN] ** 2)
        drift[GAIN] = (1 - stays[GAIN]) * self.usual_gain
        noise[BIAS] = c.bias_walk**2 * weeks
        stays[FORM] = exp(-weeks / c.form_weeks)
        noise[FORM] = c.form_sd**2 * (1 - stays[FORM] ** 2)
        stays[DAY] = 0.0
        noise[DAY] = c.day_sd**2
        level = np.array([own.level for own in self.own.values()], dtype=np.intp)
        gain, today = level + 1, level + 3
        noise[level] = c.level_walk**2 * weeks
        stays[gain] = exp(-weeks / c.early_weeks)
        stays[today] = 0.0
        noise[today] = c.day_own_sd**2
        shared = np.full(len(level), GAIN)
        return stays, (Flow(level, gain, gap), Flow(level, shared, gap)), noise, drift

    def load_change(self, key: str, log_load: float, day: int) -> float:
        """Log of the load over that of the last day with the exercise; 0 on the same day."""
        last = self.loads.get(key)
        return log_load - last[1] if last is not None and day > last[0] else 0.0

    def follow_load(self, key: str, log_load: float) -> bool:
        """Take in that an exercise is done with a load today, and what this says of its level.

        A load that was changed from one day to the next was changed for a reason: a share of
        the change, learned for each person, is taken as a change of strength.

        Returns:
            Whether the belief was changed.
        """
        day = self.day or 0
        change = self.load_change(key, log_load, day)
        if key not in self.loads or self.loads[key][0] < day:
            self.loads[key] = (day, log_load)
        if change == 0.0:
            return False
        level = self.own[key].level
        state = self.state
        state.mean[level] += change * state.mean[FOLLOW]
        state.cov[level, :] += change * state.cov[FOLLOW, :]
        state.cov[:, level] += change * state.cov[:, FOLLOW]
        state.cov[level, level] += (self.constants.jump * change) ** 2
        return True
