"""After each logged set: load, repetitions and rest of the next one."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from setwright.exercises.kit import GymKit
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.week import Entry
from setwright.rehearsal.rehearse import TOLERATED_LOSS, rir_of
from setwright.training import effort_check
from setwright.training.case import whole
from setwright.training.done import DoneSet
from setwright.training.effort import Asked, asked, floor_of, known_bias
from setwright.training.ladder import ladder
from setwright.training.lifter import Lifter
from setwright.training.rest import EVIDENCE as REST_EVIDENCE
from setwright.training.rest import LONGER_S, Rest, longest_rest_s, rest_before
from setwright.training.set_load import Between, clearly_lighter, set_load
from setwright.training.trouble import NONE, Trouble, stop_words

NOTHING_LIGHTER = "No repetition, and nothing lighter: stop this exercise, take an easier one."


@dataclass(frozen=True, slots=True)
class NextSet:
    """The next set of an exercise.

    Attributes:
        number: from 1.
        load_kg: as lifted; None when nothing is to be lifted, or the load has no figure.
        reps: repetitions to aim at; 0 when nothing is to be lifted.
        rir: repetitions in reserve to stop at, as this person feels them.
        rest_s: rest to take before it.
        expected: repetitions expected at that effort.
        low: lower end of their 80 % interval.
        high: upper end.
        over: the exercise is done, or stopped.
        because: short plain sentences.
        evidence: ids of findings.
    """

    number: int
    load_kg: float | None
    reps: int
    rir: float
    rest_s: int
    expected: float | None
    low: float | None
    high: float | None
    over: bool
    because: tuple[str, ...]
    evidence: tuple[str, ...]


def next_set(
    lifter: Lifter,
    entry: Entry,
    done_today: Sequence[DoneSet],
    exercise: Exercise,
    gym: GymKit,
    intake: Intake | None,
    *,
    trouble: Trouble = NONE,
    rir_more: float = 0.0,
    may_rise: bool = True,
    to_failure: bool = False,
    body_mass_kg: float | None = None,
    failed_kg: float | None = None,
) -> NextSet:
    """The next set of an exercise that is under way.

    Args:
        lifter: with every set of today folded in.
        entry: as planned.
        done_today: sets of today in order; at least one of the exercise.
        exercise: what is lifted.
        gym: its loads.
        intake: the person, for the effort floors.
        trouble: pain, technique and symptoms reported on the exercise today.
        rir_more: repetitions in reserve that the block adds.
        may_rise: False in weeks and sessions in which nothing rises.
        to_failure: as many as possible, to check the calls (``effort_check``).
        body_mass_kg: as last weighed; the intake's by default.
        failed_kg: lightest load at which a set of today ended without a repetition.

    Raises:
        ValueError: no set of the exercise today.
    """
    own = tuple(one for one in done_today if one.exercise == exercise.id)
    if not own:
        raise ValueError(f"no set of {exercise.id} today")
    number = len(own) + 1
    if trouble.stop:
        return stopped(number, trouble)
    if number > entry.sets:
        return _over(number, ("All sets of this exercise are done.",), ())
    bias = known_bias(lifter.honesty(exercise.id))
    planned = rir_of(entry, min(number, entry.sets)) + rir_more
    floor = floor_of(intake, exercise)
    check = to_failure and floor == 0 and not trouble.not_heavier
    effort = Asked(0.0, 0.0) if check else asked(planned, bias, floor)
    mass = body_mass_kg or (intake.body_mass_kg if intake is not None else None) or 0.0
    now = Between(lifter, exercise, entry, own, ladder(exercise, gym), mass, bias, effort)
    if trouble.lighter and now.steps.measured and now.steps.below(own[-1].load_kg) is None:
        text = f"Pain {trouble.pain} of 10 and no lighter load: stop this exercise for today."
        return _over(number, (text,), trouble.evidence)
    rest = _rest(now)
    load, notes = set_load(now, rest.seconds, trouble, may_rise)
    if failed_kg is not None and now.steps.measured and load >= failed_kg:
        lighter = clearly_lighter(now.steps, failed_kg, mass)
        if lighter is None:
            return _over(number, (NOTHING_LIGHTER,), ())
        load, notes = lighter, ("No repetition was done at that load: clearly lighter.",)
    seen = now.seen(load, rest.seconds)
    low, top = entry.reps
    reps = min(max(whole(seen.mean), 1 if now.steps.below(load) is None else low), top)
    if check:
        reps = max(whole(seen.low), 1)
        notes = (*notes, effort_check.WORDS)
    if entry.superset is not None:
        notes = (*notes, "The partner's set falls into this rest.")
    if rest.because:
        notes = (rest.because, *notes)
    evidence = (*trouble.evidence, *REST_EVIDENCE)
    measured = now.steps.measured
    return NextSet(
        number, load if measured else None, reps, effort.felt, rest.seconds,
        seen.mean, seen.low, seen.high, False, notes, evidence,
    )  # fmt: skip


def stopped(number: int, trouble: Trouble) -> NextSet:
    """Nothing more of an exercise, and why."""
    return _over(number, stop_words(trouble), trouble.evidence)


def _over(number: int, because: tuple[str, ...], evidence: tuple[str, ...]) -> NextSet:
    return NextSet(number, None, 0, 0.0, 0, None, None, None, True, because, evidence)


def _rest(now: Between) -> Rest:
    """Rest by the estimate, and longer than the last one after a drop that was too large."""
    own = now.own
    at_least = 0.0
    if len(own) > 1 and own[-1].load_kg == own[-2].load_kg:
        before, last = (now.at_this_effort(one) for one in own[-2:])
        if last < (1 - TOLERATED_LOSS) * before and own[-1].rest_s is not None:
            at_least = own[-1].rest_s + LONGER_S
    base = own[-1].load_kg
    return rest_before(
        lambda rest_s: now.seen(base, rest_s).mean,
        now.entry,
        now.at_this_effort(own[-1]),
        longest_rest_s(now.exercise, now.entry),
        at_least,
    )
