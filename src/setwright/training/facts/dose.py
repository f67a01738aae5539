"""What the sets that were really done are worth to each part, against what it should get."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

import numpy as np

from setwright.anatomy.atlas import parts
from setwright.exercises import catalogue
from setwright.plan.week import Entry, Plan
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import doses_of, respond
from setwright.response.model import Dose, WeekResponse
from setwright.response.person import person_of
from setwright.response.targets import Band, bands
from setwright.training.client import Client
from setwright.training.done import DoneSet
from setwright.training.from_log import left_out

DRAWS = 400
# Effort and rest of a set that says nothing, when the plan does not have the exercise either.
UNSAID_RIR = 2.0
UNSAID_REST_S = 120.0
LEAST_KEPT = 0.2
# Nearer to a limit than this is on it: shares are not known better.
NEAR_SETS = 0.25
Standing = Literal["under", "enough", "good", "over", "not asked for"]


@dataclass(frozen=True)
class PartDose:
    """One part's week.

    Attributes:
        part: id.
        band: what it should get.
        planned: fractional sets of the plan.
        done: fractional sets really done.
        standing: of what was done against the band.
        growth: expected of what was done, percent a week, median.
        low: lower end of the 80 % interval.
        high: upper end.
        planned_growth: expected of the plan, median.
    """

    part: str
    band: Band
    planned: float
    done: float
    standing: Standing
    growth: float
    low: float
    high: float
    planned_growth: float


def part_doses(client: Client, plan: Plan | None, monday: date) -> tuple[PartDose, ...]:
    """Dose of every part that is asked for or trained, in the order of the atlas."""
    intake = client.folder.intake
    person = person_of(intake)
    doses = done_doses(client, plan, monday)
    done = _response(doses, client)
    planned: WeekResponse | None = None
    if plan is not None:
        lived = rehearse(plan, intake)
        planned = respond(
            doses_of(plan, lived), person, len(plan.sessions), DRAWS, seed=intake.seed
        )
    wanted = bands(intake)
    rows = []
    for at, part in enumerate(parts()):
        sets = float(done.weekly_sets[at]) if done else 0.0
        asked = float(planned.weekly_sets[at]) if planned else 0.0
        band = wanted[part.id]
        if band.least == 0 and max(sets, asked) == 0:
            continue
        rows.append(
            PartDose(
                part.id,
                band,
                asked,
                sets,
                standing(sets, band),
                float(done.growth[at]) if done else 0.0,
                float(done.growth_low[at]) if done else 0.0,
                float(done.growth_high[at]) if done else 0.0,
                float(planned.growth[at]) if planned else 0.0,
            )
        )
    return tuple(rows)


def standing(sets: float, band: Band) -> Standing:
    """Where fractional sets a week stand in a band."""
    if sets > band.most + NEAR_SETS:
        return "over"
    if band.least == 0:
        return "not asked for"
    if sets < band.least - NEAR_SETS:
        return "under"
    return "good" if sets >= band.good - NEAR_SETS else "enough"


def _response(doses: Sequence[Dose], client: Client) -> WeekResponse | None:
    if not doses:
        return None
    intake = client.folder.intake
    sessions = max(one.session for one in doses) + 1
    return respond(doses, person_of(intake), sessions, DRAWS, seed=intake.seed)


def done_doses(client: Client, plan: Plan | None, monday: date) -> tuple[Dose, ...]:
    """Working sets of a week as doses: real effort, rest and repetitions kept; a day a session.

    Sets that say nothing of strength (an unknown load, for example) count with the plan's effort.
    """
    first = monday.toordinal()
    entries = {} if plan is None else {e.exercise: e for s in plan.sessions for e in s.exercises}
    groups: dict[tuple[int, str], list[DoneSet]] = {}
    for one in client.done:
        if first <= one.day < first + 7:
            groups.setdefault((one.day, one.exercise), []).append(one)
    # Sides logged apart are halves of a set.
    further: dict[tuple[int, str], float] = {}
    reps: dict[tuple[int, str], list[int]] = {}
    for record, _ in left_out(client.folder.log, client.folder.intake):
        day = record.at.toordinal()
        usable = record.exercise in catalogue.ids() and record.reps > 0 and not record.symptoms
        if usable and first <= day < first + 7 and day <= client.day:
            key = day, record.exercise
            further[key] = further.get(key, 0.0) + (0.5 if record.side else 1.0)
            reps.setdefault(key, []).append(record.reps)
    keys = sorted({*groups, *further})
    place = {day: number for number, day in enumerate(sorted({day for day, _ in keys}))}
    return tuple(
        _dose(client, place[day], exercise, groups.get((day, exercise), []),
              further.get((day, exercise), 0.0), reps.get((day, exercise), []),
              entries.get(exercise))
        for day, exercise in keys
    )  # fmt: skip


def _dose(
    client: Client,
    session: int,
    exercise: str,
    sets: list[DoneSet],
    further: float,
    further_reps: list[int],
    entry: Entry | None,
) -> Dose:
    unsaid = UNSAID_RIR if entry is None else sum(entry.rir) / 2
    rests = [one.rest_s for one in sets[1:] if one.rest_s]
    usual = UNSAID_REST_S if entry is None else sum(entry.rest_s) / 2
    left = [real_rir(client, one, unsaid) for one in sets]
    kept = [_kept(client, one, rir) for one, rir in zip(sets, left, strict=True)]
    reps = [max(one.reps, 1.0) for one in sets] + [float(one) for one in further_reps]
    return Dose(
        session,
        exercise,
        len(sets) + further,
        float(np.mean(reps)),
        float(np.mean(left)) if left else unsaid,
        float(np.mean(rests)) if rests else usual,
        entry is not None and entry.partials == "whole sets",
        float(np.mean(kept)) if kept else 1.0,
    )


def real_rir(client: Client, one: DoneSet, unsaid: float) -> float:
    """Repetitions really left after a set: as felt, corrected by the estimate's honesty."""
    if one.to_failure:
        return 0.0
    if one.rir is None:
        return unsaid
    bias = client.lifter.honesty(one.exercise).bias
    # As the estimate reads a call: no reserve felt is no reserve.
    return max(one.rir + min(one.rir, 1.0) * bias, 0.0)


def _kept(client: Client, one: DoneSet, rir: float) -> float:
    """Share of the fresh repetitions that was left at a set's start."""
    fresh = client.lifter.predict(one.exercise, one.system_kg, client.day, rir=0.0, kept=1.0).mean
    if fresh <= 0:
        return 1.0
    return float(min(max((one.reps + rir) / fresh, LEAST_KEPT), 1.0))
