"""What a lifter says about the repetitions left: off, drifting, and rounded to liked numbers."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.lab.movements import group_of
from setwright.lab.traits import Traits

LONG_SET = 12.0
"""Repetitions to failure from which calls worsen fast: rir-accuracy-meta-2022."""

LENGTH_WEIGHT = 0.10


def length_effect(to_failure: float) -> float:
    """How much longer than ten repetitions a set counts for the error of its calls.

    Slow below twelve repetitions, fast above (rir-accuracy-meta-2022: slopes 0.06 and 0.47).
    """
    return 0.12 * (min(to_failure, LONG_SET) - 10.0) + max(to_failure - LONG_SET, 0.0)


@dataclass(frozen=True)
class Caller:
    """How one set's reserve is felt.

    Attributes:
        offset: real less felt reserve when nothing is left, noise and all.
        factor: real over felt reserve beyond that.
        plain_offset: the offset without this set's noise.
    """

    offset: float
    factor: float
    plain_offset: float

    def felt(self, left: float) -> float:
        """Reserve as felt, not rounded."""
        return (left - self.offset) / self.factor

    def error(self, left: float) -> float:
        """Real less felt reserve apart from the noise of this one set."""
        return left - (left - self.plain_offset) / self.factor


def caller(traits: Traits, exercise: str, to_failure: float, drift: float, noise: float) -> Caller:
    """How a lifter feels the reserve of a set.

    Args:
        traits: the lifter's.
        exercise: id.
        to_failure: repetitions the set would have at failure.
        drift: of this week.
        noise: unit normal.
    """
    group = group_of(exercise)
    plain = traits.call_offset[group] + drift
    long = LENGTH_WEIGHT * length_effect(to_failure)
    factor = max(1.0 + traits.call_growth[group] + long, 0.6)
    sd = traits.call_sd * (1.0 + 0.02 * max(to_failure - 10.0, 0.0))
    return Caller(plain + sd * noise, factor, plain)


def written(felt: float, told: float, luck: float) -> float:
    """The reserve as written down: whole, drawn to what was told and to 1, 2, 3, 5 and 10."""
    called = float(max(round(felt), 0))
    if luck < 0.12 and abs(called - told) <= 1.0:
        return told
    if called >= 8.0:
        return 10.0
    if called >= 4.0:
        return 5.0 if luck < 0.8 else called
    if luck > 0.93 and felt > 0.25:
        return round(2.0 * felt) / 2.0
    return min(called, 10.0)
