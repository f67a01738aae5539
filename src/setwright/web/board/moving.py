"""Moving an exercise within its day, to another day, or to a new one."""

from __future__ import annotations

from setwright.plan.intake import DAYS, Day
from setwright.plan.week import Entry, Plan, Session
from setwright.web.board.changing import (
    At,
    EditError,
    entry_at,
    session_at,
    whole_supersets,
    with_entries,
    with_sessions,
)


def move(plan: Plan, at: At, to: At) -> tuple[Plan, At]:
    """Move an exercise before what stands at a place.

    Args:
        plan: the week.
        at: where the exercise stands.
        to: session, and the position before which it goes, counted as they stand now; the number
            of exercises there puts it last. A superset of others is never split: the exercise
            goes past it.

    Returns:
        The plan, and where the exercise stands in it.

    Raises:
        EditError: when there is no such place, or the day would be too full.
    """
    entry, target = entry_at(plan, at), session_at(plan, to.session)
    if not 0 <= to.position <= len(target.exercises):
        raise EditError("There is no such place in the session.")
    if at.session == to.session:
        return _within(plan, at, to.position)
    gap = _past_superset(target, to.position, after=True)
    arriving = list(target.exercises)
    arriving.insert(gap, entry.model_copy(update={"superset": None}))
    if len(arriving) > 30:
        raise EditError("A session holds 30 exercises at most.")
    moved = with_entries(plan, to.session, arriving)
    left = [one for n, one in enumerate(session_at(plan, at.session).exercises) if n != at.position]
    moved = with_entries(moved, at.session, left)
    gone = not left and at.session < to.session
    return moved, At(to.session - gone, gap)


def move_to_day(plan: Plan, at: At, day: Day) -> tuple[Plan, At]:
    """Move an exercise to a session of its own on a day.

    Returns:
        The plan, and where the exercise stands in it.

    Raises:
        EditError: when there is no such exercise.
    """
    entry = entry_at(plan, at).model_copy(update={"superset": None})
    fresh = Session(name=day.capitalize(), day=day, exercises=(entry,))
    left = [one for n, one in enumerate(session_at(plan, at.session).exercises) if n != at.position]
    sessions = list(plan.sessions)
    if left:
        sessions[at.session] = sessions[at.session].model_copy(
            update={"exercises": tuple(whole_supersets(left))}
        )
    else:
        del sessions[at.session]
    placed, number = in_week_order(sessions, fresh)
    return with_sessions(plan, placed), At(number, 0)


def in_week_order(sessions: list[Session], fresh: Session) -> tuple[list[Session], int]:
    """The sessions with a fresh one after those of earlier days and its own, and its index."""
    day = DAYS.index(fresh.day)
    number = sum(1 for one in sessions if DAYS.index(one.day) <= day)
    return [*sessions[:number], fresh, *sessions[number:]], number


def _within(plan: Plan, at: At, gap: int) -> tuple[Plan, At]:
    session = session_at(plan, at.session)
    entry = session.exercises[at.position]
    start, end = span(session, at.position)
    own = entry.superset is not None and start <= gap <= end
    if not own:
        gap = _past_superset(session, gap, after=gap > at.position)
    position = gap - (gap > at.position)
    if own or position != at.position:
        entry = entry if own else entry.model_copy(update={"superset": None})
    entries: list[Entry] = [one for n, one in enumerate(session.exercises) if n != at.position]
    entries.insert(position, entry)
    return with_entries(plan, at.session, entries), At(at.session, position)


def span(session: Session, position: int) -> tuple[int, int]:
    """First position of the superset an exercise is in, and the one after its last."""
    letters = [one.superset for one in session.exercises]
    start, end = position, position + 1
    while letters[position] and start > 0 and letters[start - 1] == letters[position]:
        start -= 1
    while letters[position] and end < len(letters) and letters[end] == letters[position]:
        end += 1
    return start, end


def _past_superset(session: Session, gap: int, *, after: bool) -> int:
    """The gap, or the end or beginning of the superset it would split."""
    if 0 < gap < len(session.exercises):
        start, end = span(session, gap)
        if start < gap:
            return end if after else start
    return gap
