"""One exercise of a session with everything a person needs in front of it."""

from __future__ import annotations

from bisect import bisect_left
from datetime import date
from typing import TypedDict

from setwright.documents.units import Unit
from setwright.exercises import catalogue
from setwright.exercises.kit import nearest_load
from setwright.exercises.model import Exercise
from setwright.handout.content.sessions import range_cue
from setwright.handout.next_text import load_text
from setwright.handout.wording import number, rest_words, rir_words, span, tempo_words
from setwright.plan.week import Entry
from setwright.training.client import Client
from setwright.training.ladder import ladder
from setwright.training.next_session import PlannedExercise, WarmUp
from setwright.web.phone.suggestion import Suggestion, asked_first, figure_of, suggested

# Loads sent to the phone, below and above the one asked for.
AROUND = 24
# Where any load can be had, steps of the buttons.
FREE_STEP: dict[Unit, float] = {"kg": 0.5, "lb": 1.0}


class LoadStep(TypedDict):
    """A load the kit can make: as lifted, as written, in words, and how it is made."""

    kg: float
    figure: str
    words: str
    how: str


class Work(TypedDict):
    """An exercise at its place.

    Attributes:
        exercise: id.
        mark: place and letter of the superset: ``2`` or ``3A``.
        aim: sets, repetitions, reserve and rest in words.
        sides: ``one`` when a side is done at a time.
        pair: the load is of one hand.
        loads: rising; empty where any load can be had.
        measured: False where the load has no figure.
        sets: as planned before the session.
        first: what is asked now, from the sets of today.
        last: the last time, or empty words.
        how: how plates make the first load, or empty.
        rep_s: seconds a repetition takes.
    """

    exercise: str
    name: str
    mark: str
    superset: str
    aim: str
    tempo: str
    range: str
    cues: list[str]
    cautions: list[str]
    note: str
    because: list[str]
    warm_up: list[dict[str, str]]
    sides: str
    pair: bool
    measured: bool
    loads: list[LoadStep]
    step: float
    rest_s: list[int]
    partials: str
    how: str
    sets: list[Suggestion]
    first: Suggestion
    last: str
    rep_s: float


def work(
    client: Client,
    entry: Entry,
    planned: PlannedExercise,
    day: date,
    mark: str,
    unit: Unit,
    today: bool,
) -> Work:
    """Put together what is known of an exercise on a day.

    Args:
        client: with the sets of today.
        entry: of the plan.
        planned: its sets.
        day: the session is for.
        mark: its place in the session.
        unit: of every load.
        today: the session is today's, so that sets of today belong to it.
    """
    exercise = catalogue.exercise(entry.exercise)
    answer = planned.prescribed
    sets = [asked_first(one, exercise.id, unit) for one in answer.sets]
    return Work(
        exercise=exercise.id,
        name=exercise.name,
        mark=mark,
        superset=entry.superset or "",
        aim=_aim(entry, exercise, len(sets)),
        tempo=tempo_words(entry.tempo),
        range=range_cue(entry),
        cues=list(exercise.cues),
        cautions=list(exercise.cautions),
        note=entry.note,
        because=list(answer.because),
        warm_up=[_ramp(one, exercise, client, unit) for one in planned.warm_up],
        sides=exercise.sides,
        pair=exercise.loading == "dumbbell pair",
        measured=ladder(exercise, client.gym).measured,
        loads=_loads(client, exercise, sets[0]["kg"] if sets else None, unit),
        step=FREE_STEP[unit],
        rest_s=list(entry.rest_s),
        partials=entry.partials or "",
        how=planned.how if "a side" in planned.how else "",
        sets=sets,
        first=suggested(client, entry, planned, unit, today),
        last=_last_time(client, exercise.id, day, unit),
        rep_s=exercise.rep_s,
    )


def _aim(entry: Entry, exercise: Exercise, sets: int) -> str:
    if not sets:
        return "Left out today"
    side = " a side" if exercise.sides == "one" else ""
    left = rir_words(entry).replace(">", "then")
    return (
        f"{sets} × {span(*entry.reps, mark='–')}{side}, {left} left, "
        f"rest {rest_words(entry.rest_s, mark='–')}"
    )


def _ramp(one: WarmUp, exercise: Exercise, client: Client, unit: Unit) -> dict[str, str]:
    if one.load_kg is None:
        return {"text": f"{one.reps} × about {one.of_working:.0%} of the load", "how": ""}
    text = f"{one.reps} × {load_text(one.load_kg, exercise.id, unit)}"
    return {"text": text, "how": _how(exercise, one.load_kg, client)}


def _how(exercise: Exercise, load_kg: float, client: Client) -> str:
    """How plates make a load; empty for loads that are simply picked."""
    if exercise.loading not in ("barbell", "plates"):
        return ""
    return nearest_load(exercise, load_kg, client.gym).text


def _loads(
    client: Client, exercise: Exercise, asked_kg: float | None, unit: Unit
) -> list[LoadStep]:
    steps = ladder(exercise, client.gym).steps or ()
    middle = len(steps) // 2 if asked_kg is None else bisect_left(steps, asked_kg)
    near = steps[max(middle - AROUND, 0) : middle + AROUND + 1]
    if asked_kg is None:
        near = steps if len(steps) <= 2 * AROUND else steps[:: len(steps) // AROUND]
    return [
        LoadStep(
            kg=one,
            figure=figure_of(one, unit),
            words=load_text(one, exercise.id, unit),
            how=_how(exercise, one, client),
        )
        for one in near
    ]


def _last_time(client: Client, exercise: str, day: date, unit: Unit) -> str:
    """The last outing before a day, set by set; equal loads are said once."""
    known = client.past.before(exercise, min(day.toordinal(), client.day))
    if not known:
        return ""
    words: list[str] = []
    load: float | None = None
    for one in known[-1].sets:
        left = "to failure" if one.to_failure else "" if one.rir is None else f"{one.rir:g} left"
        reps = f"{number(one.reps)} ({left})" if left else number(one.reps)
        said = load_text(one.load_kg, exercise, unit)
        words.append(reps if one.load_kg == load else f"{said} × {reps}")
        load = one.load_kg
    return f"{date.fromordinal(known[-1].day):%a %-d %b}: {', '.join(words)}"
