"""Which sessions of a plan's week were done, told by their exercises."""

from __future__ import annotations

from collections.abc import Collection

from setwright.plan.intake import DAYS
from setwright.plan.week import Plan
from setwright.training.past import Past

# A day counts as a session when at least this share of its exercises was done (common practice).
LEAST_SHARE = 1 / 3
WEEK = 7


def monday_of(day: int) -> int:
    """Ordinal of the Monday of a day's week."""
    return day - (day - 1) % WEEK


def planned_day(plan: Plan, session: int, monday: int) -> int:
    """Ordinal of the day a session is planned for."""
    return monday + DAYS.index(plan.sessions[session].day)


def session_of(
    plan: Plan, done: Collection[str], weekday: int, taken: Collection[int] = ()
) -> int | None:
    """The session a day's exercises belong to, or None.

    Args:
        plan: the week.
        done: exercise ids.
        weekday: 0 for Monday; the session planned for that day wins a tie.
        taken: sessions already done this week.
    """
    best: tuple[float, bool, int] | None = None
    for number, session in enumerate(plan.sessions):
        if number in taken:
            continue
        ids = {entry.exercise for entry in session.exercises}
        share = len(ids & set(done)) / len(ids)
        rank = (share, session.day == DAYS[weekday], -number)
        if share >= LEAST_SHARE and (best is None or rank > best):
            best = rank
    return None if best is None else -best[2]


def session_under_way(plan: Plan, done: Collection[str], weekday: int) -> int | None:
    """The session that a day's first sets have begun, or None.

    Args:
        plan: the week.
        done: exercise ids.
        weekday: 0 for Monday; the session planned for that day comes first.
    """
    found = [
        (session.day == DAYS[weekday], shared, -number)
        for number, session in enumerate(plan.sessions)
        if (shared := len({entry.exercise for entry in session.exercises} & set(done)))
    ]
    return -max(found)[2] if found else None


def attended(plan: Plan, past: Past, monday: int) -> dict[int, int]:
    """Sessions done in a week: index of the session to ordinal of the day."""
    by_day: dict[int, set[str]] = {}
    for exercise, outings in past.outings.items():
        for outing in outings:
            if monday <= outing.day < monday + WEEK:
                by_day.setdefault(outing.day, set()).add(exercise)
    found: dict[int, int] = {}
    for day in sorted(by_day):
        session = session_of(plan, by_day[day], day - monday, found)
        if session is not None:
            found[session] = day
    return found
