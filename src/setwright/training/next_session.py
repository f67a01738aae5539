"""The session to come: warm-up, loads, repetitions, effort and rest of every exercise."""

from __future__ import annotations

from dataclasses import dataclass, replace

from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit, nearest_load
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.symptoms import Symptom
from setwright.plan.week import Session
from setwright.rehearsal.fatigue import overlap
from setwright.rehearsal.warm_up import WARM, ramp
from setwright.training.after_break import ILL_EVIDENCE, after_illness, coming_back
from setwright.training.block import Block, Place
from setwright.training.ladder import Ladder, ladder
from setwright.training.lifter import Lifter
from setwright.training.past import Past
from setwright.training.policy import plan_sets
from setwright.training.sets import Prescribed
from setwright.training.trouble import Trouble


@dataclass(frozen=True, slots=True)
class WarmUp:
    """A warm-up set: load as lifted, kg (None: a share of what is found by feel)."""

    load_kg: float | None
    of_working: float
    reps: int
    rest_s: int


@dataclass(frozen=True, slots=True)
class PlannedExercise:
    """One exercise of the session.

    Attributes:
        prescribed: sets, and why.
        warm_up: before the first of them.
        how: how the kit makes the first load.
        superset: letter shared with its partners, or None.
    """

    prescribed: Prescribed
    warm_up: tuple[WarmUp, ...]
    how: str
    superset: str | None


@dataclass(frozen=True, slots=True)
class PlannedSession:
    """The session to come.

    Attributes:
        name: of the session.
        day: proleptic ordinal.
        place: in the block.
        exercises: in order.
        symptoms: reported earlier and not cleared; the session then has no exercises.
        notes: what holds for the whole session, in plain words.
        evidence: ids of findings behind the notes.
    """

    name: str
    day: int
    place: Place
    exercises: tuple[PlannedExercise, ...]
    symptoms: tuple[Symptom, ...]
    notes: tuple[str, ...]
    evidence: tuple[str, ...]


def next_session(
    lifter: Lifter,
    session: Session,
    intake: Intake,
    day: int,
    block: Block,
    past: Past,
    gym: GymKit,
    body_mass_kg: float | None = None,
) -> PlannedSession:
    """Everything a person needs for a session.

    Args:
        lifter: the estimate, with everything before ``day`` folded in.
        session: of the plan.
        intake: the person.
        day: proleptic ordinal of the date.
        block: of weeks.
        past: what was done before ``day``.
        gym: its loads.
        body_mass_kg: as last weighed; the intake's by default.
    """
    place = block.place(day)
    stands = past.open_symptoms(day, intake.screening.cleared_on)
    if stands:
        trouble = Trouble(symptoms=stands)
        text = f"No session: {' and '.join(stands)} was reported. A licensed professional first."
        return PlannedSession(session.name, day, place, (), stands, (text,), trouble.evidence)
    entries = session.exercises
    answers = plan_sets(lifter, entries, day, block, intake, gym, past, body_mass_kg)
    mass = body_mass_kg or intake.body_mass_kg or 0.0
    shares = catalogue.shares()[[catalogue.row(entry.exercise) for entry in entries]]
    reach = overlap(shares)
    planned = []
    started: list[int] = []
    for index, (entry, answer) in enumerate(zip(entries, answers, strict=True)):
        exercise = catalogue.exercise(entry.exercise)
        warm = any(reach[index, other] >= WARM for other in started)
        steps = ladder(exercise, gym)
        ramps = _warm_up(lifter, exercise, answer, steps, mass, day, warm)
        if answer.sets:
            started.append(index)
        planned.append(PlannedExercise(answer, ramps, _how(exercise, answer, gym), entry.superset))
    notes, evidence = _notes(place, past, entries_gap(session, past, day), day)
    return PlannedSession(session.name, day, place, tuple(planned), (), notes, evidence)


def entries_gap(session: Session, past: Past, day: int) -> int | None:
    """Longest break, in days, that an exercise of the session comes back from; None without."""
    backs = [
        coming_back(past.before(entry.exercise, day), day, past.days) for entry in session.exercises
    ]
    return max((back.days_off for back in backs if back is not None), default=None)


def _notes(
    place: Place, past: Past, days_off: int | None, day: int
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    notes = [place.because] if place.because else []
    evidence = list(place.evidence)
    if days_off is not None:
        notes.append("A restart after a break: lighter and shorter on purpose.")
    if after_illness(past.ill_until, past.days, day):
        notes.append(
            "First session after an illness: half the sets, and only once symptoms have gone. "
            "After fever or trouble with the chest, ask a licensed professional first."
        )
        evidence += ILL_EVIDENCE
    return tuple(notes), tuple(evidence)


def _warm_up(
    lifter: Lifter,
    exercise: Exercise,
    answer: Prescribed,
    steps: Ladder,
    mass: float,
    day: int,
    warm: bool,
) -> tuple[WarmUp, ...]:
    """Ramp sets lighter than the work; none where nothing lighter can be made."""
    if not answer.sets:
        return ()
    load = answer.sets[0].load_kg
    one_rm = lifter.one_rm(exercise.id, day)
    fraction = 0.75
    if load is not None and one_rm is not None:
        fraction = min(steps.system(load, mass) / one_rm.median, 1.0)
    found: list[WarmUp] = []
    for one in ramp(exercise, fraction, warm):
        made = WarmUp(None, one.of_working, one.reps, round(one.rest_s))
        if load is not None:
            lighter = steps.at_most(load * one.of_working)
            if load <= 0 or steps.of_system:
                target = steps.external(steps.system(load, mass) * one.of_working, mass)
                lighter = steps.at_most(target)
            lighter = steps.lightest() if lighter is None else lighter
            if lighter >= load or any(lighter == earlier.load_kg for earlier in found):
                continue
            made = replace(made, load_kg=lighter)
        found.append(made)
    return tuple(found)


def _how(exercise: Exercise, answer: Prescribed, gym: GymKit) -> str:
    """The plates a side of the first load; empty for loads that are simply picked."""
    if exercise.loading not in ("barbell", "plates"):
        return ""
    if not answer.sets or answer.sets[0].load_kg is None:
        return ""
    return nearest_load(exercise, answer.sets[0].load_kg, gym).text
