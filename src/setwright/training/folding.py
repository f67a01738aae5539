"""How a set changes the belief, and when it is not believed."""

from __future__ import annotations

from dataclasses import dataclass
from math import copysign, sqrt

from setwright.training.belief import Belief
from setwright.training.done import DoneSet
from setwright.training.filter import update
from setwright.training.reading import Reading, read

# So many odd sets of an exercise in a row, all to the same side, are a change, not a slip.
BELIEVED_AFTER = 3


@dataclass(frozen=True, slots=True)
class Folded:
    """What happened to a set.

    Attributes:
        before: what was expected of it.
        z: how far off, SD.
        odd: not believed.
        streak: odd sets in a row, negative when weaker than expected.
        really_left: repetitions really left, as far as is known.
    """

    before: Reading
    z: float
    odd: bool
    streak: float
    really_left: float


def fold_set(belief: Belief, done: DoneSet, kept: float, streak: float) -> Folded:
    """Let a set of the log change the belief.

    Args:
        belief: changed in place; already at the day of the set.
        done: the set.
        kept: share of fresh repetitions left by fatigue.
        streak: of odd sets before this one.
    """
    assert belief.day is not None
    failed = done.to_failure
    said = failed or done.rir is not None
    felt = 0.0 if failed else (done.rir if done.rir is not None else belief.constants.unsaid_rir)
    seen = read(belief, done.exercise, done.system_kg, belief.day, felt, kept, said)
    residual = seen.shown(done.reps) - seen.u
    z = residual / sqrt(seen.spread)
    if abs(z) <= belief.constants.odd_z:
        update(belief.state, seen.index, seen.weights, residual, seen.noise)
        return Folded(seen, z, False, 0.0, max(seen.left, 0.0))
    now = copysign(1.0, z) + (streak if streak * z > 0 else 0.0)
    if abs(now) >= BELIEVED_AFTER:
        level = belief.own[done.exercise].level
        belief.state.cov[level, level] += residual**2
        update(belief.state, seen.index, seen.weights, residual, seen.noise)
        now = 0.0
    return Folded(seen, z, True, now, max(seen.left, 0.0))


def take_in(belief: Belief, key: str, system_kg: float, reps: float, rir: float) -> None:
    """Let a remembered set start an exercise: less sure than a logged one, and never odd."""
    seen = read(belief, key, system_kg, belief.day or 0, rir, 1.0)
    noise = seen.noise + belief.constants.seed_sd**2
    update(belief.state, seen.index, seen.weights, seen.shown(reps) - seen.u, noise)
