"""From the load decided to the sets of one exercise."""

from __future__ import annotations

from setwright.training import effort_check
from setwright.training.case import Case, whole
from setwright.training.effort import EVIDENCE as HONESTY_EVIDENCE
from setwright.training.effort import SPOKEN_BIAS, honesty_words
from setwright.training.next_load import LoadStep, next_load
from setwright.training.sets import PlannedSet, Prescribed

# Further repetitions asked above the band while the next load is out of reach (common practice).
MOST_OVER_TOP = 5


def prescribe(case: Case) -> Prescribed:
    """Loads and repetitions of every set of one exercise."""
    step = next_load(case)
    if step.change == "stop":
        before = None if case.last is None else case.last.load_kg
        return Prescribed(case.exercise.id, "stop", (), before, step.because, step.evidence)
    sets: list[PlannedSet] = []
    load = step.load_kg
    for number in range(1, case.entry.sets + 1):
        load = _no_heavier(case, load, number)
        sets.append(_set(case, step, load, number))
    notes = step.because
    if load != step.load_kg:
        text = f"Lighter for the last sets, so that {case.entry.reps[0]} are left in them."
        notes = (*notes, text)
    evidence = step.evidence
    if case.check:
        notes, evidence = (*notes, effort_check.WORDS), (*evidence, *effort_check.EVIDENCE)
    if abs(case.bias) >= SPOKEN_BIAS and case.bias_spoken:
        notes, evidence = (*notes, honesty_words(case.bias)), (*evidence, *HONESTY_EVIDENCE)
    return Prescribed(
        case.exercise.id,
        step.change,
        tuple(sets),
        None if case.last is None else case.last.load_kg,
        notes,
        evidence,
    )


def _no_heavier(case: Case, load_kg: float | None, number: int) -> float | None:
    """The load of the set before, or lighter where it would leave the band."""
    if load_kg is None or number == 1 or not case.known() or case.ladder.untold(load_kg):
        return load_kg
    while whole(case.expected(load_kg, number).mean) < case.entry.reps[0]:
        lighter = case.ladder.below(load_kg)
        if lighter is None:
            return load_kg
        load_kg = lighter
    return load_kg


def _set(case: Case, step: LoadStep, load_kg: float | None, number: int) -> PlannedSet:
    low, top = case.entry.reps
    most = top + MOST_OVER_TOP if step.over_top else top
    effort = case.asked[number - 1]
    if not case.known() or (load_kg is None and case.last is None):
        return PlannedSet(
            number, load_kg, low, most, effort.felt, effort.real,
            None, None, None, case.entry.rest_s,
        )  # fmt: skip
    at = load_kg
    if at is None:
        assert case.last is not None
        at = case.last.load_kg
    seen = case.expected(at, number)
    if case.check and number == case.entry.sets:
        return PlannedSet(
            number, load_kg, max(whole(seen.low), 1), top + effort_check.MOST_OVER_TOP,
            effort.felt, effort.real, seen.mean, seen.low, seen.high, case.entry.rest_s, True,
        )  # fmt: skip
    least = low if case.ladder.below(at) is not None else min(low, max(whole(seen.mean), 1))
    reps = min(max(whole(seen.mean), least), most)
    return PlannedSet(
        number, load_kg, reps, most, effort.felt, effort.real,
        seen.mean, seen.low, seen.high, case.entry.rest_s,
    )  # fmt: skip
