"""How a set reads the belief: from strength and load to repetitions, and back.

A set asks one number, the log strength of the moment over the log load, ``u``. Fresh
repetitions to failure are ``1 + a (exp(u) - 1)``; fatigue keeps a share of them; what is left at
the end is the felt reserve and the person's bias. All noise is carried on the scale of ``u``.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp, log, sqrt

from setwright.training.belief import (
    CURVE,
    DAY,
    ENDURANCE,
    FOLLOW,
    FORM,
    GAIN,
    WEEK,
    Belief,
)
from setwright.training.calls import call

ROUNDING = 1.0 / 12.0
LEAST_KEPT = 0.05
LEAST_FRESH = 0.5


@dataclass(frozen=True, slots=True)
class Reading:
    """What is expected of a set at a load.

    Attributes:
        u: log strength less log load, mean.
        spread: variance of ``u`` as the repetitions will show it, noise of the set included.
        noise: the part of ``spread`` that is not in the belief.
        a: curve constant.
        kept: share of fresh repetitions left by fatigue.
        left: repetitions that will really be left at the end.
        index: states it depends on.
        weights: their weights in ``u``.
    """

    u: float
    spread: float
    noise: float
    a: float
    kept: float
    left: float
    index: tuple[int, ...]
    weights: tuple[float, ...]

    def reps(self, u: float) -> float:
        """Repetitions done when the moment's log strength over load is ``u``."""
        return self.kept * (1.0 + self.a * (exp(u) - 1.0)) - self.left

    def shown(self, reps: float) -> float:
        """The ``u`` that so many repetitions show; the inverse of ``reps``."""
        fresh = max((reps + self.left) / self.kept, LEAST_FRESH)
        return log(max(1.0 + (fresh - 1.0) / self.a, 0.05))


def read(
    belief: Belief,
    key: str,
    system_kg: float,
    day: int,
    felt: float | None,
    kept: float,
    chosen: bool = True,
    felt_sd: float = 0.0,
) -> Reading:
    """What is expected of a set.

    Args:
        belief: of the person; not changed.
        key: exercise, known to the belief.
        system_kg: load.
        day: the belief's day or a later one.
        felt: repetitions in reserve as felt; None at failure.
        kept: share of fresh repetitions left by fatigue before the person's endurance.
        chosen: the load was really taken, so that a change of it says something about strength;
            False to ask what would happen at any load.
        felt_sd: of ``felt`` itself, where it is vague or only guessed.
    """
    c = belief.constants
    own = belief.own[key]
    mean = belief.state.mean
    later = belief.day is not None and day > belief.day
    gap = belief.gap_weeks(day)
    a = exp(own.log_a + mean[CURVE] + mean[own.class_curve] + mean[own.curve])
    u = float(mean[own.level] + gap * (mean[GAIN] + mean[own.gain])) - log(system_kg)
    if not later:
        u += float(mean[DAY] + mean[own.day])
    form = belief.form_left(day)
    u += form * float(mean[FORM])
    change = belief.load_change(key, log(system_kg), day) if chosen else 0.0
    u += change * float(mean[FOLLOW])
    fresh = max(1.0 + a * (exp(u) - 1.0), LEAST_FRESH)
    lost = (1.0 - kept) * exp(float(mean[ENDURANCE]))
    kept_now = max(1.0 - lost, LEAST_KEPT)
    per_u = a * exp(max(u, -0.5))
    on_curve = (fresh - 1.0) / per_u
    per_rep = 1.0 / (kept_now * per_u)
    index = [own.level, own.gain, GAIN, FORM, CURVE, own.class_curve, own.curve]
    weights = [1.0, gap, gap, form, on_curve, on_curve, on_curve]
    if change != 0.0:
        index.append(FOLLOW)
        weights.append(change)
    if lost > 0.0:
        index.append(ENDURANCE)
        weights.append(-fresh * lost * per_rep)
    noise = c.set_sd**2 + (c.reps_sd * fresh / per_u) ** 2 + (c.jump * change) ** 2
    noise += (c.tired_sd * lost * fresh * per_rep) ** 2
    noise += ROUNDING * per_rep**2
    left = 0.0
    if felt is not None:
        told = call(belief, key, felt, kept_now * fresh, felt_sd)
        left = told.left
        noise += told.variance * per_rep**2
        index += told.index
        weights += (-per_rep * weight for weight in told.weights)
    if later and belief.day is not None:
        noise += c.level_walk**2 * (day - belief.day) / WEEK
        noise += c.day_sd**2 + c.day_own_sd**2 + c.form_sd**2 * (1.0 - form**2)
    else:
        index += [DAY, own.day]
        weights += [1.0, 1.0]
    _, spread = belief.state.of(index, weights)
    return Reading(u, spread + noise, noise, a, kept_now, left, tuple(index), tuple(weights))


@dataclass(frozen=True, slots=True)
class PredictedReps:
    """Repetitions to come.

    Attributes:
        mean: expected.
        median: a whole number that is missed as often above as below.
        low: lower end of the 80 % interval.
        high: upper end.
        sd: standard deviation.
    """

    mean: float
    median: float
    low: float
    high: float
    sd: float


def sd(reading: Reading, scale: float) -> float:
    """SD of the repetitions, by the slope of the curve.

    Args:
        reading: what is expected.
        scale: of the variance, for this person.
    """
    return reading.kept * reading.a * exp(reading.u) * sqrt(reading.spread * scale)


def predicted(reading: Reading, scale: float, half_width: float) -> PredictedReps:
    """Repetitions to come, from what is expected of a set.

    Args:
        reading: what is expected.
        scale: of the variance, for this person.
        half_width: of the 80 % interval, SD of this person.
    """
    variance = reading.spread * scale
    half = half_width * sqrt(variance)
    return PredictedReps(
        max(reading.reps(reading.u + variance / 2), 0.0),
        float(max(round(reading.reps(reading.u)), 0)),
        max(reading.reps(reading.u - half), 0.0),
        max(reading.reps(reading.u + half), 0.0),
        sd(reading, scale),
    )
