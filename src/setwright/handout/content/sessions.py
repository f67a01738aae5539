"""The sessions of a week as a handout says them."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.documents.units import load_words
from setwright.exercises import catalogue
from setwright.exercises.kit import GymKit, stock_of
from setwright.exercises.model import Exercise
from setwright.handout.content.model import Group, Line, SessionContent, SetLine
from setwright.handout.timeline import blocks
from setwright.handout.wording import first_load, number, rest_words, rir_words, span, tempo_words
from setwright.plan.intake import Intake
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.model import RehearsedSession, WarmUpSet

# Where along the range it is hardest decides which end must not be cut short.
RANGE_LONG = "Full, all the way into the stretch."
RANGE_MIDDLE = "Full, both ends."
RANGE_SHORT = "Full, every repetition finished."
PARTIALS = {
    "after the last set": "Full; after the last set go on with partials in the long half.",
    "whole sets": "The long half only, every repetition.",
}
LONG_UNTIL, SHORT_FROM = 1 / 3, 2 / 3


def session_content(
    plan: Plan,
    session: Session,
    lived: RehearsedSession,
    substitutes: Mapping[str, str],
    intake: Intake | None,
) -> SessionContent:
    """One session, exercises in the order they are done.

    Args:
        plan: the week it belongs to.
        session: the session.
        lived: the same session, rehearsed.
        substitutes: exercise id to the name of its stand-in.
        intake: the person; a full gym's loads are used for the warm-up without it.
    """
    gym = stock_of(intake.gym, intake.kit) if intake else stock_of("full gym")
    groups, order = [], 0
    for block in blocks(session, lived):
        lines = []
        for lane in block.lanes:
            order += 1
            lines.append(_line(plan, session, lived, lane.position, order, substitutes, gym))
        groups.append(Group(session.exercises[block.lanes[0].position].superset or "", (*lines,)))
    return SessionContent(
        session.day,
        session.name,
        round(lived.total_s / 60),
        f"{lived.low_s / 60:.0f} to {lived.high_s / 60:.0f} min",
        session.minutes,
        tuple(groups),
    )


def _line(
    plan: Plan,
    session: Session,
    lived: RehearsedSession,
    position: int,
    order: int,
    substitutes: Mapping[str, str],
    gym: GymKit,
) -> Line:
    entry = session.exercises[position]
    exercise = catalogue.exercise(entry.exercise)
    done = [one for one in lived.sets if one.entry == position]
    ramp = tuple(
        _ramp(one, exercise, plan, gym) for entry_, one in lived.warm_up if entry_ == position
    )
    return Line(
        f"{order}{entry.superset or ''}",
        exercise.id,
        exercise.name,
        span(*entry.reps, mark="–"),
        " a side" if exercise.sides == "one" else "",
        rir_words(entry),
        rest_words(entry.rest_s, mark="–"),
        tempo_words(entry.tempo),
        first_load(lived, position, plan),
        done[0].load_kg if done else None,
        range_cue(entry),
        ". ".join((*exercise.cues, *exercise.cautions)) + ".",
        ramp,
        substitutes.get(exercise.id, ""),
        entry.note,
        tuple(SetLine(one.number, number(round(2 * one.rir) / 2)) for one in done),
    )


def range_cue(entry: Entry) -> str:
    """Through which range the exercise is done."""
    if entry.partials is not None:
        return PARTIALS[entry.partials]
    hardest = catalogue.profile(entry.exercise).hardest
    if hardest < LONG_UNTIL:
        return RANGE_LONG
    return RANGE_SHORT if hardest > SHORT_FROM else RANGE_MIDDLE


def _ramp(one: WarmUpSet, exercise: Exercise, plan: Plan, gym: GymKit) -> str:
    """A warm-up set: repetitions and the load the kit can make, or its share of the work."""
    if one.load_kg is None:
        return f"{one.reps} × {one.of_working:.0%} of the load"
    reachable = gym.loads(exercise)
    load = one.load_kg
    if reachable:
        load = max((each for each in reachable if each <= load + 1e-6), default=reachable[0])
    return f"{one.reps} × {load_words(load, plan.unit)}"
