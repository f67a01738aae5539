"""The worth of a week as the constraint model counts it, for many changes at once."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from setwright.design.problem import Problem
from setwright.response.curves import session_crowding, week_growth

Floats = NDArray[np.float64]
Sets = NDArray[np.int64]

# A part that gets its least is worth this much beside its growth (percent a week, weighted), an
# emphasised one double; so is the second session of an emphasised one.
COVERED, TWICE_TRAINED = 0.02, 0.004
# Spinal load is not needed for growth: each set weighted by it costs this much.
SPINE_COST = 0.0008
CROWDING_AT = (2.0, 5.0, 6.5, 8.0, 9.5, 11.0)
GROWTH_AT = (1.0, 3.0, 5.0, 8.0, 12.0, 18.0)


def tangents(points: tuple[float, ...], curve: object) -> list[tuple[float, float]]:
    """Slope and intercept of a concave curve's tangents: never below the curve."""
    assert callable(curve)
    found = []
    for x in points:
        step = 1e-4
        slope = float((curve(x + step) - curve(x - step)) / (2 * step))
        found.append((slope, float(curve(x)) - slope * x))
    return found


def _under(lines: list[tuple[float, float]], x: Floats) -> Floats:
    """The lowest of some straight lines, shape of ``x``."""
    lowest = x * lines[0][0] + lines[0][1]
    for slope, intercept in lines[1:]:
        np.minimum(lowest, x * slope + intercept, out=lowest)
    return lowest


@dataclass(frozen=True)
class Score:
    """Weighted growth and what coverage is worth, less the cost of spinal load, percent a week."""

    problem: Problem

    @cached_property
    def _columns(self) -> NDArray[np.int64]:
        """Parts that count for anything."""
        wanted = (self.problem.weights > 0) | (self.problem.least > 0)
        return np.flatnonzero(wanted)

    @cached_property
    def _options(self) -> tuple[Floats, Floats, Floats, Floats, Floats]:
        rows, columns = self.problem.options, self._columns
        return (
            np.array([o.value[columns] for o in rows]),
            np.array([o.share[columns] for o in rows]),
            np.array([o.spine for o in rows]),
            np.array([o.fixed_s for o in rows]),
            np.array([o.per_set_s for o in rows]),
        )

    @cached_property
    def _lines(self) -> tuple[list[tuple[float, float]], list[tuple[float, float]]]:
        growth = tangents(GROWTH_AT, lambda x: week_growth(x, self.problem.person))
        return [(1.0, 0.0), *tangents(CROWDING_AT, session_crowding)[1:]], growth

    def _worth(self, crowded_week: Floats, share_week: Floats, days_trained: Floats) -> Floats:
        """Worth of weeks given per part, shape (..., P') to (...)."""
        p, columns = self.problem, self._columns
        worth = _under(self._lines[1], crowded_week + p.done[columns]) @ p.weights[columns]
        least = p.least[columns]
        asked = least > 0
        urgency = p.urgency[columns]
        share = np.minimum(share_week[..., asked] / least[asked], 1.0)
        worth = worth + share @ (COVERED * urgency[asked])
        twice = (p.times[columns] > 1) & (urgency > 1)
        if twice.any():
            times = np.minimum(days_trained[..., twice], p.times[columns][twice])
            worth = worth + times @ (TWICE_TRAINED * urgency[twice])
        # Linear algebra libraries differ in the last digits; ties must not.
        return np.asarray(np.round(worth, 9))

    def of(self, sets: Sets) -> float:
        """Worth of a week."""
        value, share, spine, _, _ = self._options
        by_day = np.round(sets.T @ share, 9)
        crowded = _under(self._lines[0], sets.T @ value).sum(axis=0)
        worth = self._worth(crowded, by_day.sum(axis=0), (by_day >= 1.0).sum(axis=0))
        return float(worth - SPINE_COST * (spine @ sets).sum())

    def gains(self, sets: Sets, added: Sets) -> Floats:
        """What adding ``added`` sets to one cell at a time brings, shape (O, D)."""
        value, share, spine, _, _ = self._options
        by_day, values = np.round(sets.T @ share, 9), sets.T @ value
        crowded = _under(self._lines[0], values)
        more = values[None] + value[:, None] * added[:, :, None]
        week = crowded.sum(axis=0) + _under(self._lines[0], more) - crowded[None]
        shares = by_day[None] + share[:, None] * added[:, :, None]
        total = by_day.sum(axis=0) + shares - by_day[None]
        trained = by_day >= 1.0
        days = trained.sum(axis=0) + (shares >= 1.0) - trained[None]
        base = self.of(sets)
        return np.asarray(
            self._worth(week, total, days)
            - SPINE_COST * ((spine @ sets).sum() + spine[:, None] * added)
            - base
        )

    def seconds(self, sets: Sets, added: Sets) -> Floats:
        """Seconds that adding ``added`` sets takes, shape (O, D)."""
        _, _, _, fixed, per_set = self._options
        return np.asarray(fixed[:, None] * (sets == 0) + per_set[:, None] * added)
