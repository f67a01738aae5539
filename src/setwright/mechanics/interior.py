"""Many small convex programmes at once: separable cost, a few linear equations, boxed variables.

The load sharing of a movement is the same small problem at every point of the range and for every
draw of the uncertain figures. Solving all of them in one batch keeps numpy busy and Python idle.

The method is a primal-dual interior point search with a predictor and a corrector step: common
practice of numerical optimisation, written for many problems of a few equations each.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, fields

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Rows = NDArray[np.intp]
# Gradient and curvature of the cost, (b, N) each, for b of the problems named by their rows.
Slope = Callable[[Floats, Rows], tuple[Floats, Floats]]

# How much of the way to a bound a step may go.
NEARLY = 0.995
# Keeps the normal equations solvable when rows depend on each other; corrected at every step.
RIDGE = 1e-13
# Below this step nothing moves any more: the equations contradict each other.
STUCK = 1e-6
# Prices beyond this belong to equations that cannot be met.
LOST = 1e9
# Allowed slope of the cost that bounds and prices leave unbalanced.
EVEN = 1e-8
# How far complementarity may run ahead of the error that the bend of the cost has left.
BEHIND = 0.03


@dataclass(frozen=True)
class Optimum:
    """Where the search ended: B problems, N variables.

    Attributes:
        x: (B, N) the variables, strictly inside the box.
        below: (B, N) price of the lower bound.
        above: (B, N) price of the upper bound.
        done: (B,) the tolerances were reached.
    """

    x: Floats
    below: Floats
    above: Floats
    done: NDArray[np.bool_]


@dataclass(frozen=True)
class _Point:
    """A point of the search, for the b problems still under way.

    The gaps to the bounds are carried along and not taken from x: near a bound of 1 they are
    smaller than its last digit.
    """

    rows: Rows
    matrix: Floats
    wanted: Floats
    closeness: Floats
    low: Floats
    high: Floats
    below: Floats
    above: Floats
    price: Floats

    def of(self, some: NDArray[np.bool_]) -> _Point:
        """The same point for some of its problems."""
        return _Point(*(getattr(self, one.name)[some] for one in fields(self)))

    def mean(self) -> Floats:
        """(b,) mean complementarity."""
        total = (self.below * self.low + self.above * self.high).sum(axis=1)
        return np.asarray(total / (2 * self.low.shape[1]))

    def reach(self, step: _Step) -> Floats:
        """(b, 1) the longest step, at most 1, that keeps gaps and bound prices above 0."""
        worst = np.maximum(
            np.maximum(step.x / self.high, -step.x / self.low),
            np.maximum(-step.below / self.below, -step.above / self.above),
        ).max(axis=1)
        return np.asarray(np.minimum(1.0, NEARLY / np.maximum(worst, NEARLY))[:, None])

    def moved(self, step: _Step, far: Floats) -> _Point:
        """The point a step (b, 1) further."""
        way = far * step.x
        return _Point(
            self.rows,
            self.matrix,
            self.wanted,
            self.closeness,
            self.low + way,
            self.high - way,
            self.below + far * step.below,
            self.above + far * step.above,
            self.price + far * step.price,
        )


@dataclass(frozen=True)
class _Step:
    """A direction from a point."""

    x: Floats
    price: Floats
    below: Floats
    above: Floats


class _System:
    """The linearised conditions at a point, ready for any aim of complementarity."""

    def __init__(
        self, at: _Point, curvature: Floats, dual: Floats, primal: Floats, give: float
    ) -> None:
        self.at, self.dual, self.primal = at, dual, primal
        self.pull, self.push = at.below / at.low, at.above / at.high
        self.loose = 1.0 / (curvature + self.pull + self.push)
        self.weighed = at.matrix * self.loose[:, None, :]
        self.turned = at.matrix.transpose(0, 2, 1)
        normal = np.matmul(self.weighed, self.turned)
        diagonal = np.arange(normal.shape[1])
        normal[:, diagonal, diagonal] += give
        size = normal[:, diagonal, diagonal]
        self.scale = 1.0 / np.sqrt(np.where(size > 0, size, 1.0))
        normal *= self.scale[:, :, None] * self.scale[:, None, :]
        normal[:, diagonal, diagonal] += RIDGE
        self.normal = normal

    def step(self, low_aim: Floats, high_aim: Floats) -> _Step:
        """The step after which the products of gaps and prices have changed by these aims."""
        low_aim, high_aim = low_aim / self.at.low, high_aim / self.at.high
        free = low_aim - high_aim - self.dual
        right = (self.primal - _times(self.weighed, free)) * self.scale
        price = np.linalg.solve(self.normal, right[:, :, None])[:, :, 0] * self.scale
        x = self.loose * (_times(self.turned, price) + free)
        return _Step(x, price, low_aim - self.pull * x, high_aim + self.push * x)


def _times(matrix: Floats, vector: Floats) -> Floats:
    """(b, K, N) x (b, N) -> (b, K)."""
    return np.asarray(np.matmul(matrix, vector[:, :, None])[:, :, 0])


def minimise(
    matrix: Floats,
    wanted: Floats,
    lower: Floats,
    upper: Floats,
    slope: Slope,
    *,
    closeness: Floats,
    gap: float,
    give: float = 0.0,
    most: int = 60,
) -> Optimum:
    """Minimise a separable convex cost under ``matrix x = wanted`` and ``lower <= x <= upper``.

    Every problem takes its own steps and leaves the batch when it is done, so that none depends on
    its neighbours.

    Args:
        matrix: (B, K, N), rows scaled to about unit length.
        wanted: (B, K).
        lower: (N,) lower bounds.
        upper: (N,) upper bounds, each above the lower.
        slope: gradient and curvature (>= 0) of the cost, whose size is about 1, at a point.
        closeness: (B,) largest allowed error of an equation.
        gap: mean complementarity at which a problem is done.
        give: softness of the equations: 0 holds them exactly, otherwise an error e costs
            ``e^2 / (2 give)`` and a closest answer exists for contradictory equations.
        most: iterations before giving up.
    """
    problems, equations, _size = matrix.shape
    half = np.tile((upper - lower) / 2, (problems, 1))
    start = np.full_like(half, 0.5)
    prices = np.zeros((problems, equations))
    at = _Point(np.arange(problems), matrix, wanted, closeness, half, half, start, start, prices)
    end = Optimum(half + lower, start.copy(), start.copy(), np.zeros(problems, dtype=np.bool_))
    lost = np.zeros(problems, dtype=np.bool_)
    for turn in range(most + 1):
        x = np.where(at.low < at.high, lower + at.low, upper - at.high)
        gradient, curvature = slope(x, at.rows)
        dual = gradient - _times(at.matrix.transpose(0, 2, 1), at.price) - at.below + at.above
        primal = at.wanted - _times(at.matrix, x) - give * at.price
        mean = at.mean()
        dearest = np.abs(at.price).max(axis=1)
        # Where the answer leaves little choice prices grow, and with them what rounding leaves.
        allowed = np.maximum(1.0, dearest)
        done = (
            (np.abs(primal).max(axis=1) <= at.closeness)
            & (mean <= gap * allowed)
            & (np.abs(dual).max(axis=1) <= EVEN * allowed)
        )
        over = done | lost | (turn == most)
        if not give:
            over |= dearest > LOST
        if over.any():
            rows = at.rows[over]
            end.x[rows], end.done[rows] = x[over], done[over]
            end.below[rows], end.above[rows] = at.below[over], at.above[over]
            if over.all():
                break
            at = at.of(~over)
            curvature, dual, primal, mean, allowed = (
                one[~over] for one in (curvature, dual, primal, mean, allowed)
            )

        system = _System(at, curvature, dual, primal, give)
        low_gap, high_gap = at.below * at.low, at.above * at.high
        ahead = system.step(-low_gap, -high_gap)
        after = at.moved(ahead, at.reach(ahead)).mean()
        # Never beyond the goal, where figures get too small to divide by; nor far ahead of the
        # error that the bend of the cost has left, or a steep power overshoots.
        behind = np.minimum(BEHIND * np.abs(dual * at.low).max(axis=1), mean)
        aim = np.maximum(np.maximum((after / mean) ** 3 * mean, gap * allowed / 10), behind)
        step = system.step(
            aim[:, None] - low_gap - ahead.x * ahead.below,
            aim[:, None] - high_gap + ahead.x * ahead.above,
        )
        far = at.reach(step)
        at = at.moved(step, far)
        lost = ~(far[:, 0] > STUCK)
    return end
