"""Missed sessions of a week: what to move where, and what to drop with the least loss.

Every way of putting the sessions that are left on the days that are left is tried: at most one a
day, within the day's minutes, and without working a muscle hard on days in a row unless the plan
does so itself. The way that keeps most of the week's growth, as the person's aims weigh it, wins;
among equals the one with the fewest moves.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from setwright.audit.criteria.recovery import EVIDENCE as RECOVERY_EVIDENCE
from setwright.plan.intake import DAYS, Day, Intake
from setwright.plan.week import Plan
from setwright.training.attended import monday_of, planned_day
from setwright.training.make_up import Added, made_up
from setwright.training.week_worth import WeekWorth

# A session may run over its minutes by so much.
OVER_S = 60.0


@dataclass(frozen=True)
class Move:
    """A session done on another day than planned; ``number`` is its index in the plan."""

    number: int
    session: str
    from_day: Day
    to_day: Day


@dataclass(frozen=True)
class Drop:
    """A session left out this week.

    Attributes:
        number: its index in the plan.
        session: its name.
        day: for which it was planned.
        lost: share of the week's expected growth that goes with it, 0 to 1.
    """

    number: int
    session: str
    day: Day
    lost: float


@dataclass(frozen=True)
class CatchUp:
    """The rest of a week after something was missed.

    Attributes:
        missed: names of sessions that are overdue.
        moves: to make.
        added: exercises of dropped sessions that fit into others.
        drops: sessions left out, less what of them is added elsewhere.
        kept: share of the week's expected growth that the answer keeps, 0 to 1.
        because: in plain words.
        evidence: ids of findings.
    """

    missed: tuple[str, ...]
    moves: tuple[Move, ...]
    added: tuple[Added, ...]
    drops: tuple[Drop, ...]
    kept: float
    because: tuple[str, ...]
    evidence: tuple[str, ...]


def catch_up(plan: Plan, intake: Intake, attended: Mapping[int, int], today: int) -> CatchUp | None:
    """How to go on after missed sessions; None when nothing is overdue.

    Args:
        plan: in force this week.
        intake: days and minutes to be had.
        attended: sessions done this week, with the ordinal of their day.
        today: proleptic ordinal; a session of today is not overdue yet.
    """
    monday = monday_of(today)
    left = [n for n in range(len(plan.sessions)) if n not in attended]
    overdue = [n for n in left if planned_day(plan, n, monday) < today]
    if not overdue:
        return None
    week = WeekWorth(plan, intake, monday)
    done = frozenset(attended)
    trained = {day: session for session, day in attended.items()}
    days = _days(intake, monday, today, trained)
    best: tuple[tuple[float, int, int], dict[int, int]] | None = None
    for chosen in _ways(week, days, frozenset(left), trained):
        moved = [day for day, n in chosen.items() if planned_day(plan, n, monday) != day]
        worth = week.worth(done | frozenset(chosen.values()))
        rank = (round(worth, 6), -len(moved), -sum(chosen))
        if best is None or rank > best[0]:
            best = rank, chosen
    chosen = {} if best is None else best[1]
    seconds = dict(days)
    room = {day: (n, seconds[day] - week.seconds[n]) for day, n in chosen.items()}
    return _answer(week, done, overdue, left, room)


def _days(
    intake: Intake, monday: int, today: int, trained: Mapping[int, int]
) -> list[tuple[int, float]]:
    """Days left that can be trained, with their seconds."""
    found = []
    for item in intake.days:
        day = monday + DAYS.index(item.day)
        if day >= today and day not in trained:
            found.append((day, item.minutes * 60.0))
    return sorted(found)


def _ways(
    week: WeekWorth,
    days: list[tuple[int, float]],
    left: frozenset[int],
    trained: Mapping[int, int],
) -> Iterator[dict[int, int]]:
    """Every allowed way of putting sessions on days: day to session."""
    if not days:
        yield {}
        return
    (day, seconds), later = days[0], days[1:]
    yield from _ways(week, later, left, trained)
    before = trained.get(day - 1)
    for session in sorted(left):
        on_its_day = planned_day(week.plan, session, week.monday) == day
        if not on_its_day and week.seconds[session] > seconds + OVER_S:
            continue
        if before is not None and week.clash(before, session):
            continue
        for rest in _ways(week, later, left - {session}, {**trained, day: session}):
            yield {day: session, **rest}


def _answer(
    week: WeekWorth,
    done: frozenset[int],
    overdue: list[int],
    left: list[int],
    room: dict[int, tuple[int, float]],
) -> CatchUp:
    """The answer in words; ``room`` is session and spare seconds by day."""
    plan, monday = week.plan, week.monday
    kept = done | frozenset(session for session, _ in room.values())
    whole = week.worth(frozenset(range(len(plan.sessions))))
    moves = tuple(
        Move(n, plan.sessions[n].name, plan.sessions[n].day, DAYS[day - monday])
        for day, (n, _) in sorted(room.items())
        if planned_day(plan, n, monday) != day
    )
    dropped = [n for n in left if n not in kept]
    added, worth = made_up(week, kept, dropped, dict(room.values()))
    drops = tuple(
        Drop(n, plan.sessions[n].name, plan.sessions[n].day, week.lost(kept, n) / whole)
        for n in dropped
    )
    because = []
    if moves:
        because.append("Moved to days of the intake that are free and long enough.")
    if added:
        because.append("Added where the session has minutes to spare and growth gains most.")
    if drops:
        because.append(
            "Dropped is what costs the week least: no two sessions in a day, and no muscle worked "
            "hard on days in a row. One week with less work loses little."
        )
    evidence = (*RECOVERY_EVIDENCE, "maintenance-dose-one-third-one-ninth-2011")
    names = tuple(plan.sessions[n].name for n in overdue)
    return CatchUp(
        names, moves, added, drops, worth / whole if whole else 1.0, tuple(because), evidence
    )
