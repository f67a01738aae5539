"""Closed loop: the same lifters with the same luck, trained by one coach and by another."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from setwright.lab.attempt import Outcome, Told, attempt
from setwright.lab.body import Body
from setwright.lab.coaches import (
    RESTS_S,
    Coach,
    Ours,
    Written,
    steps,
)
from setwright.lab.curve import fraction_for
from setwright.lab.fate import Fate, draw_fate, session_of
from setwright.lab.movements import BAND, MOVEMENTS
from setwright.lab.open_loop import CHANGE_S, FIRST_DAY, START_MINUTE, WORK_S
from setwright.lab.progressions import RepsThenLoad, WeeklyPercentage
from setwright.lab.slips import as_logged
from setwright.lab.traits import Traits, draw_traits
from setwright.training.done import DoneSet

COACHES = ("ours", "repetitions then load", "1 % a week", "2 % a week")
BY_FEEL_RIR = 2.0
NOTHING_TOLD = -5.0
"""A felt reserve nobody reaches: the written repetitions alone end the set."""


@dataclass(frozen=True)
class ClosedRun:
    """One lifter under one coach.

    Attributes:
        gained: strength at the end over the start, percent, mean over the movements, fatigue
            and the day's form apart.
        sets: done.
        beyond: sets whose written repetitions were more than could be done.
        failed: sets in which a further repetition was tried in vain.
        left: repetitions really left at the end of a set, median.
        fraction: load over the 1RM of the moment, mean.
    """

    gained: float
    sets: int
    beyond: int
    failed: int
    left: float
    fraction: float


def coach_of(name: str, traits: Traits) -> Coach:
    """A coach of ``COACHES`` for one lifter."""
    if name == "ours":
        return Ours(traits, FIRST_DAY)
    if name == "repetitions then load":
        return RepsThenLoad()
    return WeeklyPercentage(float(name.split()[0]))


def run_closed(seed: np.random.SeedSequence, weeks: int, name: str) -> ClosedRun:
    """Train one lifter for so many weeks under a coach.

    Args:
        seed: of this lifter; the same for every coach.
        weeks: 1 or more.
        name: of ``COACHES``.
    """
    rng = np.random.default_rng(seed)
    traits = draw_traits(rng)
    fate = draw_fate(rng, weeks)
    body = Body(traits)
    coach = coach_of(name, traits)
    seen: list[tuple[Written, Outcome]] = []
    lived = 0
    for session, day in enumerate(fate.days.tolist()):
        while lived < day:
            body.sleep()
            lived += 1
        if fate.missed[session]:
            continue
        body.wake(float(fate.shape[day] + traits.day_sd * fate.day[day]))
        _train(body, fate, session, day, coach, seen)
    while lived < 7 * weeks:
        body.sleep()
        lived += 1
    efforts = [outcome.effort for _, outcome in seen]
    return ClosedRun(
        gained=float(100.0 * np.mean(np.exp(body.gained) - 1.0)),
        sets=len(seen),
        beyond=sum(outcome.effort.possible < written.reps for written, outcome in seen),
        failed=sum(outcome.failed for _, outcome in seen),
        left=float(np.median([one.possible - one.reps for one in efforts])) if efforts else 0.0,
        fraction=float(np.mean([one.fraction for one in efforts])) if efforts else 0.0,
    )


def by_feel(body: Body, exercise: str, error: float) -> float:
    """The first load, as lifted, for the middle of the band with some in reserve."""
    own = body.traits.own[exercise]
    low, top = BAND[MOVEMENTS[exercise].group]
    fraction = fraction_for((low + top) / 2 + BY_FEEL_RIR, own.floor, own.pace)
    found = steps(exercise)
    load = found.at_most(fraction * body.fresh_one_rm(exercise) * float(np.exp(error)))
    return found.lightest() if load is None else load


def _train(
    body: Body,
    fate: Fate,
    session: int,
    day: int,
    coach: Coach,
    seen: list[tuple[Written, Outcome]],
) -> None:
    names = session_of(session)
    plan = coach.write(names, FIRST_DAY + day)
    minute = START_MINUTE
    for place, exercise in enumerate(names):
        ladder = steps(exercise)
        usual = float(RESTS_S[MOVEMENTS[exercise].group])
        heard = []
        load = None
        for number, written in enumerate(plan.get(exercise, ())):
            rest = CHANGE_S if number == 0 else usual
            if place or number:
                body.rest(rest)
                minute += (rest + WORK_S) / 60.0
            if written.load_kg is not None:
                load = written.load_kg
            elif load is None:
                load = by_feel(body, exercise, fate.guess[exercise])
            told = Told(
                load,
                NOTHING_TOLD if written.rir is None else written.rir,
                written.most,
                written.reps if written.rir is None else None,
            )
            out = attempt(body, fate, (session, place, number), exercise, told)
            seen.append((written, out))
            heard.append((written, load, out))
            done = DoneSet(
                id=f"{session}-{place}-{number}",
                day=FIRST_DAY + day,
                minute=minute,
                exercise=exercise,
                number=number + 1,
                load_kg=load,
                system_kg=ladder.system(load, body.traits.mass_kg),
                reps=float(out.effort.reps),
                rir=out.called,
                to_failure=out.failed,
                rest_s=rest if place + number else None,
            )
            luck = fate.luck[session, place, number]
            neighbour = names[(place + 1) % len(names)]
            lines, _ = as_logged(done, neighbour, float(luck[3]), float(luck[4]))
            coach.log([one for one in lines if one.reps > 0])
        if heard:
            coach.hear(exercise, heard)
