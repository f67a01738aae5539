"""Fatigue: what earlier sets take from the next one, and how rest gives it back.

A set takes a share of the repetitions from the parts it works (local) and a little from
everything (general). Both fade exponentially. A set at the fraction ``f`` of its 1RM that
allows ``fresh`` repetitions then allows ``fresh (1 - local) (1 - general)``: the share lost does
not depend on the load, as in finding rest-80-vs-50-percent-bench-2006.
"""

from __future__ import annotations

from copy import copy
from math import exp
from typing import Literal

import numpy as np
from numpy.typing import ArrayLike, NDArray

from setwright.rehearsal.coefficients import COEFFICIENTS, FatigueCoefficients

Sex = Literal["female", "male", "unstated"]
MOST_LOST = 0.95


def overlap(shares: ArrayLike) -> NDArray[np.float64]:
    """How far the fatigue of one exercise reaches into another.

    Each exercise tires a part in proportion to its share over its largest share, and feels the
    tiredness of its parts with the same weights. An exercise reaches fully into itself.

    Args:
        shares: shape (N, P), 0 to 1.

    Returns:
        Shape (N, N): row the exercise that suffers, column the one that was done; diagonal 1.
    """
    share = np.asarray(shares, dtype=float)
    largest = np.maximum(share.max(axis=1, keepdims=True), 1e-9)
    relative = share / largest
    own = np.maximum((relative**2).sum(axis=1, keepdims=True), 1e-9)
    reach = np.minimum(relative @ relative.T / own, 1.0)
    np.fill_diagonal(reach, 1.0)
    return np.asarray(reach)


def effort(rir: float) -> float:
    """Fatigue of a set that stops short of failure over that of a set to failure."""
    return 1.0 / (1.0 + max(rir, 0.0))


def sex_factor(sex: Sex, constants: FatigueCoefficients = COEFFICIENTS.fatigue) -> float:
    """Fatigue of this person over that of men; unstated counts as a man, the cautious side."""
    return constants.female if sex == "female" else 1.0


class Fatigue:
    """The state of one session: local fatigue felt by each exercise, and general fatigue."""

    def __init__(
        self,
        reach: NDArray[np.float64],
        whole_body: NDArray[np.float64],
        sex: Sex = "unstated",
        constants: FatigueCoefficients = COEFFICIENTS.fatigue,
    ) -> None:
        """Start fresh.

        Args:
            reach: shape (N, N), from ``overlap``.
            whole_body: shape (N,), how much a set taxes the whole person, 0 to 1.
            sex: of the person; women lose fewer repetitions.
            constants: the fitted constants.
        """
        self._reach = reach
        self._whole_body = [float(one) for one in whole_body]
        self._constants = constants
        self._sex = sex_factor(sex, constants)
        self._local = np.zeros(len(reach))
        self._general = 0.0

    def copy(self) -> Fatigue:
        """A state that goes its own way from here."""
        other = copy(self)
        other._local = self._local.copy()
        return other

    def rest(self, seconds: float) -> None:
        """Let time pass."""
        self._local *= exp(-seconds / self._constants.tau_s)
        self._general *= exp(-seconds / self._constants.general_tau_s)

    def local(self, exercise: int) -> float:
        """Share of repetitions lost to local fatigue, 0 to 0.95."""
        return min(float(self._local[exercise]), MOST_LOST)

    @property
    def general(self) -> float:
        """Share of repetitions lost to general fatigue, 0 to 0.95."""
        return min(self._general, MOST_LOST)

    def kept(self, exercise: int) -> float:
        """Share of the fresh repetitions that can be done now."""
        return (1.0 - self.local(exercise)) * (1.0 - self.general)

    def work(self, exercise: int, reps: float, rir: float) -> None:
        """Do a set.

        Args:
            exercise: its index.
            reps: repetitions done.
            rir: repetitions really left at its end.
        """
        constants = self._constants
        size = effort(rir) * reps / (reps + constants.half_reps) * self._sex
        room = 1.0 - self.local(exercise)
        self._local += self._reach[:, exercise] * (constants.lost * size * room)
        self._general += constants.general_lost * size * self._whole_body[exercise]


def extra_rest(
    local: NDArray[np.float64],
    general: NDArray[np.float64],
    kept: NDArray[np.float64],
    had_s: NDArray[np.float64],
    constants: FatigueCoefficients = COEFFICIENTS.fatigue,
    most_s: float = 1800.0,
) -> NDArray[np.float64]:
    """Seconds more (or, negative, less) rest at which ``kept`` of the repetitions remain.

    Args:
        local: local fatigue at the start of each set, shape (N,).
        general: general fatigue there, shape (N,).
        kept: share of fresh repetitions wanted, below 1, shape (N,).
        had_s: rest had before each set; the answer is never below ``-had_s``.
        constants: the fitted constants.
        most_s: longest extra rest that is looked at.

    Returns:
        Shape (N,), s.
    """
    low = -np.asarray(had_s, dtype=float)
    high = np.full_like(low, most_s)
    for _ in range(18):
        middle = (low + high) / 2
        now = (1 - np.minimum(local * np.exp(-middle / constants.tau_s), 1.0)) * (
            1 - np.minimum(general * np.exp(-middle / constants.general_tau_s), 1.0)
        )
        enough = now >= kept
        high = np.where(enough, middle, high)
        low = np.where(enough, low, middle)
    return np.asarray(high)
