"""The next set of an exercise, in the form that page and script share."""

from __future__ import annotations

from dataclasses import replace
from typing import TypedDict

from setwright.documents.units import Unit, from_kg
from setwright.exercises import catalogue
from setwright.handout.next_text import load_text
from setwright.handout.wording import number
from setwright.plan.week import Entry
from setwright.training.client import Client
from setwright.training.due import step_after, trouble_now
from setwright.training.ladder import ladder
from setwright.training.next_session import PlannedExercise
from setwright.training.next_set import NextSet, stopped
from setwright.training.sets import PlannedSet
from setwright.training.trouble import Trouble
from setwright.web.phone.counted import count_of, sets_today, why_unread

# With the warm-up before it nothing has to be waited for.
NO_REST_S = 0


class Suggestion(TypedDict):
    """One set to come.

    Attributes:
        number: from 1.
        kg: load as lifted; None when it is found by feel or has no figure.
        figure: the load in the client's unit, as it is written into the field.
        load: the load in words.
        reps: to aim at.
        most: to stop at even when more is left.
        rir: to stop at, as felt.
        failure: as many as possible.
        rest_s: to take before it.
        over: nothing more of this exercise.
        because: short plain sentences.
    """

    number: int
    kg: float | None
    figure: str
    load: str
    reps: int
    most: int
    rir: float
    failure: bool
    rest_s: int
    over: bool
    because: list[str]


def figure_of(load_kg: float | None, unit: Unit) -> str:
    """A load as it is written into a field; empty when there is none."""
    return "" if load_kg is None else number(from_kg(load_kg, unit))


def asked_first(planned: PlannedSet, exercise: str, unit: Unit) -> Suggestion:
    """A set as it was planned before the session."""
    return Suggestion(
        number=planned.number,
        kg=planned.load_kg,
        figure=figure_of(planned.load_kg, unit),
        load=load_text(planned.load_kg, exercise, unit),
        reps=planned.reps,
        most=planned.most,
        rir=planned.rir,
        failure=planned.to_failure,
        rest_s=NO_REST_S if planned.number == 1 else planned.rest_s[1],
        over=False,
        because=[],
    )


def asked_next(step: NextSet, entry: Entry, last_kg: float | None, unit: Unit) -> Suggestion:
    """A set as the sets before it ask for it.

    Args:
        step: as computed.
        entry: of the plan.
        last_kg: load of the set before, kept where the next one has no figure.
        unit: of the client.
    """
    load = last_kg if step.load_kg is None and not step.over else step.load_kg
    return Suggestion(
        number=step.number,
        kg=load,
        figure=figure_of(load, unit),
        load="" if step.over else load_text(load, entry.exercise, unit),
        reps=step.reps,
        most=max(entry.reps[1], step.reps),
        rir=step.rir,
        failure=not step.over and step.rir == 0 and step.reps > 0 and entry.rir[1] > 0,
        rest_s=step.rest_s,
        over=step.over,
        because=list(step.because),
    )


def suggested(
    client: Client, entry: Entry, planned: PlannedExercise, unit: Unit, today: bool = True
) -> Suggestion:
    """The next set of an exercise, begun today or not; the first of one that is for later."""
    trouble = trouble_now(client, entry.exercise)
    done = [one for one in client.today() if today and one.exercise == entry.exercise]
    logged = sets_today(client, entry.exercise) if today else ()
    count = count_of(logged)
    sets = planned.prescribed.sets
    if trouble.stop:
        return asked_next(stopped(count + 1, trouble), entry, None, unit)
    if not sets:
        words = tuple(planned.prescribed.because)
        over = NextSet(1, None, 0, 0.0, 0, None, None, None, True, words, ())
        return asked_next(over, entry, None, unit)
    if count >= len(sets):
        return asked_next(_finished(count), entry, None, unit)
    if not done and count:
        return _as_planned(client, entry, sets[count], trouble, unit)
    if not done:
        return asked_first(sets[0], entry.exercise, unit)
    step = step_after(client, client.lifter, entry, planned.prescribed, client.today(), trouble)
    if count > len(done):
        step = replace(step, number=count + 1)
    return asked_next(step, entry, done[-1].load_kg, unit)


def _finished(count: int) -> NextSet:
    words = ("All sets of this exercise are done.",)
    return NextSet(count + 1, None, 0, 0.0, 0, None, None, None, True, words, ())


def _as_planned(
    client: Client, entry: Entry, asked: PlannedSet, trouble: Trouble, unit: Unit
) -> Suggestion:
    """The next set where those before it say nothing of strength: at the load of the last one."""
    logged = sets_today(client, entry.exercise)
    steps = ladder(catalogue.exercise(entry.exercise), client.gym)
    load = logged[-1].load_kg
    words = f"As planned, at the same load: {why_unread(client, logged)}."
    if trouble.lighter and steps.measured:
        lighter = steps.below(load)
        if lighter is None:
            text = f"Pain {trouble.pain} of 10 and no lighter load: stop this exercise for today."
            over = replace(_finished(asked.number - 1), because=(text,))
            return asked_next(over, entry, None, unit)
        load, words = lighter, "Pain: a step lighter; stop if it grows."
    found = asked_first(replace(asked, load_kg=load), entry.exercise, unit)
    found["because"] = [words]
    return found
