"""Shares and stretch of an exercise, published ones put over the computed; and its profile."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.model import Part
from setwright.exercises.computed import Computed
from setwright.exercises.for_body import MODEL_SPREAD, NINETY
from setwright.exercises.model import Exercise
from setwright.exercises.profile import Profile, Share

Array = NDArray[np.float64]

COMPUTED: Final = "mechanics"
PUBLISHED_SPREAD: Final = 0.1
# A part that works less than this beside the hardest-working one steadies: a plan counts it from
# there on (common practice; see docs/mechanics.md).
COUNTS_FROM: Final = 0.25
# A share below this cannot be told from nothing.
LEAST: Final = 0.1
# Loaded stretch runs from 0 at the first fibre length ratio to 1 at the second.
STRETCH_FROM: Final = 0.7
STRETCH_TO: Final = 1.4
# Moment and compression at the lower back that count as a full spinal load: a heavy pull from the
# floor by the same computation.
FULL_MOMENT_NM: Final = 450.0
FULL_COMPRESSION_N: Final = 11500.0


@dataclass(frozen=True)
class Worked:
    """What one exercise does for every part; arrays over the parts, shape (P,).

    Attributes:
        shares: 0 to 1, 0 below ``LEAST``.
        spread: standard deviation of each share.
        stretch: 0 to 1, how long a part is under load; 0 without a share.
    """

    shares: Array
    spread: Array
    stretch: Array


def work(exercise: Exercise, computed: Computed, parts: Sequence[Part]) -> Worked:
    """The computed shares of an exercise with its published ones put over them."""
    size = len(parts)
    shares, spread, ratio = np.zeros(size), np.full(size, MODEL_SPREAD), np.ones(size)
    for row, part in enumerate(parts):
        if part.id in computed.parts:
            found = computed.parts[part.id]
            shares[row] = counted(found.share)
            spread[row] = np.hypot(found.sd, MODEL_SPREAD) / (1.0 - COUNTS_FROM)
            ratio[row] = found.loaded_ratio
        if part.id in exercise.published:
            shares[row] = exercise.published[part.id].share
            spread[row] = PUBLISHED_SPREAD
    shares = np.where(shares < LEAST, 0.0, shares)
    return Worked(shares, spread, np.where(shares > 0, stretch_of(ratio), 0.0))


def counted(share: float) -> float:
    """What a plan counts of a computed share, 0 to 1."""
    return max(share - COUNTS_FROM, 0.0) / (1.0 - COUNTS_FROM)


def stretch_of(ratio: Array) -> Array:
    """Loaded stretch, 0 to 1, of fibre length ratios."""
    stretch: Array = np.clip((ratio - STRETCH_FROM) / (STRETCH_TO - STRETCH_FROM), 0.0, 1.0)
    return stretch


def profile_of(
    exercise: Exercise, computed: Computed, parts: Sequence[Part], worked: Worked
) -> Profile:
    """The profile of an exercise from its arrays over the parts."""
    shares = []
    for row, part in enumerate(parts):
        value, give = float(worked.shares[row]), NINETY * float(worked.spread[row])
        if value > 0:
            found = computed.parts.get(part.id)
            published = exercise.published.get(part.id)
            shares.append(
                Share(
                    part.id,
                    round(value, 3),
                    round(max(value - give, 0.0), 3),
                    round(min(value + give, 1.0), 3),
                    round(float(worked.stretch[row]), 3),
                    published.source if published else COMPUTED,
                    found.share if found else 0.0,
                    found.loaded_ratio if found else None,
                )
            )
    rows = [row for row, part in enumerate(parts) if part.id in computed.ends]
    rows = [row for row in rows if worked.shares[row] > 0]
    weights = worked.shares[rows]
    total = float(weights.sum())
    return Profile(
        exercise.id,
        tuple(sorted(shares, key=lambda share: -share.value)),
        tuple(parts[row].id for row in rows),
        round(spinal_load(computed), 3),
        round(float(weights @ worked.stretch[rows]) / total if total else 0.0, 3),
        computed.hardest,
    )


def spinal_load(computed: Computed) -> float:
    """Burden on the lower back, 0 to 1, from the moment it holds and the force along it."""
    moment = computed.spine_moment_nm / FULL_MOMENT_NM
    compression = computed.spine_compression_n / FULL_COMPRESSION_N
    return float(min(0.5 * moment + 0.5 * compression, 1.0))
