"""From one working set to effective sets, and from effective sets to growth.

All functions are pure, broadcast over arrays, and take their coefficients from
:mod:`setwright.response.factors`, where each has its source and its uncertainty.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import ArrayLike, NDArray

from setwright.response.factors import CENTRAL, Coefficients
from setwright.response.person import Person, rate

Array = NDArray[Any]

REFERENCE_SETS = 9.0
"""Weekly sets of the typical trial (three sets of three exercises or days; common practice)."""

SMALLEST_STUDIED_SETS = 2.0
"""Weekly sets below which growth falls straight to none: single sets, two days a week."""


def effort_factor(rir: ArrayLike, c: Coefficients = CENTRAL) -> Array:
    """Value of a set by its repetitions in reserve: 1 at failure, falling, steeper above 5.

    Args:
        rir: real repetitions in reserve; below 0 counts as failure.
        c: coefficients.

    Returns:
        Factor 0 to 1.

    Sources: rir-meta-regression-2024, proximity-failure-hypertrophy-meta-2023,
    failure-vs-1-2-rir-trial-2024.
    """
    reserve = np.maximum(np.asarray(rir), 0.0)
    return np.asarray(1.0 / (1.0 + (reserve / c["effort half"]) ** c["effort power"]))


def reps_factor(reps: ArrayLike, compound: ArrayLike, c: Coefficients = CENTRAL) -> Array:
    """Value of a set by its repetitions: flat from about 5 to 30, falling outside.

    Args:
        reps: repetitions done.
        compound: whether the exercise is a compound.
        c: coefficients.

    Returns:
        Factor 0 to 1.

    Sources: load-20-40-60-80-percent-trial-2018, load-low-25-35-vs-8-12-reps-trained-2015,
    low-vs-high-load-meta-2017, volume-matched-loads-meta-2022.
    """
    done = np.maximum(np.asarray(reps), 1e-6)
    half = np.where(compound, c["light half compound"], c["light half"])
    light = (done / half) ** 2
    light = light * light * light
    heavy = (c["heavy half"] / done) ** 2
    return np.asarray(1.0 / ((1.0 + light) * (1.0 + heavy)))


def stretch_factor(
    stretch: ArrayLike, whole_partials: ArrayLike = False, c: Coefficients = CENTRAL
) -> Array:
    """Value of a set by the load on the part where it is long; 1 at a stretch of a half.

    Args:
        stretch: 0 to 1, as in an exercise's profile.
        whole_partials: every repetition is a lengthened partial.
        c: coefficients.

    Returns:
        Factor around 1.

    Sources: muscle-length-regional-meta-2024, partials-long-vs-short-meta-2025,
    rom-partial-vs-full-bayes-meta-2023, lengthened-partials-vs-full-rom-trained-2025.
    """
    bonus = np.where(whole_partials, c["partials bonus"], 0.0)
    return np.asarray((1.0 + c["stretch slope"] * (np.asarray(stretch) - 0.5)) * (1.0 + bonus))


def rest_factor(rest_s: ArrayLike, compound: ArrayLike, c: Coefficients = CENTRAL) -> Array:
    """Value of a set by the rest, besides the repetitions that rest costs or keeps.

    Args:
        rest_s: seconds between sets.
        compound: whether the exercise is a compound.
        c: coefficients.

    Returns:
        Factor 0 to 1.

    Sources: rest-hypertrophy-bayes-meta-2024, rest-volume-load-matched-trial-2022,
    rest-1-vs-3-min-trained-trial-2016.
    """
    decay = np.where(compound, c["rest decay compound"], c["rest decay"])
    return np.asarray(1.0 - c["rest cost"] * np.exp(-np.asarray(rest_s) / decay))


def set_quality(
    reps: ArrayLike,
    rir: ArrayLike,
    rest_s: ArrayLike,
    compound: ArrayLike,
    kept: ArrayLike = 1.0,
    c: Coefficients = CENTRAL,
) -> Array:
    """Value of a set that does not depend on the part: effort, repetitions, rest, fatigue.

    Args:
        reps: repetitions done.
        rir: real repetitions in reserve.
        rest_s: seconds between sets.
        compound: whether the exercise is a compound.
        kept: repetitions possible over those of the fresh muscle, 0 to 1.
        c: coefficients.

    Returns:
        Factor 0 to 1.
    """
    return np.asarray(
        effort_factor(rir, c)
        * reps_factor(reps, compound, c)
        * rest_factor(rest_s, compound, c)
        * np.asarray(kept) ** c["kept power"]
    )


def set_value(
    shares: ArrayLike,
    stretch: ArrayLike,
    reps: ArrayLike,
    rir: ArrayLike,
    rest_s: ArrayLike,
    compound: ArrayLike,
    whole_partials: ArrayLike = False,
    kept: ArrayLike = 1.0,
    c: Coefficients = CENTRAL,
) -> Array:
    """Effective sets one working set is worth to each part, before crowding.

    Args:
        shares: share of each part, shape (P,), or (E, P) for many exercises.
        stretch: load on each part where it is long, same shape.
        reps: repetitions done; a number, or (E, 1).
        rir: real repetitions in reserve; likewise.
        rest_s: seconds between sets; likewise.
        compound: whether the exercise is a compound; likewise.
        whole_partials: every repetition is a lengthened partial; likewise.
        kept: repetitions possible over those of the fresh muscle, 0 to 1; likewise.
        c: coefficients.

    Returns:
        Effective sets, shape of ``shares``.
    """
    return np.asarray(
        np.asarray(shares)
        * stretch_factor(stretch, whole_partials, c)
        * set_quality(reps, rir, rest_s, compound, kept, c)
    )


def session_crowding(v: ArrayLike, c: Coefficients = CENTRAL) -> Array:
    """Effective sets of one session after diminishing returns within it.

    The first sets count in full; then each further set counts less, down to nothing at the
    plateau. Concave and non-decreasing.

    Args:
        v: effective sets of a part in one session before crowding, 0 or more.
        c: coefficients.

    Returns:
        Effective sets, shape of ``v``.

    Sources: session-volume-puos-2025.
    """
    full = c["crowding start"]
    width = c["crowding flat"] - full
    sets = np.asarray(v)
    over = np.minimum(np.maximum(sets - full, 0.0), width)
    return np.asarray(np.minimum(sets, full) + over - over * over / (2.0 * width))


def dose_shape(v: ArrayLike, c: Coefficients = CENTRAL) -> Array:
    """Growth at weekly effective sets over growth at the reference dose.

    A square root with a head start; straight to zero below the smallest studied dose.

    Args:
        v: effective sets a week, 0 or more.
        c: coefficients.

    Returns:
        Ratio, 1 at :data:`REFERENCE_SETS`; shape of ``v``.

    Sources: weekly-volume-functional-form-2024, weekly-volume-meta-2017-per-set,
    single-vs-multiple-sets-meta-2010, weekly-volume-frequency-meta-regression-2024.
    """
    sets = np.asarray(v)
    start = c["first sets"]
    root = start + np.sqrt(np.maximum(sets, SMALLEST_STUDIED_SETS))
    ramp = np.minimum(sets / SMALLEST_STUDIED_SETS, 1.0)
    return np.asarray(ramp * root / (start + np.sqrt(REFERENCE_SETS)))


def week_growth(v: ArrayLike, person: Person, c: Coefficients = CENTRAL) -> Array:
    """Expected growth of a part, percent of its size a week.

    Args:
        v: effective sets a week after crowding.
        person: whose growth.
        c: coefficients.

    Returns:
        Percent a week, shape of ``v``.
    """
    return np.asarray(rate(person, c) * dose_shape(v, c))


def crowding_points(segments: int = 5, top: float = 40.0) -> tuple[Array, Array, float]:
    """Breakpoints of :func:`session_crowding` for a piecewise-linear model.

    Args:
        segments: straight pieces between the full count and the plateau, 1 or more.
        top: last abscissa, beyond the plateau.

    Returns:
        Abscissae and ordinates (effective sets), and the largest error in sets; the chords never
        overestimate.
    """
    full, flat = CENTRAL["crowding start"], CENTRAL["crowding flat"]
    bend = np.linspace(full, flat, segments + 1)
    x = np.concatenate(([0.0], bend, [top]))
    step = (flat - full) / segments
    return x, session_crowding(x), step * step / (8.0 * (flat - full))


def growth_points(
    person: Person, relative_error: float = 0.005, top: float = 40.0
) -> tuple[Array, Array, float]:
    """Breakpoints of :func:`week_growth` for a piecewise-linear model.

    Args:
        person: whose growth.
        relative_error: largest error over growth at the reference dose.
        top: last abscissa, effective sets a week, above the smallest studied dose.

    Returns:
        Abscissae (effective sets a week), ordinates (percent a week), and the largest error in
        percent a week; the chords never overestimate.
    """
    tolerance = relative_error * (CENTRAL["first sets"] + REFERENCE_SETS**0.5)
    roots = [SMALLEST_STUDIED_SETS**0.5]
    while roots[-1] < top**0.5:
        # The chord of a square root from s^2 to (s + d)^2 is off by at most d^2 / (4 (2 s + d)).
        s = roots[-1]
        roots.append(s + 2 * tolerance + (4 * tolerance**2 + 8 * tolerance * s) ** 0.5)
    x = np.concatenate(([0.0], np.square(roots[:-1]), [top]))
    return x, week_growth(x, person), relative_error * float(rate(person))
