"""Published equations for the 1RM, to hold our curve against. Not used by the rehearsal.

Sources: findings one-rm-equation-epley, -brzycki, -lander, -lombardi, -mayhew, -oconner, -wathan.
"""

from __future__ import annotations

from collections.abc import Callable
from math import exp

Equation = Callable[[float, float], float]


def epley(load_kg: float, reps: float) -> float:
    """1985; linear in repetitions."""
    return load_kg * (1 + reps / 30)


def brzycki(load_kg: float, reps: float) -> float:
    """1993; has no answer from 37 repetitions on.

    Raises:
        ValueError: 37 repetitions or more.
    """
    if reps >= 37:
        raise ValueError("the equation has no answer from 37 repetitions on")
    return load_kg * 36 / (37 - reps)


def lander(load_kg: float, reps: float) -> float:
    """1985; has no answer from 38 repetitions on.

    Raises:
        ValueError: 38 repetitions or more.
    """
    share = 101.3 - 2.67123 * reps
    if share <= 0:
        raise ValueError("the equation has no answer from 38 repetitions on")
    return 100 * load_kg / share


def lombardi(load_kg: float, reps: float) -> float:
    """1989; a power of the repetitions."""
    return float(load_kg * reps**0.10)


def mayhew(load_kg: float, reps: float) -> float:
    """1992; fitted to the bench press."""
    return 100 * load_kg / (52.2 + 41.9 * exp(-0.055 * reps))


def oconner(load_kg: float, reps: float) -> float:
    """1989; linear in repetitions."""
    return load_kg * (1 + 0.025 * reps)


def wathan(load_kg: float, reps: float) -> float:
    """1994; exponential in repetitions."""
    return 100 * load_kg / (48.8 + 53.8 * exp(-0.075 * reps))


EQUATIONS: dict[str, Equation] = {
    "Epley": epley,
    "Brzycki": brzycki,
    "Lander": lander,
    "Lombardi": lombardi,
    "Mayhew": mayhew,
    "O'Conner": oconner,
    "Wathan": wathan,
}
