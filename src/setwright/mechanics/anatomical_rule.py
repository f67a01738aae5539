"""The anatomical rule: shares of a working set and loaded stretch, from declared mechanics.

For every part at once:

1. drive: the largest product of a demanded action and the part's leverage in it, plus
   ``FURTHER`` of the second largest (a part that helps twice works a little harder);
2. conflict: a part that would also produce the opposite of a demanded action is held back by
   ``CONFLICT`` times that demand times its leverage in the opposite action;
3. working length: a part that is short over the worked range gives little force
   (active insufficiency), weighted by where in the range the load is largest;
4. the product is cut to 0..1, and below ``LEAST`` it is called 0.

The coefficients are common practice, not fitted: they were set once on textbook anatomy and
are then held against published trials in ``docs/rule-against-trials.md``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.joints import ACTIONS, COORDINATES, OPPOSITE, SENSE, Coordinate
from setwright.anatomy.model import Part

Array = NDArray[np.float64]

FURTHER: Final = 0.2
CONFLICT: Final = 1.2
LEAST: Final = 0.1
# Below the first length (in optimal fibre lengths) a part gives nothing, from the second on its
# full force.
SHORT: Final = 0.5
LONG_ENOUGH: Final = 0.85
# Loaded stretch runs from 0 at the first length to 1 at the second.
STRETCH_FROM: Final = 0.8
STRETCH_TO: Final = 1.5
# Holding the trunk is not what ends a set: its moment counts by this much.
POSTURE: Final = 0.6
# Standard deviation of a share by the rule: largest in the middle, where most can go wrong.
SPREAD_LEAST: Final = 0.05
SPREAD_MIDDLE: Final = 0.6

# Share of the load at five points of the range, from stretched to shortened.
LOAD_OVER_RANGE: Final[Mapping[str, tuple[float, ...]]] = {
    "stretched": (0.34, 0.27, 0.20, 0.13, 0.06),
    "middle": (0.10, 0.20, 0.40, 0.20, 0.10),
    "shortened": (0.06, 0.13, 0.20, 0.27, 0.34),
    "even": (0.20, 0.20, 0.20, 0.20, 0.20),
}
_POINTS: Final = np.linspace(0.0, 1.0, 5)
_ACTION: Final = {name: position for position, name in enumerate(ACTIONS)}
_COORDINATE: Final = {name: position for position, name in enumerate(COORDINATES)}
_OPPOSITE: Final = np.array([_ACTION[OPPOSITE[a]] if a in OPPOSITE else -1 for a in ACTIONS])


@dataclass(frozen=True)
class Asked:
    """One joint action an exercise asks for.

    Attributes:
        action: what the muscles do at the joint.
        demand: 0 to 1.
        stretched: coordinate in degrees where the working muscles are longest.
        shortened: coordinate in degrees where they are shortest.
    """

    action: str
    demand: float
    stretched: float
    shortened: float


@dataclass(frozen=True)
class Worked:
    """What the rule says of one exercise; arrays over the parts, shape (P,).

    Attributes:
        shares: 0 to 1, 0 below ``LEAST``.
        spread: standard deviation of each share.
        stretch: 0 to 1, how much load falls on the part where it is long; 0 without a share.
    """

    shares: Array
    spread: Array
    stretch: Array


class Body:
    """The parts as arrays the rule works on."""

    def __init__(self, parts: Sequence[Part]) -> None:
        self.parts = tuple(parts)

    @cached_property
    def leverage(self) -> Array:
        """Leverage of each part in each action, shape (P, A)."""
        table = np.zeros((len(self.parts), len(ACTIONS)))
        for row, part in enumerate(self.parts):
            for action, value in part.actions.items():
                table[row, _ACTION[action]] = value
        return table

    @cached_property
    def opposing(self) -> Array:
        """Leverage of each part against each action, shape (P, A)."""
        table: Array = np.where(_OPPOSITE >= 0, self.leverage[:, _OPPOSITE], 0.0)
        return table

    @cached_property
    def stretch(self) -> Array:
        """Fibre length change per degree of each coordinate, shape (P, C)."""
        table = np.zeros((len(self.parts), len(COORDINATES)))
        for row, part in enumerate(self.parts):
            for coordinate, value in part.stretch.items():
                table[row, _COORDINATE[coordinate]] = value / 90.0
        return table

    @cached_property
    def rest_length(self) -> Array:
        """Fibre length ratio at the anatomical position, shape (P,)."""
        return np.array([part.rest_length for part in self.parts])

    def work(
        self,
        asked: Sequence[Asked],
        hold: Mapping[Coordinate, float],
        hardest: str,
        trunk_moment: float,
    ) -> Worked:
        """Shares of a working set for every part.

        Args:
            asked: the joint actions the exercise asks for.
            hold: coordinates in degrees that stay where they are.
            hardest: where the load is largest, a key of ``LOAD_OVER_RANGE``.
            trunk_moment: 0 to 1, what holding the trunk asks of its extensors.
        """
        weight = np.array(LOAD_OVER_RANGE[hardest])
        lengths = self._lengths(asked, hold)
        enough = _ramp(lengths, SHORT, LONG_ENOUGH) @ weight
        raw = np.clip((self._drive(asked, trunk_moment) - self._conflict(asked)) * enough, 0, 1)
        shares = np.where(raw < LEAST, 0.0, raw)
        long = _ramp(lengths, STRETCH_FROM, STRETCH_TO) @ (weight * (1 - _POINTS))
        # Full marks when all the load of the stretch-biased half falls on the longest length.
        reach = float(np.array(LOAD_OVER_RANGE["stretched"]) @ (1 - _POINTS))
        stretch = np.where(shares > 0, np.clip(long / reach, 0, 1), 0.0)
        return Worked(shares, spread_of(shares), stretch)

    def _drive(self, asked: Sequence[Asked], trunk_moment: float) -> Array:
        demand = np.zeros(len(ACTIONS))
        for one in asked:
            demand[_ACTION[one.action]] = max(demand[_ACTION[one.action]], one.demand)
        trunk = _ACTION["trunk extension"]
        demand[trunk] = max(demand[trunk], POSTURE * trunk_moment)
        helped = np.sort(self.leverage * demand, axis=1)
        drive: Array = helped[:, -1] + FURTHER * helped[:, -2]
        return drive

    def _conflict(self, asked: Sequence[Asked]) -> Array:
        demand = np.zeros(len(ACTIONS))
        for one in asked:
            demand[_ACTION[one.action]] = max(demand[_ACTION[one.action]], one.demand)
        conflict: Array = CONFLICT * (self.opposing * demand).max(axis=1)
        return conflict

    def _lengths(self, asked: Sequence[Asked], hold: Mapping[Coordinate, float]) -> Array:
        """Fibre length ratio of each part at five points of the range, shape (P, 5)."""
        angles = np.zeros((len(COORDINATES), len(_POINTS)))
        for coordinate, degrees in hold.items():
            angles[_COORDINATE[coordinate]] = degrees
        for one in sorted(asked, key=lambda item: item.demand):
            row = _COORDINATE[SENSE[one.action][0]]
            angles[row] = one.stretched + (one.shortened - one.stretched) * _POINTS
        lengths: Array = self.rest_length[:, None] + self.stretch @ angles
        return np.clip(lengths, 0.4, 1.8)


def spread_of(shares: Array) -> Array:
    """Standard deviation of shares by the rule: 0.05 at the ends, 0.20 at one half."""
    return SPREAD_LEAST + SPREAD_MIDDLE * shares * (1 - shares)


def _ramp(values: Array, low: float, high: float) -> Array:
    ramp: Array = np.clip((values - low) / (high - low), 0.0, 1.0)
    return ramp
