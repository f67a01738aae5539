"""Sessions that come, go, move to another day, get another name or other minutes."""

from __future__ import annotations

from setwright.plan.intake import DAYS, Day, Intake
from setwright.plan.week import Plan, Session
from setwright.web.board.changing import EditError, checked, session_at, with_sessions
from setwright.web.board.exchanging import prescribed
from setwright.web.board.moving import in_week_order


def first_plan(
    title: str, person: str, day: Day, exercise: str, intake: Intake | None
) -> Plan:  # fmt: skip
    """A week that begins with one session of one exercise.

    Raises:
        EditError: when the catalogue does not have the exercise.
    """
    session = _session(day, exercise, intake)
    unit = intake.unit if intake else "kg"
    return checked(
        Plan(setwright="plan/1", title=title, person=person, unit=unit, sessions=(session,))
    )


def add_session(plan: Plan, day: Day, exercise: str, intake: Intake | None) -> tuple[Plan, int]:
    """Add a session with its first exercise.

    Returns:
        The plan, and the index of the session.

    Raises:
        EditError: when the day has two sessions already, or the exercise is unknown.
    """
    sessions, number = in_week_order(list(plan.sessions), _session(day, exercise, intake))
    return with_sessions(plan, sessions), number


def remove_session(plan: Plan, number: int) -> Plan:
    """Take a session out with all its exercises.

    Raises:
        EditError: when it is the only one.
    """
    session_at(plan, number)
    return with_sessions(plan, [one for n, one in enumerate(plan.sessions) if n != number])


def change_session(
    plan: Plan, number: int, name: str, day: Day, minutes: int | None
) -> tuple[Plan, int]:
    """Give a session another name, day or minutes; the week stays in the order of its days.

    Returns:
        The plan, and the index of the session.

    Raises:
        EditError: when the day has two sessions already, or a figure is out of bounds.
    """
    old = session_at(plan, number)
    if not name.strip():
        raise EditError("A session needs a name.")
    changed = old.model_copy(update={"name": name.strip(), "day": day, "minutes": minutes})
    others = [one for n, one in enumerate(plan.sessions) if n != number]
    if day == old.day:
        return with_sessions(plan, [*others[:number], changed, *others[number:]]), number
    sessions, placed = in_week_order(others, changed)
    return with_sessions(plan, sessions), placed


def free_days(plan: Plan) -> tuple[Day, ...]:
    """Days without a session."""
    taken = {session.day for session in plan.sessions}
    return tuple(day for day in DAYS if day not in taken)


def _session(day: Day, exercise: str, intake: Intake | None) -> Session:
    minutes = next((one.minutes for one in intake.days if one.day == day), None) if intake else None
    return Session(
        name=day.capitalize(), day=day, minutes=minutes, exercises=(prescribed(exercise, intake),)
    )
