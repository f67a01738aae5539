"""The tiny week once more, as a mixed-integer programme for another solver."""

from __future__ import annotations

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from tiny_week import curves

from setwright.design.model import COVERED, SPINE_COST, TWICE_TRAINED
from setwright.design.problem import Problem


class _Rows:
    """Variables by name, and rows of the form sum(coefficient * variable) <= limit."""

    def __init__(self) -> None:
        self.gain: list[float] = []
        self.most: list[float] = []
        self.whole: list[int] = []
        self.rows: list[tuple[dict[int, float], float]] = []

    def variable(self, gain: float, most: float, *, whole: bool = False) -> int:
        self.gain.append(gain)
        self.most.append(most)
        self.whole.append(int(whole))
        return len(self.gain) - 1

    def at_most(self, terms: dict[int, float], limit: float) -> None:
        self.rows.append((terms, limit))

    def best(self) -> float:
        matrix = np.zeros((len(self.rows), len(self.gain)))
        for number, (terms, _) in enumerate(self.rows):
            for column, coefficient in terms.items():
                matrix[number, column] = coefficient
        found = milp(
            -np.array(self.gain),
            integrality=self.whole,
            bounds=Bounds(0, np.array(self.most)),
            constraints=LinearConstraint(matrix, -np.inf, [limit for _, limit in self.rows]),
            options={"mip_rel_gap": 1e-6},
        )
        assert found.success, found.message
        return float(-found.fun)


def best_by_milp(one: Problem) -> float:
    """The optimum by HiGHS."""
    rows = _Rows()
    crowding, growth = curves(one)
    days = range(len(one.minutes))
    numbers = range(len(one.options))
    sets, used = {}, {}
    for o, option in enumerate(one.options):
        for d in days:
            sets[o, d] = x = rows.variable(-SPINE_COST * option.spine, one.most_sets, whole=True)
            used[o, d] = u = rows.variable(0, 1, whole=True)
            rows.at_most({x: 1, u: -one.most_sets}, 0)
            rows.at_most({x: -1, u: one.least_sets}, 0)
    for d in days:
        clock = {sets[o, d]: round(one.options[o].per_set_s) for o in numbers}
        clock |= {used[o, d]: round(one.options[o].fixed_s) for o in numbers}
        rows.at_most(clock, 60 * one.minutes[d])
        rows.at_most({sets[o, d]: one.options[o].spine for o in numbers}, one.spine_session)
    for p in range(len(one.weights)):
        share = [float(option.share[p]) for option in one.options]
        for d in days:
            rows.at_most({sets[o, d]: share[o] for o in numbers}, one.session_most)
        if one.weights[p] <= 0:
            continue
        worth = {(o, d): float(one.options[o].value[p]) for o in numbers for d in days}
        crowded = [rows.variable(0, 12) for _ in days]
        for d in days:
            for slope, intercept in [(1.0, 0.0), *crowding]:
                terms = {sets[o, d]: -slope * worth[o, d] for o in numbers}
                rows.at_most({**terms, crowded[d]: 1}, intercept)
        grown = rows.variable(one.weights[p], 2)
        for slope, intercept in growth:
            rows.at_most({grown: 1, **dict.fromkeys(crowded, -slope)}, intercept)
        least, urgency = one.least[p], one.urgency[p]
        covered = rows.variable(COVERED * urgency / least, least)
        rows.at_most({covered: 1, **{sets[o, d]: -share[o] for o in numbers for d in days}}, 0)
        if one.times[p] > 1 and urgency > 1:
            times = rows.variable(TWICE_TRAINED * urgency, one.times[p])
            trained = [rows.variable(0, 1, whole=True) for _ in days]
            for d in days:
                rows.at_most({trained[d]: 1, **{sets[o, d]: -share[o] for o in numbers}}, 0)
            rows.at_most({times: 1, **dict.fromkeys(trained, -1)}, 0)
    return rows.best()
