"""How much more, or less, the sets of a person scatter than those of people in general.

Two things are learned: the scale of the variance of each exercise, and the half width, in SD, of
the interval that holds four of five sets, which for heavy tails is not that of a normal law.

Every variance of the belief is in units of this scale, so that learning it changes intervals and
not estimates (the conjugate scale of a normal model; predictions become like Student's t).
"""

from __future__ import annotations

from math import exp

from setwright.rehearsal.strength import Z80
from setwright.training.constants import Constants

LEAST, MOST = 0.2, 8.0
# A single set counts for no more than this, in variances.
CAP = 9.0
OUTSIDE = 0.2
# How fast the half width follows what was in and out, log a set (adaptive conformal inference).
PACE = 0.03
NARROWEST, WIDEST = 0.6, 1.6


class Scatter:
    """Scale of the variance of each exercise, from how far off its sets and all others were."""

    def __init__(self, constants: Constants) -> None:
        self._c = constants
        self._stays = exp(-1.0 / constants.scatter_sets)
        self._all = (0.0, 0.0)
        self._own: dict[str, tuple[float, float]] = {}
        self._width = {True: Z80, False: Z80}

    def copy(self) -> Scatter:
        """An independent copy."""
        other = Scatter(self._c)
        other._all = self._all
        other._own = dict(self._own)
        other._width = dict(self._width)
        return other

    def scale(self, key: str) -> float:
        """Variance of an exercise over that of people in general."""
        own, every = self._own.get(key, (0.0, 0.0)), self._all
        share, prior = self._c.scatter_share, self._c.scatter_prior
        sets = prior + share * every[0] + own[0]
        return min(max((prior + share * every[1] + own[1]) / sets, LEAST), MOST)

    def half_width(self, failed: bool) -> float:
        """Half of the 80 % interval of repetitions, in SD of this person.

        Args:
            failed: for sets to failure, not for those that stop at a felt reserve.
        """
        return self._width[failed]

    def learn(self, key: str, z: float, failed: bool) -> None:
        """Take in how far off a set was.

        Args:
            key: exercise.
            z: how far off, in SD of this person.
            failed: the set went to failure.
        """
        missed = float(abs(z) > self._width[failed]) - OUTSIDE
        width = self._width[failed] * exp(PACE * missed)
        self._width[failed] = min(max(width, NARROWEST * Z80), WIDEST * Z80)
        seen = min(z**2, CAP) * self.scale(key)
        stays = self._stays
        own = self._own.get(key, (0.0, 0.0))
        self._own[key] = (own[0] * stays + 1.0, own[1] * stays + seen)
        self._all = (self._all[0] * stays + 1.0, self._all[1] * stays + seen)
