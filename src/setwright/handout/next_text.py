"""The next set and the next session, to be read at arm's length."""

from __future__ import annotations

from datetime import date
from itertools import groupby

from setwright.documents.units import Unit, load_words
from setwright.exercises import catalogue
from setwright.handout.log_text import exercise_words
from setwright.handout.wording import counted, folded, number, rest_words
from setwright.plan.symptoms import Symptom
from setwright.training.client import Client
from setwright.training.due import DueSession, DueSet
from setwright.training.from_log import left_out
from setwright.training.missed import CatchUp
from setwright.training.next_session import PlannedExercise
from setwright.training.sets import PlannedSet
from setwright.training.stop_signs import referral

WIDTH = 96
NAME = 34


def load_text(load_kg: float | None, exercise_id: str, unit: Unit) -> str:
    """A load as it is taken up: a hand, added to body weight, or as help."""
    if load_kg is None:
        return "by feel"
    exercise = catalogue.exercise(exercise_id)
    if exercise.loading == "bodyweight":
        if load_kg == 0:
            return "body weight"
        words = load_words(abs(load_kg), unit)
        return f"{words} of help" if load_kg < 0 else f"+ {words}"
    words = load_words(load_kg, unit)
    return f"{words} a hand" if exercise.loading == "dumbbell pair" else words


def unread_text(client: Client) -> str:
    """Sets of today that the next one cannot be told from, and why; empty when there are none."""
    groups: dict[tuple[str, str], int] = {}
    for one, why in left_out(client.folder.log, client.folder.intake):
        if one.at.date().toordinal() == client.day:
            groups[one.exercise, why] = groups.get((one.exercise, why), 0) + 1
    lines = [
        f"Logged today, not counted: {counted(sets, 'set')} of {exercise_words(ident)}: {why}."
        for (ident, why), sets in groups.items()
    ]
    return "".join(f"\n{folded(line, WIDTH)}" for line in lines)


def set_text(due: DueSet, unit: Unit, symptoms: tuple[Symptom, ...] = ()) -> str:
    """The next set in a few lines."""
    name = catalogue.exercise(due.exercise).name
    if due.finished:
        return f"{due.session or 'Today'}: everything is done."
    if due.start is not None:
        title, *rest = _exercise(due.start, unit)
        return "\n".join([f"Next: {title}" if due.of else title, *rest])
    step = due.step
    assert step is not None
    if step.over:
        lines = [f"{name}: no further set.", *_because(step.because)]
        return "\n".join([*lines, *(folded(f"  {one.words}", WIDTH) for one in referral(symptoms))])
    one_sided = " a side" if catalogue.exercise(due.exercise).sides == "one" else ""
    lines = [
        f"{name}, set {step.number} of {due.of}",
        f"  rest  {_minutes(step.rest_s)}",
        f"  load  {load_text(step.load_kg, due.exercise, unit)}",
        f"  reps  {step.reps}{one_sided}, stop with {number(step.rir)} left as felt",
    ]
    if step.expected is not None and step.low is not None and step.high is not None:
        lines.append(f"  expected {step.expected:.0f} (80 % {step.low:.0f} to {step.high:.0f})")
    return "\n".join([*lines, *_because(step.because)])


def session_text(due: DueSession, unit: Unit) -> str:
    """The session to come as a table, with what was missed before it."""
    session = due.session
    day = date.fromordinal(session.day)
    head = f"{session.name}, {day:%A} {day.isoformat()}, week {session.place.week} of the block"
    lines = [head]
    lines += [folded(note, WIDTH) for note in session.notes]
    if session.symptoms:
        lines += [folded(one.words, WIDTH) for one in referral(session.symptoms)]
        return "\n".join(lines)
    if due.missed is not None:
        lines += _missed(due.missed)
    for number_, exercise in enumerate(session.exercises, start=1):
        lines += ["", *_exercise(exercise, unit, number_)]
    lines += [
        "",
        "left: repetitions in reserve to stop at, as felt. More left at the number given: go on "
        "to the\nband's top. In brackets: repetitions expected, with an 80 % interval.",
    ]
    return "\n".join(lines)


def _exercise(planned: PlannedExercise, unit: Unit, place: int | None = None) -> list[str]:
    answer = planned.prescribed
    name = catalogue.exercise(answer.exercise).name
    letter = f" ({planned.superset})" if planned.superset else ""
    title = f"{name}{letter}" if place is None else f"{place}. {name}{letter}"
    lines = [title if answer.sets else f"{title}: left out today"]
    if planned.warm_up:
        ramps = ", ".join(
            f"{one.reps} x {load_text(one.load_kg, answer.exercise, unit)}"
            if one.load_kg is not None
            else f"{one.reps} x about {one.of_working:.0%} of the load"
            for one in planned.warm_up
        )
        lines.append(f"   warm-up  {ramps}")
    for _, group in groupby(answer.sets, key=_alike):
        lines.append(f"   {_sets(answer.exercise, list(group), unit)}")
    if "a side" in planned.how:
        lines.append(f"   {planned.how}")
    return [*lines, *_because(answer.because)]


def _alike(one: PlannedSet) -> tuple[float | None, int, float, bool]:
    return one.load_kg, one.reps, one.rir, one.to_failure


def _sets(exercise_id: str, sets: list[PlannedSet], unit: Unit) -> str:
    one = sets[0]
    side = " a side" if catalogue.exercise(exercise_id).sides == "one" else ""
    load = load_text(one.load_kg, exercise_id, unit)
    reps = f"{one.reps}{side}" if one.expected is not None else f"{one.reps} to {one.most}{side}"
    left = f"{number(one.rir)} left"
    if one.to_failure:
        reps, left = f"{one.reps} or more{side}", "to failure"
    text = f"{len(sets)} x {reps:<11} {load:<16} {left:<10}  rest {rest_words(one.rest_s)}"
    if one.expected is None or one.low is None or one.high is None:
        return text
    return f"{text}   ({one.expected:.0f}, {one.low:.0f} to {one.high:.0f})"


def _missed(missed: CatchUp) -> list[str]:
    lines = [f"Missed this week: {', '.join(missed.missed)}."]
    lines += [f"  move {m.session}: {m.from_day} to {m.to_day}" for m in missed.moves]
    lines += [
        f"  add {catalogue.exercise(one.exercise).name}, {counted(one.sets, 'set')}, to "
        f"{one.session} ({one.day})"
        for one in missed.added
    ]
    lines += [
        f"  drop {one.session} ({one.day}): {one.lost:.0%} of the week's expected growth"
        for one in missed.drops
    ]
    return [*lines, *_because(missed.because)]


def _because(words: tuple[str, ...]) -> list[str]:
    return [folded(one, WIDTH, initial_indent="   ", subsequent_indent="   ") for one in words]


def _minutes(seconds: int) -> str:
    return f"{seconds // 60}:{seconds % 60:02d} min"
