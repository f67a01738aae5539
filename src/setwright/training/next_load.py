"""The load of the first set: up a step, the same, down, or as a restart allows.

Add repetitions inside the band first, then load by the kit's real step: findings step-acsm
(2 to 10 % once the target is beaten) and step-reps-equal (repetitions grow muscle as well as
load). What counts as beaten, and every hold, is common practice; docs/progression.md has it all.
"""

from __future__ import annotations

from dataclasses import dataclass

from setwright.training.after_break import EVIDENCE as BREAK_EVIDENCE
from setwright.training.after_break import Return
from setwright.training.case import Case, whole
from setwright.training.past import Outing
from setwright.training.set_load import clearly_lighter
from setwright.training.sets import Change
from setwright.training.trouble import stop_words

# The band's top counts as reached when this much less than it is expected at the effort asked.
TOP_SLACK = 0.5
ACSM = "step-acsm"
REPS_EQUAL = "step-reps-equal"
NOTHING_EVIDENCE = ("common practice",)


@dataclass(frozen=True, slots=True)
class LoadStep:
    """The load decided.

    Attributes:
        load_kg: as lifted, or None when it is found by feel.
        change: against the last time.
        over_top: repetitions may go above the band, for the next load is out of reach.
        because: in plain words.
        evidence: ids of findings.
    """

    load_kg: float | None
    change: Change
    over_top: bool
    because: tuple[str, ...]
    evidence: tuple[str, ...]


def next_load(case: Case) -> LoadStep:
    """Decide the load of the first set."""
    step = _by_the_rules(case)
    if case.failed_kg is None or step.change == "stop":
        return step
    return _after_nothing(case, step, case.failed_kg)


def _after_nothing(case: Case, step: LoadStep, failed_kg: float) -> LoadStep:
    """Clearly lighter after a day without a repetition; left out where nothing is lighter."""
    if not case.ladder.measured:
        text = "No repetition was done last time: a lighter band, or an easier exercise."
        return LoadStep(None, "down", False, (text,), NOTHING_EVIDENCE)
    lighter = clearly_lighter(case.ladder, failed_kg, case.body_mass_kg)
    if lighter is None:
        text = "No repetition was done at the lightest load: leave it out, take an easier exercise."
        return LoadStep(None, "stop", False, (text,), NOTHING_EVIDENCE)
    load = lighter if step.load_kg is None else min(lighter, step.load_kg)
    text = "No repetition was done last time: clearly lighter."
    return LoadStep(load, "down", False, (text,), NOTHING_EVIDENCE)


def _by_the_rules(case: Case) -> LoadStep:
    if case.trouble.stop:
        return LoadStep(None, "stop", False, stop_words(case.trouble), case.trouble.evidence)
    if not case.ladder.measured:
        text = "A band's load has no figure: add repetitions, then take a stronger band."
        return LoadStep(None, "same", True, (text,), (REPS_EQUAL,))
    if case.steady is None or case.last is None:
        return _first(case)
    if case.ladder.untold(case.steady.load_kg):
        text = "The help is not told in the log: add repetitions, then take less help."
        return LoadStep(case.steady.load_kg, "same", True, (text,), (REPS_EQUAL,))
    if case.trouble.lighter:
        return _eased(case, case.last.load_kg)
    if case.back is not None:
        return _restart(case, case.back)
    held = why_held(case)
    if held is None and _top_reached(case, case.steady):
        return _raised(case, case.steady.load_kg)
    return _kept(case, case.steady.load_kg, held)


def why_held(case: Case) -> str | None:
    """Why the load must not rise, or None."""
    if case.trouble.pain:
        return f"Pain {case.trouble.pain} of 10 was reported last time: not heavier."
    if case.trouble.technique:
        return "Technique broke down last time: not heavier until it holds."
    if not case.place.may_rise:
        return case.place.because
    if case.steady is not None and min(one.reps for one in case.steady.sets) < case.entry.reps[0]:
        return f"A set fell short of {case.entry.reps[0]} last time: not heavier."
    return None


def _first(case: Case) -> LoadStep:
    top = case.entry.reps[1]
    if not case.known():
        text = f"No load is known: find one that allows {case.entry.reps[0]} to {top} by feel."
        return LoadStep(None, "first", False, (text,), ("common practice",))
    load = case.makeable(case.fitting(top))
    text = f"First time in the log: a load expected to allow {top} at the effort asked."
    return LoadStep(load, "first", False, (text,), ("round-prescribe",))


def _eased(case: Case, last_kg: float) -> LoadStep:
    """At least a step lighter than the last time, for pain that is only just acceptable."""
    lighter = case.ladder.below(last_kg)
    if lighter is None:
        text = f"Pain {case.trouble.pain} of 10 and no lighter load: leave it out today."
        return LoadStep(None, "stop", False, (text,), case.trouble.evidence)
    kept = _kept(case, lighter, f"Pain {case.trouble.pain} of 10 was reported: a step lighter.")
    return LoadStep(kept.load_kg, "down", False, kept.because, case.trouble.evidence)


def _restart(case: Case, back: Return) -> LoadStep:
    before = case.ladder.system(back.before_kg, case.body_mass_kg)
    if case.ladder.of_system or back.before_kg <= 0:
        cap = case.ladder.external(before * back.most_share, case.body_mass_kg)
    else:
        cap = back.before_kg * back.most_share
    load = case.makeable(min(cap, case.fitting(case.entry.reps[1])))
    last = case.last
    if last is not None and last.day >= back.first_day:
        if case.trouble.not_heavier:
            load = min(load, last.load_kg)
        elif whole(case.expected(last.load_kg).mean) >= case.entry.reps[0]:
            load = max(load, min(last.load_kg, back.before_kg))
    text = (
        f"{back.days_off} days without it: week {back.week} of {back.weeks} of the restart, "
        f"at most {back.most_share:.0%} of the load before."
    )
    return LoadStep(load, "restart", False, (text,), BREAK_EVIDENCE)


def _top_reached(case: Case, steady: Outing) -> bool:
    """The first set had the band's top, and it is expected again at the effort asked."""
    top = case.entry.reps[1]
    if steady.first.reps < top:
        return False
    return case.expected(steady.load_kg).mean >= top - TOP_SLACK


def _raised(case: Case, from_kg: float) -> LoadStep:
    low, top = case.entry.reps
    mass = case.body_mass_kg
    step = case.ladder.above(from_kg)
    if step is None:
        text = f"{top} were reached and there is no heavier load: add repetitions."
        return LoadStep(from_kg, "same", True, (text,), (REPS_EQUAL,))
    if whole(case.expected(step).mean) < low:
        text = f"{top} were reached, but the next load would not allow {low}: add repetitions."
        return LoadStep(from_kg, "same", True, (text,), (REPS_EQUAL, "arith-smallest-step"))
    # With fine steps one is too little: rise until the middle of the band, within the bound.
    while (further := case.ladder.above(step)) is not None:
        if case.ladder.rise(from_kg, further, mass) > case.most_rise:
            break
        if whole(case.expected(further).mean) < (low + top) / 2:
            break
        step = further
    text = f"{top} were reached at the effort asked: the next load."
    return LoadStep(step, "up", False, (text,), (ACSM,))


def _kept(case: Case, load_kg: float, held: str | None) -> LoadStep:
    low = case.entry.reps[0]
    notes = (held,) if held else ()
    if case.trouble.not_heavier and case.last is not None:
        load_kg = min(load_kg, case.last.load_kg)
    load = case.makeable(load_kg)
    while whole(case.expected(load).mean) < low:
        lighter = case.ladder.below(load)
        if lighter is None:
            text = f"Even the lightest load is not expected to allow {low} at the effort asked."
            return LoadStep(load, "down", False, (*notes, text), ("common practice",))
        load = lighter
    if load < load_kg:
        text = f"{low} are not expected at the last load at the effort asked: lighter."
        return LoadStep(load, "down", False, (*notes, text), ("round-prescribe",))
    text = "The same load: add repetitions inside the band."
    return LoadStep(load, "same", False, notes or (text,), (REPS_EQUAL,))
