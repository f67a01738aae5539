"""Repetitions really left when a reserve is felt: the person's bias, and the noise of a call.

What is left is the felt reserve, the bias of the person and of the class of exercise, and what
the bias gains with each repetition felt and with the length of the set. Nobody stops after
failure: what is left is never below 0, so a call is a normal law cut off there.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import erfc, exp, hypot, pi, sqrt

from setwright.rehearsal.strength import rir_sd
from setwright.training.belief import BIAS, LONGER, STEEPER, Belief

# The bias of a person is what it is at this felt reserve and length of set, repetitions.
USUAL_FELT = 2.0
USUAL_LENGTH = 10.0
# Beyond these the bias is not followed any further.
SHORTEST, LONGEST = 4.0, 22.0
# Felt reserves below 1 carry a share of the bias: at least this, as the set did not fail.
LEAST_BIASED = 0.5
LEAST_SLOPE = 0.05


@dataclass(frozen=True, slots=True)
class Call:
    """What a felt reserve stands for.

    Attributes:
        left: repetitions really left, mean over the sets that did not fail.
        variance: of it for one person.
        index: states of the bias.
        weights: change of ``left`` with each of them.
    """

    left: float
    variance: float
    index: tuple[int, ...]
    weights: tuple[float, ...]


def call(belief: Belief, key: str, felt: float, length: float, felt_sd: float = 0.0) -> Call:
    """What a felt reserve stands for.

    Args:
        belief: of the person.
        key: exercise, known to the belief.
        felt: repetitions in reserve as felt, 0 or more, in a set that did not fail.
        length: repetitions the set would have had at failure.
        felt_sd: of the felt reserve itself, where it is vague or only guessed.
    """
    own = belief.own[key]
    mean = belief.state.mean
    biased = min(max(felt, LEAST_BIASED), 1.0)
    steeper = felt - USUAL_FELT
    longer = min(max(length, SHORTEST), LONGEST) - USUAL_LENGTH
    bias = mean[BIAS] + mean[own.class_bias] + steeper * mean[STEEPER] + longer * mean[LONGER]
    own_noise = belief.constants.call_share * float(rir_sd(length, max(felt, LEAST_BIASED)))
    noise = hypot(own_noise, felt_sd)
    left, slope = cut_off(felt + biased * float(bias), noise)
    by = biased * slope
    return Call(
        left,
        noise**2 * slope,
        (BIAS, own.class_bias, STEEPER, LONGER),
        (by, by, by * steeper, by * longer),
    )


def cut_off(mean: float, sd: float) -> tuple[float, float]:
    """Mean of a normal law that is cut off below 0, and its slope on the mean before the cut.

    The slope is also what the cut leaves of the variance.
    """
    z = mean / sd
    below = 0.5 * erfc(-z / sqrt(2.0))
    ratio = exp(-0.5 * z**2) / sqrt(2.0 * pi) / below if z > -6.0 else -z + 1.0 / -z
    return mean + sd * ratio, max(1.0 - ratio * (ratio + z), LEAST_SLOPE)
