"""Sessions still to come, after what was done and missed of the week."""

from __future__ import annotations

from collections.abc import Collection
from datetime import date

from setwright.plan.intake import DAYS
from setwright.plan.week import Plan, Session
from setwright.training.attended import WEEK, attended, monday_of, planned_day
from setwright.training.client import Client
from setwright.training.missed import CatchUp, catch_up


def to_come(client: Client, plan: Plan) -> tuple[CatchUp | None, tuple[tuple[int, Session], ...]]:
    """Sessions still to be done this week and next, with their days, in order.

    Args:
        client: up to today.
        plan: in force.

    Returns:
        How to go on after missed sessions, or None; and day (proleptic ordinal) and session.
    """
    monday = monday_of(client.day)
    done = attended(plan, client.past, monday)
    missed = catch_up(plan, client.folder.intake, done, client.day)
    coming = (
        *_this_week(plan, done, missed, client.day, monday),
        *_next_week(client, plan, monday + WEEK),
    )
    return missed, coming


def _this_week(
    plan: Plan, done: Collection[int], missed: CatchUp | None, today: int, monday: int
) -> list[tuple[int, Session]]:
    """Sessions of this week still to be done, with their days, in order."""
    days = {n: planned_day(plan, n, monday) for n in range(len(plan.sessions)) if n not in done}
    sessions = dict(enumerate(plan.sessions))
    if missed is not None:
        days |= {one.number: monday + DAYS.index(one.to_day) for one in missed.moves}
        for drop in missed.drops:
            days.pop(drop.number, None)
        for extra in missed.added:
            number, position = extra.taken_from
            entry = plan.sessions[number].exercises[position]
            more = entry.model_copy(update={"sets": extra.sets, "superset": None})
            home = sessions[extra.into]
            sessions[extra.into] = home.model_copy(update={"exercises": (*home.exercises, more)})
    return [
        (day, sessions[n]) for day, n in sorted((day, n) for n, day in days.items()) if day >= today
    ]


def _next_week(client: Client, plan: Plan, monday: int) -> list[tuple[int, Session]]:
    """Sessions of the week after, by the plan that is in force then."""
    then = client.folder.plan_on(date.fromordinal(monday)) or plan
    found = [(planned_day(then, n, monday), n) for n in range(len(then.sessions))]
    return [(day, then.sessions[n]) for day, n in sorted(found)]
