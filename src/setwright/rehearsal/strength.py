"""How many repetitions a load allows, and what a set says about the 1RM.

One curve per class of lift, ``reps = 1 + a (1 / fraction - 1)``: exactly one repetition at the
1RM, falling smoothly as the load rises. ``a`` comes from the coefficients file; docs/rehearsal.md
says from which cells.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike, NDArray

from setwright.exercises.model import RepCurve
from setwright.rehearsal.coefficients import COEFFICIENTS

Z80 = 1.2815515655446004
LEAST_FRACTION = 0.05

_CURVE = COEFFICIENTS.strength


@dataclass(frozen=True)
class OneRm:
    """A 1RM with its 80 % interval, kg.

    Attributes:
        median: best estimate.
        low: lower end of the 80 % interval.
        high: upper end.
        sd: standard deviation, kg.
    """

    median: float
    low: float
    high: float
    sd: float


@dataclass(frozen=True)
class KnownSet:
    """A set that was done: system load in kg, repetitions, repetitions in reserve."""

    load_kg: float
    reps: float
    rir: float = 0.0


def scale(curve: RepCurve = "general") -> float:
    """The curve's one constant ``a``: repetitions gained when the load is halved."""
    return _CURVE.a[curve]


def reps_at(fraction: ArrayLike, curve: RepCurve = "general") -> NDArray[np.float64]:
    """Mean repetitions to failure at a fraction of 1RM.

    Args:
        fraction: load over 1RM, any shape; above 1 the answer is 0 (the load cannot be lifted).
        curve: class of lift.

    Returns:
        Repetitions, same shape.
    """
    load = np.maximum(np.asarray(fraction, dtype=float), LEAST_FRACTION)
    reps = 1.0 + scale(curve) * (1.0 / load - 1.0)
    # A hair of tolerance: a fraction computed from one repetition may round to just above 1.
    return np.where(load > 1.0 + 1e-9, 0.0, np.maximum(reps, 1.0))


def reps_sd(fraction: ArrayLike, curve: RepCurve = "general") -> NDArray[np.float64]:
    """Standard deviation between people of ``reps_at``: a straight line that falls with load.

    Args:
        fraction: load over 1RM, any shape.
        curve: class of lift; the spread grows in step with the repetitions.
    """
    load = np.clip(np.asarray(fraction, dtype=float), LEAST_FRACTION, 1.0)
    line = _CURVE.sd_at_1rm + _CURVE.sd_slope * (1.0 - load)
    return np.asarray(line * (scale(curve) / scale("general")))


def fraction_at(reps: ArrayLike, curve: RepCurve = "general") -> NDArray[np.float64]:
    """Fraction of 1RM that can be lifted ``reps`` times; the inverse of ``reps_at``.

    Args:
        reps: repetitions to failure, 1 or more, any shape.
        curve: class of lift.
    """
    count = np.maximum(np.asarray(reps, dtype=float), 1.0)
    return np.asarray(1.0 / (1.0 + (count - 1.0) / scale(curve)))


def rir_sd(reps_to_failure: ArrayLike, rir: ArrayLike) -> NDArray[np.float64]:
    """Standard deviation of a call of repetitions in reserve.

    Grows with the square root of the repetitions left and with the length of the set, as in
    findings rir-accuracy-squat-70-percent-2021 and rir-accuracy-bench-75-percent-2023.

    Args:
        reps_to_failure: repetitions the set would have had at failure.
        rir: repetitions in reserve as called; 0 is a set to failure.
    """
    length = _CURVE.rir_sd_at_10 + _CURVE.rir_sd_slope * (
        np.asarray(reps_to_failure, dtype=float) - 10.0
    )
    left = np.sqrt(np.maximum(np.asarray(rir, dtype=float), 0.0))
    return np.asarray(
        np.maximum(np.maximum(length, _CURVE.rir_sd_least) * left, _CURVE.rir_sd_least)
    )


def one_rm(load_kg: float, reps: float, rir: float = 0.0, curve: RepCurve = "general") -> OneRm:
    """1RM from one set.

    Args:
        load_kg: system load: external load, plus the share of body mass that is lifted.
        reps: repetitions done, 1 or more.
        rir: repetitions that were left.
        curve: class of lift.
    """
    return one_rm_from([KnownSet(load_kg, reps, rir)], curve)


def one_rm_from(sets: Sequence[KnownSet], curve: RepCurve = "general") -> OneRm:
    """1RM from several sets of one person on one exercise.

    Each set is weighted by the inverse of its variance. Errors of the RIR calls average out; the
    person's own departure from the curve is common to all sets and does not.

    Raises:
        ValueError: no set, a load not above 0, or fewer than one repetition.
    """
    if not sets:
        raise ValueError("a 1RM needs at least one set")
    if any(one.load_kg <= 0 or one.reps < 1 or one.rir < 0 for one in sets):
        raise ValueError("a set needs a load above 0, a repetition or more, and no negative RIR")
    load = np.array([one.load_kg for one in sets])
    rir = np.array([one.rir for one in sets])
    failure = np.array([one.reps for one in sets]) + rir
    fraction = fraction_at(failure, curve)
    estimate = load / fraction
    per_rep = load / scale(curve)
    curve_sd = per_rep * reps_sd(fraction, curve)
    call_sd = per_rep * rir_sd(failure, rir)
    weight = 1.0 / (curve_sd**2 + call_sd**2)
    weight = weight / weight.sum()
    median = float(weight @ estimate)
    sd = float(np.hypot(weight @ curve_sd, np.sqrt(weight**2 @ call_sd**2)))
    # A 1RM is at least the heaviest load that was lifted.
    low = max(median - Z80 * sd, float(load.max()))
    return OneRm(max(median, low), low, max(median + Z80 * sd, low), sd)


def load_for(one_rm_kg: float, reps: float, rir: float = 0.0, curve: RepCurve = "general") -> float:
    """System load (kg) that leaves ``rir`` repetitions after ``reps``."""
    return one_rm_kg * float(fraction_at(reps + rir, curve))


def system_load(external_kg: float, body_mass_kg: float, share: float, hands: int = 1) -> float:
    """Load the muscles move: the lifted share of body mass plus what is held.

    Args:
        external_kg: load as written, a hand; negative for assistance.
        body_mass_kg: mass of the person.
        share: share of body mass that is lifted, 0 to 1.
        hands: 2 when a load is held in each hand.
    """
    return share * body_mass_kg + hands * external_kg


def external_load(system_kg: float, body_mass_kg: float, share: float, hands: int = 1) -> float:
    """The inverse of ``system_load``."""
    return (system_kg - share * body_mass_kg) / hands
