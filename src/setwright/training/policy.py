"""What to do on a day: the core that the next session and the lab share, free of documents."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit
from setwright.plan.intake import Experience, Intake
from setwright.plan.week import Entry
from setwright.rehearsal.rehearse import rir_of
from setwright.training import effort_check
from setwright.training.after_break import ILL_EVIDENCE, ILL_SETS, after_illness, coming_back
from setwright.training.block import Block
from setwright.training.case import Case
from setwright.training.course import kept_of
from setwright.training.effort import Asked, asked, floor_of, known_bias, may_be_said
from setwright.training.ladder import ladder
from setwright.training.lifter import Honesty, Lifter
from setwright.training.past import Past
from setwright.training.prescribe import prescribe
from setwright.training.reference import reference
from setwright.training.sets import Prescribed

# Share by which a load may rise at once when the kit has finer steps: progression-load-increment
# of 2 to 10 %; trained people stay in its lower half (step-two-for-two).
MOST_RISE: dict[Experience, float] = {"beginner": 0.10, "intermediate": 0.05, "advanced": 0.05}


def plan_sets(
    lifter: Lifter,
    entries: Sequence[Entry],
    day: int,
    block: Block,
    intake: Intake,
    gym: GymKit,
    past: Past,
    body_mass_kg: float | None = None,
) -> tuple[Prescribed, ...]:
    """Loads, repetitions and effort of every set of a session.

    Args:
        lifter: the estimate, with everything before ``day`` folded in.
        entries: of the session, in order.
        day: proleptic ordinal of the date.
        block: of weeks.
        intake: the person.
        gym: its loads.
        past: what was done before ``day``.
        body_mass_kg: as last weighed; the intake's by default.

    Returns:
        One prescription an entry.
    """
    place = block.place(day)
    ill = after_illness(past.ill_until, past.days, day)
    if ill:
        place = place.held("First session after an illness: nothing rises.", ILL_EVIDENCE)
    outings = [past.before(entry.exercise, day) for entry in entries]
    backs = [coming_back(known, day, past.days) for known in outings]
    todo = []
    for entry, back in zip(entries, backs, strict=True):
        share = min(
            place.sets_share, 1.0 if back is None else back.sets_share, ILL_SETS if ill else 1.0
        )
        todo.append(entry if share == 1.0 else _fewer(entry, share))
    kept = kept_of(tuple(todo), intake.sex)
    mass = body_mass_kg or intake.body_mass_kg or 0.0
    answers = []
    for entry, known, back, left in zip(todo, outings, backs, kept, strict=True):
        exercise = catalogue.exercise(entry.exercise)
        honesty = _honesty(lifter, entry.exercise, day)
        bias = 0.0 if honesty is None else known_bias(honesty)
        spoken = honesty is not None and may_be_said(honesty)
        floor = max(floor_of(intake, exercise), 0.0 if back is None else back.rir_least)
        effort = tuple(
            asked(rir_of(entry, number) + place.rir_more, bias, floor)
            for number in range(1, entry.sets + 1)
        )
        last = known[-1] if known else None
        trouble = past.trouble(entry.exercise, day, intake.screening.cleared_on)
        check = effort_check.due(
            exercise, entry, floor, place, known, trouble, back is not None or ill, day
        )
        if check:
            effort = (*effort[:-1], Asked(0.0, 0.0))
        case = Case(
            lifter, exercise, entry, day, mass, ladder(exercise, gym), effort, left, place,
            last, last, trouble, back, bias, spoken, check, MOST_RISE[intake.experience],
            past.failed_kg(entry.exercise, day),
        )  # fmt: skip
        usual = [one for one in known if not block.eased_on(one.day)] or known
        if back is None and usual and case.ladder.measured:
            case = replace(case, steady=reference(case, usual))
        answers.append(prescribe(case))
    return tuple(answers)


def _fewer(entry: Entry, share: float) -> Entry:
    sets = max(round(entry.sets * share - 1e-9), 1)
    return entry.model_copy(update={"sets": sets})


def _honesty(lifter: Lifter, exercise: str, day: int) -> Honesty | None:
    return None if lifter.one_rm(exercise, day) is None else lifter.honesty(exercise)
