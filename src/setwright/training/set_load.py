"""The load of the next set of an exercise that is under way."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises.model import Exercise
from setwright.plan.week import Entry
from setwright.rehearsal.strength import fraction_at
from setwright.training.case import whole
from setwright.training.done import DoneSet
from setwright.training.effort import Asked, really_left
from setwright.training.ladder import Ladder
from setwright.training.lifter import Lifter, PredictedReps
from setwright.training.trouble import Trouble

# A set with less than this share of the band's low end speaks for itself, at most so far down
# (common practice).
FAR_SHORT = 0.6
MOST_LIGHTER = 0.2


@dataclass(frozen=True, slots=True)
class Between:
    """An exercise between two sets.

    Attributes:
        lifter: with the sets so far folded in.
        exercise: what is lifted.
        entry: as planned.
        own: sets of it today, at least one.
        steps: loads of the gym.
        mass: of the body, kg; 0 when not known.
        bias: real less felt RIR that is acted on.
        effort: asked of the next set.
    """

    lifter: Lifter
    exercise: Exercise
    entry: Entry
    own: tuple[DoneSet, ...]
    steps: Ladder
    mass: float
    bias: float
    effort: Asked

    def seen(self, load_kg: float, rest_s: float) -> PredictedReps:
        """Repetitions of the next set at a load after a rest."""
        last = self.own[-1]
        system = last.system_kg
        if load_kg != last.load_kg:
            system = self.steps.system(load_kg, self.mass)
        return self.lifter.predict(
            self.exercise.id, system, last.day, self.effort.felt, rest_s=rest_s
        )

    def at_this_effort(self, done: DoneSet) -> float:
        """Repetitions a set would have had at the effort now asked."""
        left = really_left(done, self.bias)
        return done.reps if left is None else max(done.reps + left - self.effort.real, 0.0)


def set_load(
    now: Between, rest_s: float, trouble: Trouble, may_rise: bool
) -> tuple[float, tuple[str, ...]]:
    """Load of the next set and why."""
    low, top = now.entry.reps
    base = now.own[-1].load_kg
    if not now.steps.measured or now.steps.untold(base):
        return base, ("Repetitions alone change here: the load has no figure.",)
    load, notes = base, ("The same load.",)
    below, above = now.steps.below(base), now.steps.above(base)
    if trouble.lighter and below is not None:
        load = below
        notes = (f"Pain {trouble.pain} of 10: a step lighter; stop if it grows.",)
    elif trouble.not_heavier:
        what = "Pain" if trouble.pain else "Technique broke down"
        notes = (f"{what} was reported: not heavier.",)
    elif may_rise and above is not None and _too_light(now, above, rest_s):
        load = above
        notes = (f"{top} with more left than asked: a step heavier.",)
    fits = load
    while whole(now.seen(fits, rest_s).mean) < low:
        lighter = now.steps.below(fits)
        if lighter is None:
            text = f"Even the lightest load may not allow {low}: do what the effort asked allows."
            return fits, (*notes, text)
        fits = lighter
    short = _far_short(now, low)
    if short is not None and short < fits:
        text = (
            f"{now.own[-1].reps:g} is far short of {low}: lighter. Correct the log if it is a slip."
        )
        return short, (text,)
    if fits < load:
        text = f"{low} would not be left even after {rest_s} s of rest: lighter."
        kept = notes if trouble.not_heavier else ()
        return fits, (*kept, text)
    return load, notes


def clearly_lighter(steps: Ladder, failed_kg: float, mass: float) -> float | None:
    """A load a fifth under one at which nothing could be done, or the next below; None at the end.

    Args:
        steps: loads of the gym.
        failed_kg: as lifted.
        mass: of the body, kg.
    """
    wanted = steps.external(steps.system(failed_kg, mass) * (1 - MOST_LIGHTER), mass)
    lighter = steps.at_most(min(wanted, failed_kg))
    return lighter if lighter is not None and lighter < failed_kg else steps.below(failed_kg)


def _too_light(now: Between, heavier: float, rest_s: float) -> bool:
    """The band's top was reached, and the next load would allow it again; once a day."""
    top = now.entry.reps[1]
    if now.own[-1].reps < top or now.own[-1].load_kg > now.own[0].load_kg:
        return False
    return whole(now.seen(heavier, rest_s).mean) >= top


def _far_short(now: Between, low: int) -> float | None:
    """The load that the last set by itself says, when it was far under the band.

    The estimate does not believe such a set at once; the next set must not wait for that.
    """
    last = now.own[-1]
    reps = now.at_this_effort(last)
    if reps >= FAR_SHORT * low:
        return None
    curve = now.exercise.rep_curve
    left = now.effort.real
    share = float(fraction_at(low + left, curve) / fraction_at(max(reps, 1.0) + left, curve))
    system = last.system_kg * max(share, 1 - MOST_LIGHTER)
    load = now.steps.at_most(now.steps.external(system, now.mass))
    return now.steps.lightest() if load is None else load
