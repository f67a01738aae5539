"""Load sharing in batches beside scipy's general optimiser, on the same leg-like problems.

Twenty points of a range of motion, 45 elements, 6 equations (hip 3, knee, ankle, foot), at 90 % of
the largest load of each point, cubed activations. scipy solves point by point with SLSQP, from all
activations at one half, with exact gradients, equations scaled to unit length, ftol 1e-10 and at
most 1,000 iterations; the largest loads with linprog (HiGHS, its own tolerances).

One thread for the linear algebra, or scipy's small problems lose their time waiting for a second:
OPENBLAS_NUM_THREADS=1 python benchmarks/load_sharing_speed.py
"""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import Any

import numpy as np
from scipy.optimize import linprog, minimize

from setwright.mechanics.sharing import share
from setwright.mechanics.strongest import strongest

POINTS, ELEMENTS, EQUATIONS, DRAWS = 20, 45, 6, 200
RESERVE = np.array([0.0, 40.0, 40.0, 0.0, 0.0, 20.0])
# Which equations an element crosses and how often: one- and two-joint muscles of hip, knee, ankle.
CROSSES = (((0, 1, 2), 20), ((0, 1, 2, 3), 8), ((3,), 5), ((3, 4, 5), 3), ((4, 5), 9))


def leg(seed: int) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Capacities (points, equations, elements), body and load moments (points, equations), N·m."""
    rng = np.random.default_rng(seed)
    along = np.linspace(0, 1, POINTS)[:, None]
    capacity = np.zeros((POINTS, EQUATIONS, ELEMENTS))
    element = 0
    for equations, count in CROSSES:
        for _ in range(count):
            force = rng.uniform(200, 2500) * (1 - rng.uniform(0, 0.6) * (along - rng.random()) ** 2)
            arm = rng.normal(0, 0.04, len(equations)) * (1 + rng.normal(0, 0.3) * along)
            capacity[:, equations, element] = arm * force
            element += 1
    # A squat-like demand: the two ends of hip and knee, a little at the ankle and in the frontal
    # plane; what the body asks is a third of what 1 unit of load asks.
    bend = np.sin(np.pi / 2 * along[:, 0] + 0.2)
    load = np.stack([bend, 0.1 * bend, 0 * bend, -0.8 * bend, 0.2 * bend, 0 * bend], axis=1)
    return capacity, load * 30, load * 90


def seconds(work: Callable[[], Any], times: int) -> tuple[float, Any]:
    """Best wall time of some runs (other work on the machine only adds), and what came back."""
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        result = work()
        spent.append(time.perf_counter() - start)
    return min(spent), result


def general(capacity: np.ndarray, moment: np.ndarray, exponent: float) -> np.ndarray:
    """The same sharing by SLSQP, (points, elements)."""
    found = []
    for full, wanted in zip(capacity, moment, strict=True):
        table = np.concatenate([full, np.diag(RESERVE)], axis=1)
        size = np.linalg.norm(table, axis=1)
        table, goal = table / size[:, None], wanted / size

        def cost(x: np.ndarray) -> float:
            return float((x[:ELEMENTS] ** exponent).sum() + 0.3 * (x[ELEMENTS:] ** 2).sum())

        def gradient(x: np.ndarray) -> np.ndarray:
            slope = exponent * x[:ELEMENTS] ** (exponent - 1)
            return np.concatenate([slope, 0.6 * x[ELEMENTS:]])

        end = minimize(
            cost,
            np.concatenate([np.full(ELEMENTS, 0.5), np.zeros(EQUATIONS)]),
            jac=gradient,
            method="SLSQP",
            bounds=[(0, 1)] * ELEMENTS + [(-1, 1)] * EQUATIONS,
            constraints={
                "type": "eq",
                "fun": lambda x, t=table, g=goal: t @ x - g,
                "jac": lambda x, t=table: t,
            },
            options={"ftol": 1e-10, "maxiter": 1000},
        )
        if not end.success:
            raise RuntimeError(f"SLSQP gave up: {end.message}")
        found.append(end.x[:ELEMENTS])
    return np.array(found)


def linear(capacity: np.ndarray, body: np.ndarray, load: np.ndarray) -> np.ndarray:
    """The largest loads by linprog, (points,)."""
    found = []
    for full, fixed, unit in zip(capacity, body, load, strict=True):
        table = np.concatenate([full, np.diag(RESERVE), -unit[:, None]], axis=1)
        goal = np.zeros(table.shape[1])
        goal[-1] = -1
        bounds = [(0, 1)] * ELEMENTS + [(-1, 1)] * EQUATIONS + [(0, None)]
        found.append(linprog(goal, A_eq=table, b_eq=fixed, bounds=bounds).x[-1])
    return np.array(found)


def main() -> None:
    ratios, load_ratios, gaps, load_gaps = [], [], [], []
    for seed in range(5):
        capacity, body, load = leg(seed)
        ours_s, largest = seconds(
            lambda c=capacity, b=body, u=load: strongest(c, b, u, RESERVE), 21
        )
        theirs_s, reference = seconds(lambda c=capacity, b=body, u=load: linear(c, b, u), 3)
        moment = body + 0.9 * largest.load[:, None] * load
        share_s, shared = seconds(lambda c=capacity, m=moment: share(c, m, RESERVE), 21)
        general_s, other = seconds(lambda c=capacity, m=moment: general(c, m, 3.0), 3)
        ratios.append(general_s / share_s)
        load_ratios.append(theirs_s / ours_s)
        gaps.append(np.abs(shared.activations - other).max())
        load_gaps.append(np.abs(largest.load / reference - 1).max())
        print(
            f"leg {seed}: share {share_s * 1e3:.1f} ms, SLSQP {general_s * 1e3:.0f} ms;"
            f" largest load {ours_s * 1e3:.1f} ms, linprog {theirs_s * 1e3:.0f} ms;"
            f" all balanced: {bool(shared.feasible.all() and largest.feasible.all())}"
        )
    print(f"share: {min(ratios):.0f} to {max(ratios):.0f} times faster (target 20)")
    print(f"largest difference of an activation: {max(gaps):.1e} (target 0.01)")
    print(f"largest load: {min(load_ratios):.0f} to {max(load_ratios):.0f} times faster")
    print(f"largest relative difference of a load: {max(load_gaps):.1e}")

    capacity, body, load = leg(0)
    rng = np.random.default_rng(1)
    drawn = np.repeat(capacity, DRAWS, axis=0)
    drawn *= rng.lognormal(0, 0.15, (POINTS * DRAWS, 1, ELEMENTS))
    bodies, loads = np.repeat(body, DRAWS, axis=0), np.repeat(load, DRAWS, axis=0)
    load_s, largest = seconds(lambda: strongest(drawn, bodies, loads, RESERVE), 1)
    moment = bodies + 0.9 * largest.load[:, None] * loads
    exponents = rng.uniform(2, 4, POINTS * DRAWS)
    share_s, shared = seconds(lambda: share(drawn, moment, RESERVE, exponents), 1)
    print(
        f"{POINTS * DRAWS} problems: share {share_s:.2f} s, largest load {load_s:.2f} s;"
        f" balanced {shared.feasible.mean():.1%}"
    )


if __name__ == "__main__":
    main()
