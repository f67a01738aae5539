"""Load sharing: which activations balance the moments a movement asks for, at the least cost.

Statics of one point of the range: every element (a muscle or a piece of one) gives each equation
its moment at full activation times its activation, a reserve may help, and together they must equal
the moment wanted. Many sharings do; the one taken has the least sum of activations to a power.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from setwright.mechanics.interior import Floats, Rows, minimise

__all__ = ["CLOSE", "Shared", "share"]

# An equilibrium counts as held when what is missing is below this part of the moment.
CLOSE = 1e-6
# Problems solved together: enough to keep numpy busy, few enough to stay in the cache.
TOGETHER = 256
# Mean complementarity at which a sharing is done, in units of the cost.
GAP = 1e-13
# Softness of the equations when they cannot all be met and the closest answer is wanted; the later
# ones for what the first misses by less than AT_LIMIT of the moment.
GIVES = (1e-7, 1e-9, 1e-11, 1e-13)
AT_LIMIT = 1e-1
# A moment of this part of the largest capacity is as good as none.
FAINT = 1e-10
# A bound whose price outweighs the distance to it this much is met exactly.
MET = 1e-8


@dataclass(frozen=True)
class Shared:
    """How B problems of M elements and K equations share their moments.

    Attributes:
        activations: (B, M), 0 to 1 exactly.
        reserve: (B, K) reserve moments, N·m, within their limits.
        residual: (B,) size of the moment left unbalanced, N·m.
        feasible: (B,) the moment is balanced to a millionth of its size, or to a ten-billionth of
            the largest capacity where that is more.
    """

    activations: Floats
    reserve: Floats
    residual: Floats
    feasible: NDArray[np.bool_]


def share(
    capacity: ArrayLike,
    moment: ArrayLike,
    reserve: ArrayLike = 0.0,
    exponent: ArrayLike = 3.0,
    weights: ArrayLike | None = None,
    *,
    reserve_cost: float = 0.3,
) -> Shared:
    """Minimise ``sum w a^p + reserve_cost sum (r / R)^2`` under ``G a + r = moment``.

    With the default cost and power a reserve of the same size as a muscle is used up by the time
    that muscle works at 0.45 of its capacity: before muscles near their limit, yet not for free.
    A moment beyond what elements and reserves can give yields the closest moment they can.

    Args:
        capacity: G, (B, K, M) moment each element gives at full activation, N·m.
        moment: (B, K) or (K,) moment to balance, N·m.
        reserve: R, largest reserve moment of an equation (0 = none), N·m; (B, K), (K,) or one.
        exponent: p, 1.2 to 6; one, or (B,).
        weights: w > 0, (M,) or (B, M); all equal without.
        reserve_cost: cost of a fully used reserve, that of a fully active element being 1.

    Raises:
        ValueError: shapes that do not fit, a figure that is not finite or outside its range.

    Sources: muscle stress to a power, from endurance: "A physiologically based criterion of muscle
    force prediction in locomotion", Journal of Biomechanics, 1981. The power of 3, the size and the
    cost of reserves: common practice. More in docs/load-sharing.md.
    """
    full = np.asarray(capacity, dtype=np.float64)
    if full.ndim != 3:
        raise ValueError(f"capacity must be (problems, equations, elements), not {full.shape}")
    problems, equations, elements = full.shape
    wanted = spread("moment", moment, (problems, equations))
    limit = spread("reserve", reserve, (problems, equations), least=0.0)
    power = spread("exponent", np.reshape(exponent, (-1, 1)), (problems, 1), least=1.2, most=6.0)
    weight = spread("weights", 1.0 if weights is None else weights, (problems, elements))
    if not np.isfinite(full).all():
        raise ValueError("capacity has a figure that is not finite")
    if (weight <= 0).any() or not reserve_cost > 0:
        raise ValueError("weights and reserve_cost must be above 0")

    together = np.concatenate([full, limit[:, :, None] * np.eye(equations)], axis=2)
    used = np.zeros((problems, elements + equations))
    faint = FAINT * np.abs(together).max(axis=(1, 2), initial=0.0)
    norm = np.sqrt((wanted**2).sum(axis=1))
    asked = np.flatnonzero(norm > faint)
    mean = weight.sum(axis=1, keepdims=True) / elements if elements else np.ones((problems, 1))
    cost = _Cost(weight / mean, power, reserve_cost / mean)
    for start in range(0, len(asked), TOGETHER):
        rows = asked[start : start + TOGETHER]
        used[rows] = _balanced(together[rows], wanted[rows], cost.of(rows))
    left = np.matmul(together, used[:, :, None])[:, :, 0] - wanted
    residual = np.sqrt((left**2).sum(axis=1))
    return Shared(
        used[:, :elements],
        used[:, elements:] * limit,
        residual,
        residual <= np.maximum(CLOSE * norm, faint),
    )


def spread(
    name: str,
    value: ArrayLike,
    shape: tuple[int, int],
    least: float = -np.inf,
    most: float = np.inf,
) -> Floats:
    """A figure or table spread to (B, n), every entry finite and within ``least`` to ``most``.

    Raises:
        ValueError: naming the argument, when it does not fit.
    """
    table = np.asarray(value, dtype=np.float64)
    try:
        table = np.broadcast_to(table, shape)
    except ValueError:
        raise ValueError(f"{name} of shape {table.shape} does not fit {shape}") from None
    if not np.isfinite(table).all():
        raise ValueError(f"{name} has a figure that is not finite")
    if table.size and (table.min() < least or table.max() > most):
        raise ValueError(f"{name} must be within {least:g} to {most:g}")
    return table


@dataclass(frozen=True)
class _Cost:
    """Cost of activations (B, M) and of reserves as parts of their limits (B, K)."""

    weight: Floats
    power: Floats
    reserve: Floats

    def of(self, rows: Rows) -> _Cost:
        """The cost of some of the problems."""
        return _Cost(self.weight[rows], self.power[rows], self.reserve[rows])

    def slope(self, x: Floats, rows: Rows) -> tuple[Floats, Floats]:
        """Gradient and curvature at x (b, M + K)."""
        elements = self.weight.shape[1]
        active, power, reserve = x[:, :elements], self.power[rows], self.reserve[rows]
        bend = self.weight[rows] * power * active ** (power - 2)
        gradient, curvature = np.empty_like(x), np.empty_like(x)
        gradient[:, :elements] = bend * active
        curvature[:, :elements] = bend * (power - 1)
        gradient[:, elements:] = 2 * reserve * x[:, elements:]
        curvature[:, elements:] = 2 * reserve
        return gradient, curvature


def _balanced(together: Floats, wanted: Floats, cost: _Cost) -> Floats:
    """Activations and used parts of the reserves, (b, M + K), for moments that are not all zero."""
    elements = cost.weight.shape[1]
    equations = wanted.shape[1]
    lower = np.concatenate([np.zeros(elements), -np.ones(equations)])
    upper = np.ones(elements + equations)
    size = np.sqrt((together**2).sum(axis=2))
    size = np.where(size > 0, size, 1.0)
    norm = np.sqrt((wanted**2).sum(axis=1))
    found = minimise(
        together / size[:, :, None],
        wanted / size,
        lower,
        upper,
        cost.slope,
        closeness=0.1 * CLOSE * norm / size.max(axis=1),
        gap=GAP,
    )
    used = _exact(found.x, found.below, found.above, lower, upper)
    failed = np.flatnonzero(~found.done)
    if len(failed):
        used[failed] = _closest(together[failed], wanted[failed], cost.of(failed), lower, upper)
    # What moves nothing costs only: an element without arm or force rests.
    return np.where((together != 0).any(axis=1), used, 0.0)


def _closest(together: Floats, wanted: Floats, cost: _Cost, lower: Floats, upper: Floats) -> Floats:
    """The same where the moment is at the limit or beyond: as close to it as there is, in N·m."""
    norm = np.sqrt((wanted**2).sum(axis=1))
    scale = norm[:, None]
    matrix, goal = together / scale[:, :, None], wanted / scale
    used = np.zeros((len(wanted), len(upper)))
    rows = np.arange(len(wanted))
    for give in GIVES:
        found = minimise(
            matrix[rows],
            goal[rows],
            lower,
            upper,
            cost.of(rows).slope,
            closeness=np.full(len(rows), 1e-2 * CLOSE),
            gap=GAP,
            give=give,
        )
        used[rows] = _exact(found.x, found.below, found.above, lower, upper)
        error = goal[rows] - np.matmul(matrix[rows], used[rows, :, None])[:, :, 0]
        part = np.sqrt((error**2).sum(axis=1))
        rows = rows[(part > 0.1 * CLOSE) & (part < AT_LIMIT)]
        if not len(rows):
            break
    return used


def _exact(x: Floats, below: Floats, above: Floats, lower: Floats, upper: Floats) -> Floats:
    """The same point with every bound that carries a price met exactly."""
    x = np.where(x - lower < MET * below, lower, x)
    return np.where(upper - x < MET * above, upper, x)
