"""The largest load elements and reserves can hold in a posture: where a movement is hardest."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from setwright.mechanics.interior import Floats, Rows, minimise
from setwright.mechanics.sharing import CLOSE, TOGETHER, share, spread

__all__ = ["Strongest", "strongest"]

# Mean complementarity at which a load is found, as a part of the upper bound it started from.
GAP = 1e-11
# Room above the upper bound, so that it does not bind together with what it was derived from.
ROOM = 1.25


@dataclass(frozen=True)
class Strongest:
    """The largest load of B problems.

    Attributes:
        load: (B,) in the unit the moments were given per; infinite when the load asks for no
            moment, 0 when the body alone cannot be held.
        feasible: (B,) the body alone can be held.
        deficit: (B,) size of the part of the body's moment that cannot be held, N·m; 0 if it can.
    """

    load: Floats
    feasible: NDArray[np.bool_]
    deficit: Floats


def strongest(
    capacity: ArrayLike, body: ArrayLike, load: ArrayLike, reserve: ArrayLike = 0.0
) -> Strongest:
    """The largest ``lam >= 0`` with ``G a + r = body + lam load``, to a millionth.

    Args:
        capacity: G, (B, K, M) moment each element gives at full activation, N·m.
        body: (B, K) or (K,) moment the body's own weight asks for, N·m.
        load: (B, K) or (K,) moment a unit of load asks for, N·m.
        reserve: R, largest reserve moment of an equation (0 = none), N·m; (B, K), (K,) or one.

    Raises:
        ValueError: shapes that do not fit or a figure that is not finite.
    """
    full = np.asarray(capacity, dtype=np.float64)
    alone = share(full, body, reserve, exponent=2.0)
    problems, equations, _elements = full.shape
    fixed = spread("body", body, (problems, equations))
    unit = spread("load", load, (problems, equations))
    limit = spread("reserve", reserve, (problems, equations), least=0.0)
    together = np.concatenate([full, limit[:, :, None] * np.eye(equations)], axis=2)

    found = np.where(np.abs(unit).max(axis=1) > 0, 0.0, np.inf)
    found[~alone.feasible] = 0.0
    bound = _bound(full, limit, fixed, unit)
    asked = np.flatnonzero(alone.feasible & np.isfinite(bound) & (bound > 0))
    for start in range(0, len(asked), TOGETHER):
        rows = asked[start : start + TOGETHER]
        found[rows] = _largest(together[rows], fixed[rows], unit[rows], bound[rows])
    return Strongest(found, alone.feasible, np.where(alone.feasible, 0.0, alone.residual))


def _bound(full: Floats, limit: Floats, fixed: Floats, unit: Floats) -> Floats:
    """(B,) the load at which one equation by itself gives way; infinite without a load."""
    most = np.maximum(full, 0.0).sum(axis=2) + limit - fixed
    least = np.minimum(full, 0.0).sum(axis=2) - limit - fixed
    room = np.where(unit > 0, most, least)
    each = np.divide(room, unit, out=np.full_like(room, np.inf), where=unit != 0)
    return np.asarray(each.min(axis=1))


def _largest(together: Floats, fixed: Floats, unit: Floats, bound: Floats) -> Floats:
    """(b,) the largest load, ``bound`` above it and above 0; the load is the last variable."""
    problems, equations, size = together.shape
    elements = size - equations
    top = ROOM * bound
    column = -(unit * top[:, None])[:, :, None]
    matrix = np.concatenate([together, column], axis=2)
    length = np.sqrt((matrix**2).sum(axis=2))
    length = np.where(length > 0, length, 1.0)
    lower = np.concatenate([np.zeros(elements), -np.ones(equations), np.zeros(1)])
    upper = np.ones(size + 1)

    def slope(x: Floats, _rows: Rows) -> tuple[Floats, Floats]:
        downhill, flat = np.zeros_like(x), np.zeros_like(x)
        downhill[:, -1] = -1.0
        return downhill, flat

    optimum = minimise(
        matrix / length[:, :, None],
        fixed / length,
        lower,
        upper,
        slope,
        closeness=np.full(problems, 1e-4 * CLOSE),
        gap=GAP,
    )
    return np.asarray(top * optimum.x[:, -1])
