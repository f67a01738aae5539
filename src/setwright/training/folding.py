"""How a set changes the belief, and when it is not believed."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import copysign, exp, log, sqrt

import numpy as np

from setwright.training.belief import Belief
from setwright.training.filter import shift, update
from setwright.training.reading import Reading, read
from setwright.training.scatter import Scatter
from setwright.training.silent import believed

# So many odd sets of an exercise in a row, all to the same side, are a change, not a slip.
BELIEVED_AFTER = 3
# A set may come from a second, wider distribution, so many times as wide.
WIDE = 3.0
# Strength and load apart by this much (log), and 3 SD off, is odd too: a unit slip is 0.79.
FAR = 0.5
FAR_Z = 3.0


@dataclass(frozen=True, slots=True)
class Effort:
    """What a set asked, apart from its repetitions.

    Attributes:
        key: exercise, known to the belief.
        system_kg: load.
        felt: repetitions in reserve as felt; None at failure. Of a silent set: as the person
            usually feels them, or None when that is not known.
        felt_sd: SD of ``felt`` itself, where it is vague or only guessed.
        silent: the set stopped short and nothing was said of the reserve.
        kept: share of fresh repetitions left by fatigue.
    """

    key: str
    system_kg: float
    felt: float | None = None
    felt_sd: float = 0.0
    silent: bool = False
    kept: float = 1.0


@dataclass(frozen=True, slots=True)
class Folded:
    """What happened to a set.

    Attributes:
        before: what was expected of it.
        scale: of its variance, for this person.
        half_width: of its 80 % interval, SD.
        z: how far off, SD.
        odd: not believed.
        streak: odd sets in a row, negative when weaker than expected.
    """

    before: Reading
    scale: float
    half_width: float
    z: float
    odd: bool
    streak: float


def fold_set(
    belief: Belief, scatter: Scatter, effort: Effort, reps: float, streak: float = 0.0
) -> Folded:
    """Let a set change the belief.

    Args:
        belief: changed in place; already at the day of the set.
        scatter: changed in place.
        effort: what was asked.
        reps: repetitions done.
        streak: of odd sets of the exercise before this one.
    """
    scale, half = scatter.scale(effort.key), scatter.half_width(effort.felt is None)
    if effort.silent:
        return _fold_silent(belief, effort, reps, scale, half)
    seen = _look(belief, effort)
    residual = seen.shown(reps) - seen.u
    z = residual / sqrt(seen.spread * scale)
    odd = abs(z) > belief.constants.odd_z or (abs(z) > FAR_Z and abs(residual) > FAR)
    now = 0.0
    if odd:
        now = copysign(1.0, z) + (streak if streak * z > 0 else 0.0)
        if abs(now) < BELIEVED_AFTER:
            return Folded(seen, scale, half, z, True, now)
        level = belief.own[effort.key].level
        belief.state.cov[level, level] += residual**2
        now = 0.0
    else:
        scatter.learn(effort.key, z, effort.felt is None)
    fresh = seen
    if belief.follow_load(effort.key, log(effort.system_kg)) or odd:
        fresh = _look(belief, effort)
    doubt = 1.0 if odd else _doubt(z, belief.constants.wide_share)
    _learn(belief, fresh, reps, doubt)
    return Folded(seen, scale, half, z, odd, now)


def _learn(belief: Belief, seen: Reading, reps: float, doubt: float) -> None:
    noise = seen.noise + seen.spread * (1.0 / doubt - 1.0)
    update(belief.state, seen.index, seen.weights, seen.shown(reps) - seen.u, noise)


def _look(belief: Belief, effort: Effort) -> Reading:
    day = belief.day or 0
    felt, felt_sd = effort.felt, effort.felt_sd
    return read(belief, effort.key, effort.system_kg, day, felt, effort.kept, felt_sd=felt_sd)


def _fold_silent(belief: Belief, effort: Effort, reps: float, scale: float, half: float) -> Folded:
    """Fold a set of which only is known that it stopped short.

    It is most likely like the sets of the exercise that did say a reserve; without any, it is at
    least so many repetitions, and how far more is nearly open.
    """
    at_failure = replace(effort, felt=None)
    seen = _look(belief, at_failure)
    above = max(seen.shown(reps) - seen.u, 0.0)
    z = above / sqrt(seen.spread * scale)
    odd = z > belief.constants.odd_z or (z > FAR_Z and above > FAR)
    if effort.felt is not None:
        seen = _look(belief, effort)
    else:
        seen = replace(seen, left=belief.constants.unsaid_rir)
    if odd:
        return Folded(seen, scale, half, z, True, 0.0)
    belief.follow_load(effort.key, log(effort.system_kg))
    if effort.felt is not None:
        fresh = _look(belief, effort)
        off = (fresh.shown(reps) - fresh.u) / sqrt(fresh.spread * scale)
        # More than usual is only odd beyond failure: less may have been left than usual.
        _learn(belief, fresh, reps, _doubt(min(off, z), belief.constants.wide_share))
    else:
        fresh = _look(belief, at_failure)
        by, left = believed(fresh, reps, belief.constants.unsaid_rir)
        along = belief.state.cov[:, list(fresh.index)] @ np.array(fresh.weights)
        shift(belief.state, along, fresh.spread, by, left)
    return Folded(seen, scale, half, z, False, 0.0)


def _doubt(z: float, share: float) -> float:
    """Chance that a set is an ordinary one, not one of the wider distribution; above 0."""
    ordinary = (1.0 - share) * exp(-0.5 * z**2)
    wide = share / WIDE * exp(-0.5 * (z / WIDE) ** 2)
    return max(ordinary / (ordinary + wide), 0.02)


def take_in(belief: Belief, effort: Effort, reps: float) -> None:
    """Let a remembered set start an exercise: less sure than a logged one, and never odd."""
    seen = _look(belief, effort)
    noise = seen.noise + belief.constants.seed_sd**2
    update(belief.state, seen.index, seen.weights, seen.shown(reps) - seen.u, noise)
