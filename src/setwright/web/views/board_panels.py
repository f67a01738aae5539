"""What is opened beside the board, out of an address or after an order that could not be made."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.web.board import inside, locks
from setwright.web.board.changing import At, EditError, entry_at, session_at
from setwright.web.board.days import free_days
from setwright.web.board.figures import report_of
from setwright.web.board.finding import find
from setwright.web.board.panel import ExercisePanel, exercise_panel
from setwright.web.forms.board import (
    OrderForm,
    PrescribeForm,
    SessionForm,
    place_of,
    prescription_of,
    session_of,
)
from setwright.web.models import Week


@dataclass(frozen=True)
class Panel:
    """What is opened.

    Attributes:
        exercise: the exercise looked at.
        session: index of the session looked at, or None.
        adding: whether a day is being added.
        form: prescription or session, with what was typed.
        show: which look inside is open: ``profile``, ``why`` or ``substitutes``.
        rows: what that look shows, or what a search found.
        query: what was searched for.
        error: why an order could not be made.
    """

    exercise: ExercisePanel | None = None
    session: int | None = None
    day: str = ""
    adding: bool = False
    free: tuple[str, ...] = ()
    form: OrderForm | None = None
    show: str = ""
    rows: tuple[Any, ...] = ()
    query: str = ""
    error: str = ""


def no_panel() -> Panel:
    """Nothing opened."""
    return Panel()


def panel_of(
    week: Week,
    plan: Plan | None,
    intake: Intake | None,
    asked: Mapping[str, str],
    form: OrderForm | None = None,
    error: str = "",
) -> Panel:
    """What an address asks to be opened; nothing when it is not there any more.

    Args:
        week: the week.
        plan: its plan, None while it is empty.
        intake: of the person.
        asked: ``at``, ``session`` or ``add``, with ``show`` and ``q``.
        form: what was typed, when an order could not be made.
        error: why it could not.
    """
    at = place_of(asked.get("at", ""))
    query = asked.get("q", "").strip()[:80]
    if plan is None or "add" in asked:
        free = free_days(plan) if plan else ()
        hits = find(query, intake)
        return Panel(adding=True, free=free, rows=hits, query=query, error=error)
    try:
        if at is not None:
            return _exercise(week, plan, intake, at, asked.get("show", ""), query, form, error)
        if asked.get("session", "").isdecimal():
            return _session(plan, intake, int(asked["session"]), query, form, error)
    except EditError as fault:
        return Panel(error=error or str(fault))
    return Panel(error=error)


def _exercise(
    week: Week,
    plan: Plan,
    intake: Intake | None,
    at: At,
    show: str,
    query: str,
    form: OrderForm | None,
    error: str,
) -> Panel:
    entry = entry_at(plan, at)
    locked = locks.keys(plan) & set(week.locked)
    if not isinstance(form, PrescribeForm):
        form = PrescribeForm(initial=prescription_of(entry, plan.unit), prefix=None)
    rows: tuple[Any, ...] = ()
    if show == "profile":
        rows = inside.profile_of(entry.exercise)
    elif show == "why":
        rows = inside.reasons(plan, at, intake)
    elif show == "substitutes":
        rows = find(query, intake) if query else inside.substitutes(plan, at, intake)
    seen = exercise_panel(plan, at, report_of(plan, intake), locked)
    return Panel(exercise=seen, form=form, show=show, rows=rows, query=query, error=error)


def _session(
    plan: Plan, intake: Intake | None, number: int, query: str, form: OrderForm | None, error: str
) -> Panel:
    session = session_at(plan, number)
    if not isinstance(form, SessionForm):
        form = SessionForm(initial=session_of(session))
    return Panel(
        session=number,
        day=session.day.capitalize(),
        form=form,
        rows=find(query, intake),
        query=query,
        error=error,
    )
