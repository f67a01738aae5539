"""The coefficients of the response model: value, uncertainty and where each comes from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.floating]
Coefficients = Mapping[str, float | FloatArray]
"""Value of every coefficient by name: a float, or one value a draw with shape (draws,)."""


@dataclass(frozen=True)
class Coefficient:
    """One number of the response model.

    Attributes:
        value: central value.
        sd: standard deviation of what we do not know about it.
        low: least value a draw may take.
        high: largest value a draw may take.
        unit: unit of the value.
        meaning: what it does.
        sources: ids of findings, or ``common practice`` or ``from memory``.
        fitted: how the value follows from the sources.
    """

    value: float
    sd: float
    low: float
    high: float
    unit: str
    meaning: str
    sources: tuple[str, ...]
    fitted: str


COEFFICIENTS: Mapping[str, Coefficient] = MappingProxyType(
    {
        "effort half": Coefficient(
            6.2,
            1.4,
            3.5,
            12.0,
            "RIR",
            "repetitions in reserve at which a set is worth half of one to failure",
            (
                "rir-meta-regression-2024",
                "proximity-failure-hypertrophy-meta-2023",
                "failure-vs-nonfailure-meta-2022",
                "failure-vs-1-2-rir-trial-2024",
            ),
            "chosen so that 1 to 2 RIR equals failure and 4 to 6 RIR costs an effect size inside "
            "the published intervals; no numeric slope was readable",
        ),
        "effort power": Coefficient(
            3.0,
            0.4,
            2.0,
            4.5,
            "1",
            "how sharply the value of a set falls around the half point",
            ("rir-meta-regression-2024", "failure-vs-1-2-rir-trial-2024"),
            "chosen: flat near failure, steep from about 5 RIR",
        ),
        "light half": Coefficient(
            50.0,
            6.0,
            36.0,
            70.0,
            "repetitions",
            "repetitions at which a set of an isolation exercise is worth half",
            (
                "load-20-40-60-80-percent-trial-2018",
                "load-low-25-35-vs-8-12-reps-trained-2015",
                "low-vs-high-load-meta-2017",
            ),
            "25 to 35 repetitions equal 8 to 12; 20 % of 1RM, about 65 repetitions from memory, "
            "grew less than half",
        ),
        "light half compound": Coefficient(
            40.0,
            6.0,
            28.0,
            60.0,
            "repetitions",
            "the same for a compound exercise, where breath may end the set first",
            ("common practice",),
            "chosen between the isolation value and 30 repetitions",
        ),
        "heavy half": Coefficient(
            0.9,
            0.3,
            0.3,
            2.0,
            "repetitions",
            "repetitions at which a very heavy set is worth half",
            ("volume-matched-loads-meta-2022", "common practice"),
            "chosen: a few per cent lost at 4 repetitions, a fifth at 2",
        ),
        "stretch slope": Coefficient(
            0.84,
            0.245,
            -0.2,
            1.6,
            "1",
            "change in the value of a set from load on the short part to load on the long part",
            ("muscle-length-regional-meta-2024", "partials-long-vs-short-meta-2025"),
            "the weight of fibre length fitted to trials, 1.2 with SD 0.35 (docs/growth.md), times "
            "the 0.7 fibre lengths between the ends of the stretch scale",
        ),
        "partials bonus": Coefficient(
            0.05,
            0.10,
            -0.2,
            0.35,
            "1",
            "extra value of a set made wholly of lengthened partials",
            ("rom-partial-vs-full-bayes-meta-2023", "lengthened-partials-vs-full-rom-trained-2025"),
            "chosen: the pooled estimate favours them, its interval spans zero, and the trial in "
            "trained lifters found no difference",
        ),
        "rest cost": Coefficient(
            0.3,
            0.15,
            0.0,
            0.7,
            "1",
            "value lost with no rest at all, besides the repetitions lost",
            ("rest-hypertrophy-bayes-meta-2024", "rest-volume-load-matched-trial-2022"),
            "chosen: 5 % at 60 s, next to nothing from 2 min; growth was equal when 1 min was "
            "given the same volume",
        ),
        "rest decay": Coefficient(
            35.0,
            8.0,
            15.0,
            70.0,
            "s",
            "rest over which that loss falls to 37 %, isolation exercises",
            ("rest-hypertrophy-bayes-meta-2024",),
            "chosen: no visible gain beyond intermediate rests",
        ),
        "rest decay compound": Coefficient(
            50.0,
            12.0,
            20.0,
            100.0,
            "s",
            "the same for compound exercises",
            ("rest-hypertrophy-bayes-meta-2024", "rest-1-vs-3-min-trained-trial-2016"),
            "chosen longer than for isolations: thighs gained more from 3 min than from 1 min",
        ),
        "kept power": Coefficient(
            1.0,
            0.4,
            0.0,
            2.0,
            "1",
            "how the share of repetitions kept from set to set scales the value of a set",
            ("rest-volume-load-matched-trial-2022", "rest-hypertrophy-bayes-meta-2024"),
            "chosen: in proportion, which with the usual loss at 60 s gives the pooled 0.48 "
            "against 0.56",
        ),
        "crowding start": Coefficient(
            4.0,
            1.0,
            1.0,
            7.0,
            "sets",
            "fractional sets of a part in one session that count in full",
            ("session-volume-puos-2025", "common practice"),
            "chosen: the sessions of most trials, to which the weekly curve was fitted, lie there",
        ),
        "crowding flat": Coefficient(
            11.0,
            1.5,
            8.0,
            16.0,
            "sets",
            "fractional sets of a part in one session beyond which nothing is gained",
            ("session-volume-puos-2025", "volume-trial-5-vs-10-sets-per-exercise"),
            "published point of undetectable benefit",
        ),
        "rate": Coefficient(
            0.61,
            0.08,
            0.35,
            0.9,
            "percent a week",
            "growth of a beginner at the reference dose",
            ("rate-of-gain-by-status-open-data", "rate-size-gain-trials-derived"),
            "median of the open data; between-person spread is a coefficient of its own",
        ),
        "first sets": Coefficient(
            0.58,
            0.35,
            0.0,
            1.6,
            "square root of sets",
            "head start of the first sets of a week over a bare square root",
            (
                "single-vs-multiple-sets-meta-2010",
                "weekly-volume-meta-2017-category-gains",
                "weekly-volume-functional-form-2024",
            ),
            "solves 9.8 % at 13 against 5.4 % at 3 weekly sets (from memory) and agrees with "
            "0.24 to 0.34 to 0.44 for 1, 2 to 3 and 4 to 6 sets",
        ),
        "intermediate": Coefficient(
            0.65,
            0.12,
            0.3,
            1.0,
            "1",
            "growth of an intermediate over that of a beginner",
            ("rate-of-gain-by-status-open-data", "rate-size-gain-trials-derived"),
            "ratio of strength rates 1.04 to 1.60, and of the size rates about 0.6",
        ),
        "advanced": Coefficient(
            0.4,
            0.12,
            0.15,
            0.8,
            "1",
            "growth of an advanced lifter over that of a beginner",
            ("from memory",),
            "chosen: slower again; no trial of size in advanced lifters was read",
        ),
        "aged 40 to 59": Coefficient(
            0.95,
            0.08,
            0.6,
            1.2,
            "1",
            "growth at 40 to 59 years over that of young adults",
            ("from memory",),
            "chosen",
        ),
        "aged 60 and over": Coefficient(
            0.8,
            0.15,
            0.3,
            1.2,
            "1",
            "growth at 60 years and over, over that of young adults",
            ("maintenance-dose-one-third-one-ninth-2011", "from memory"),
            "chosen; the trial shows only that older adults hold size less well",
        ),
    }
)

PERSON_SHAPE = 2.1
"""Shape of the gamma spread of growth between people and muscles (median 1).

The quartiles 0.36 and 0.94 around the median 0.61 percent a week
(``rate-of-gain-by-status-open-data``) are 0.59 and 1.54 of it; a gamma of this shape has 0.58 and
1.58. They are group means of many measurements: the spread of single people is wider still.
"""

CENTRAL: Mapping[str, float] = MappingProxyType({n: c.value for n, c in COEFFICIENTS.items()})
"""The central value of every coefficient."""


def drawn(draws: int, rng: np.random.Generator) -> dict[str, FloatArray]:
    """Draw every coefficient from its normal uncertainty, held within its limits.

    Args:
        draws: number of draws.
        rng: seeded generator.

    Returns:
        One array of shape (draws,) a coefficient.
    """
    noise = rng.standard_normal((len(COEFFICIENTS), draws), dtype=np.float32)
    return {
        name: np.clip(c.value + c.sd * noise[i], c.low, c.high)
        for i, (name, c) in enumerate(COEFFICIENTS.items())
    }


def people(count: int) -> NDArray[np.float64]:
    """Responses of people evenly spaced in rank, over that of the middle one.

    Ranks instead of random people: the ends of an interval over few draws would depend on the
    seed.

    Args:
        count: number of people.

    Returns:
        Quantiles of the gamma of shape :data:`PERSON_SHAPE` over its median, ascending, shape
        (count,).
    """
    x = np.linspace(0.0, 25.0, 5001)
    below = np.cumsum(x ** (PERSON_SHAPE - 1.0) * np.exp(-x))
    ranks = np.append((np.arange(count) + 0.5) / count, 0.5) * below[-1]
    quantiles = np.interp(ranks, below, x)
    return np.asarray(quantiles[:-1] / quantiles[-1])
