"""The smallest change that helps, made on the plan: what a remark of the audit proposes."""

from __future__ import annotations

from math import ceil

from setwright.audit.remark import Mend, Remark
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.web.board import dosing, exchanging, moving
from setwright.web.board.changing import At, EditError, entry_at
from setwright.web.board.figures import rehearsal_of, report_of

# Rests are written in steps of so many seconds.
STEP_S = 5
LONGEST_S = 900


def can_mend(remark: Remark) -> bool:
    """Whether the board can make the change; the others ask for a choice or a person."""
    mend = remark.mend
    if mend is None:
        return False
    placed = remark.place is not None and remark.place.entry is not None
    match mend.kind:
        case "lengthen rest" | "shorten rest":
            return placed and mend.amount is not None
        case "move earlier" | "drop exercise":
            return placed
        case "add exercise" | "add sets":
            return mend.unit == "sets" and mend.target in catalogue.ids()
        case _:
            return False


def remark_of(plan: Plan, intake: Intake | None, criterion: str, subject: str) -> Remark:
    """The remark that the audit makes now.

    Raises:
        EditError: when it makes none any more.
    """
    for remark in report_of(plan, intake).remarks:
        if (remark.criterion, remark.subject) == (criterion, subject) and remark.mend is not None:
            return remark
    raise EditError("The audit does not say that any more.")


def mended(plan: Plan, remark: Remark, intake: Intake | None) -> tuple[Plan, At | None]:
    """The plan with the change made.

    Returns:
        The plan, and where the exercise stands that was changed, if it is there.

    Raises:
        EditError: when the board cannot make it.
    """
    mend = remark.mend
    if mend is None or not can_mend(remark):
        raise EditError("The board cannot make this change by itself.")
    if mend.kind in ("add exercise", "add sets"):
        return _more(plan, mend, intake)
    at = _place(remark)
    match mend.kind:
        case "drop exercise":
            return exchanging.remove(plan, at), None
        case "move earlier":
            return moving.move(plan, at, At(at.session, max(at.position - 1, 0)))
        case _:
            return _rest(plan, at, mend), at


def _place(remark: Remark) -> At:
    place = remark.place
    if place is None or place.entry is None:
        raise EditError("The remark is about no single exercise.")
    return At(place.session, place.entry)


def _rest(plan: Plan, at: At, mend: Mend) -> Plan:
    """A superset rests as its members with the longest rest do: all of it changes."""
    by = STEP_S * ceil((mend.amount or 0.0) / STEP_S) * (-1 if mend.kind == "shorten rest" else 1)
    entry_at(plan, at)
    start, end = moving.span(plan.sessions[at.session], at.position)
    for position in range(start, end):
        there = At(at.session, position)
        low, high = entry_at(plan, there).rest_s
        bounds = (min(max(low + by, 0), LONGEST_S), min(max(high + by, 0), LONGEST_S))
        plan = dosing.change(plan, there, rest_s=bounds)
    return plan


def _more(plan: Plan, mend: Mend, intake: Intake | None) -> tuple[Plan, At]:
    """More sets of an exercise where it stands, or the exercise where most time is left."""
    sets = max(ceil((mend.amount or 1.0) - 1e-9), 1)
    for number, session in enumerate(plan.sessions):
        for position, entry in enumerate(session.exercises):
            if entry.exercise == mend.target:
                at = At(number, position)
                return dosing.more_sets(plan, at, sets), at
    changed, at = exchanging.add(plan, _roomiest(plan, intake), mend.target, intake)
    return dosing.change(changed, at, sets=min(sets, dosing.MOST_SETS)), at


def _roomiest(plan: Plan, intake: Intake | None) -> int:
    """The session with most minutes left, or the shortest where none are said."""
    lived = rehearsal_of(plan, intake).sessions
    return max(
        range(len(plan.sessions)),
        key=lambda n: ((plan.sessions[n].minutes or 0) * 60 - lived[n].total_s, -n),
    )
