"""A session missed again and again: another day for it, or its best exercises elsewhere."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from pydantic import JsonValue

from setwright.audit.compare import compare
from setwright.exercises import catalogue
from setwright.plan.intake import DAYS
from setwright.plan.week import Plan
from setwright.rehearsal.rehearse import rehearse
from setwright.training.facts.attendance import WEEKS, SessionDone, sessions_done
from setwright.training.facts.week import Facts
from setwright.training.labels import labels, session_label
from setwright.training.make_up import Added, made_up
from setwright.training.proposals.changing import (
    Change,
    refuse,
    session_in,
    text_of,
    with_session,
)
from setwright.training.proposals.guard import loads_sore_parts_more
from setwright.training.proposals.model import (
    Expected,
    Proposal,
    compared,
    effect_of,
    proposal_id,
)
from setwright.training.week_worth import WeekWorth

MOVE, DROP = "move a session", "drop a session"
RANK = 30
LEAST_MISSED = 2
OVER_MINUTES = 1.0
SOURCES = ("practice-frequency", "frequency-hypertrophy-meta-2019-scope")


def propose(facts: Facts) -> Iterator[Proposal]:
    """A way on for the session that is missed most."""
    if facts.plan is None or all(one.done_on is None for one in facts.sessions):
        return
    counts = _missed(facts, facts.plan)
    rows = [(times, of, name) for name, (times, of) in counts.items() if times >= LEAST_MISSED]
    for times, of, name in sorted(rows, key=lambda row: (-row[0], row[2])):
        reasons = [one.reason for one in facts.sessions if one.session == name and one.reason]
        said = f"{name}: missed in {times} of the last {of} weeks"
        evidence = f"{said}; said this time: {reasons[0]}." if reasons else f"{said}."
        yield _moved(facts, facts.plan, name, evidence, times) or _dropped(
            facts, facts.plan, name, evidence, times
        )
        return


def move_applied(plan: Plan, change: Change, _: object) -> Plan:
    """The plan with a session on another day."""
    number = session_in(plan, text_of(change, "session"))
    day = text_of(change, "day").lower()
    if day not in DAYS:
        raise refuse("day", day, ", ".join(DAYS))
    if sum(one.day == day for one in plan.sessions) > 1:
        raise refuse("day", day, "a day with at most one other session")
    moved = plan.sessions[number].model_copy(update={"day": day})
    return with_session(plan, number, moved)


def drop_applied(plan: Plan, change: Change, _: object) -> Plan:
    """The plan without a session, and with what of it is added to others."""
    number = session_in(plan, text_of(change, "session"))
    gone = {entry.exercise: entry for entry in plan.sessions[number].exercises}
    for exercise, sets, to in _additions(change):
        if exercise not in gone:
            raise refuse("add", exercise, f"an exercise of the session: {', '.join(gone)}")
        at = session_in(plan, to, "add")
        if at == number:
            raise refuse("add", to, "another session than the one that goes")
        entry = gone[exercise].model_copy(update={"sets": sets, "superset": None})
        home = plan.sessions[at]
        if any(one.exercise == exercise for one in home.exercises):
            raise refuse("add", exercise, f"one that {to} does not hold already")
        home = home.model_copy(update={"exercises": (*home.exercises, entry)})
        plan = with_session(plan, at, home)
    return with_session(plan, number, None)


def _additions(change: Change) -> Iterator[tuple[str, int, str]]:
    allowed = "a list of {exercise, sets, to}"
    rows = change.get("add", [])
    if not isinstance(rows, list):
        raise refuse("add", rows, allowed)
    for row in rows:
        if not isinstance(row, dict):
            raise refuse("add", row, allowed)
        exercise, sets, to = row.get("exercise"), row.get("sets"), row.get("to")
        if not (isinstance(exercise, str) and isinstance(to, str) and type(sets) is int):
            raise refuse("add", row, allowed)
        if not 1 <= sets <= 20:
            raise refuse("add", sets, "1 to 20 sets")
        yield exercise, sets, to


def _missed(facts: Facts, plan: Plan) -> dict[str, tuple[int, int]]:
    """Weeks in which each session of the plan was missed, this one among them, of those known."""
    found: dict[str, tuple[int, int]] = {}
    for back in range(WEEKS):
        monday = facts.monday - timedelta(7 * back)
        then = facts.client.folder.plan_on(monday)
        if then is None:
            continue
        for one in sessions_done(facts.client, then, monday):
            if one.session not in labels(plan):
                continue
            times, of = found.get(one.session, (0, 0))
            found[one.session] = times + _is_missed(facts, one), of + 1
    now = {one.session for one in facts.sessions if _is_missed(facts, one)}
    return {name: counts for name, counts in found.items() if name in now}


def _is_missed(facts: Facts, one: SessionDone) -> bool:
    return one.done_on is None and one.planned_on <= facts.day


def _moved(facts: Facts, plan: Plan, name: str, evidence: str, times: int) -> Proposal | None:
    """Another day of the intake that is free, long enough, and no worse for recovery."""
    number = session_in(plan, name)
    minutes = rehearse(plan, facts.intake).sessions[number].total_s / 60
    taken = {session.day for session in plan.sessions}
    best: tuple[int, int, Change, Expected] | None = None
    for item in facts.intake.days:
        if item.day in taken or item.minutes + OVER_MINUTES < minutes:
            continue
        change: Change = {"session": name, "day": item.day}
        found = compare(plan, move_applied(plan, change, None), facts.intake)
        rank = found.second.misses, DAYS.index(item.day)
        if best is None or rank < best[:2]:
            best = *rank, change, effect_of(found, "The same work, on a day that may suit better.")
    if best is None:
        return None
    return Proposal(
        proposal_id(MOVE, name, facts.monday),
        MOVE,
        name,
        f"{name} on {str(best[2]['day']).capitalize()} from next week",
        best[2],
        (evidence,),
        best[3],
        "It stays on its day; each week without it gives up its share of the growth.",
        SOURCES,
        float(times),
        RANK,
    )


def _dropped(facts: Facts, plan: Plan, name: str, evidence: str, times: int) -> Proposal:
    """The plan without the session; its best exercises where there are minutes to spare."""
    number = session_in(plan, name)
    week = WeekWorth(plan, facts.intake, facts.monday.toordinal())
    kept = frozenset(range(len(plan.sessions))) - {number}
    spare = {one.day: one.minutes * 60.0 for one in facts.intake.days}
    room = {at: spare.get(plan.sessions[at].day, 0.0) - week.seconds[at] for at in sorted(kept)}
    added, _ = made_up(week, kept, [number], room)
    rows: list[JsonValue] = [
        {"exercise": one.exercise, "sets": one.sets, "to": _home(plan, one)} for one in added
    ]
    change: Change = {"session": name, "add": rows}
    after = _without(plan, change)
    if after is None or loads_sore_parts_more(facts, plan, after):
        change = {"session": name, "add": []}
        after = _without(plan, change)
    homes = ", ".join(
        f"{catalogue.exercise(one.exercise).name} to {_home(plan, one)}" for one in added
    )
    return Proposal(
        proposal_id(DROP, name, facts.monday),
        DROP,
        name,
        f"The week without {name}" + (f"; {homes}" if change["add"] else ""),
        change,
        (evidence, "No other day of the intake is free and long enough."),
        Expected(words="It is the only session.")
        if after is None
        else compared(plan, after, facts.intake, "Against the plan as if all of it were done."),
        "It stays; each week without it gives up its share of the growth.",
        SOURCES,
        float(times),
        RANK,
    )


def _home(plan: Plan, one: Added) -> str:
    """Label of the session that takes an exercise in."""
    places = [(session.name, session.day) for session in plan.sessions]
    return session_label(plan, places.index((one.session, one.day)))


def _without(plan: Plan, change: Change) -> Plan | None:
    return None if len(plan.sessions) == 1 else drop_applied(plan, change, None)
