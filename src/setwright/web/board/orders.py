"""What a coach asks of the board, carried out on a plan and said in words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from setwright.exercises import catalogue
from setwright.handout.remark_words import mend_words
from setwright.handout.wording import counted, rest_words, rir_words, span
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.web.board import days, dosing, exchanging, mending, moving, pairing
from setwright.web.board.changing import At, EditError, entry_at, name_at, session_at


@dataclass(frozen=True)
class Order:
    """An edit as it was asked for.

    Attributes:
        do: what to do, a name in `ORDERS`.
        at: where the exercise stood, or None for an order about a session.
        exercise: id of what stood there: it is found again when it has moved meanwhile.
        session: index of the session meant.
        fields: what was typed.
    """

    do: str
    at: At | None = None
    exercise: str = ""
    session: int = -1
    fields: Mapping[str, Any] = field(default_factory=dict)


@dataclass(frozen=True)
class Done:
    """A plan after an order.

    Attributes:
        said: what was done, in words for the versions and for a screen reader.
        at: where the exercise stands now, if there is one to look at.
        session: index of the session to look at.
    """

    plan: Plan
    said: str
    at: At | None = None
    session: int | None = None


def carry_out(order: Order, plan: Plan, intake: Intake | None) -> Done:
    """Make the edit.

    Raises:
        EditError: when it cannot be made on this plan.
    """
    if order.do not in ORDERS:
        raise EditError("The board knows no such action.")
    return ORDERS[order.do](order, plan, intake)


def find(order: Order, plan: Plan) -> At:
    """Where the exercise an order is about stands in a plan.

    Raises:
        EditError: when it is not there, or in several places and none is the one.
    """
    if order.at is None:
        raise EditError("Choose an exercise first.")
    places = [
        At(number, position)
        for number, session in enumerate(plan.sessions)
        for position, entry in enumerate(session.exercises)
        if entry.exercise == order.exercise
    ]
    if order.at in places:
        return order.at
    near = [one for one in places if one.session == order.at.session] or places
    if len(near) != 1:
        raise EditError("The exercise is not there any more.")
    return near[0]


def _prescribe(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    changed = dosing.change(plan, at, **order.fields)
    return Done(changed, _prescribed(changed, at), at)


def _prescribed(plan: Plan, at: At) -> str:
    entry = entry_at(plan, at)
    return (
        f"{name_at(plan, at)}: {entry.sets} × {span(*entry.reps)}, RIR {rir_words(entry)}, "
        f"rest {rest_words(entry.rest_s)}"
    )


def _sets(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    changed = dosing.more_sets(plan, at, order.fields["by"])
    said = f"{name_at(plan, at)}: {counted(entry_at(changed, at).sets, 'set')}"
    return Done(changed, said, at)


def _move(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    to = At(order.fields["session"], order.fields["position"])
    moved, now = moving.move(plan, at, to)
    return Done(moved, f"{name_at(plan, at)}: {_place(moved, now)}", now)


def _move_day(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    moved, now = moving.move_to_day(plan, at, order.fields["day"])
    return Done(moved, f"{name_at(plan, at)}: {_place(moved, now)}", now)


def _place(plan: Plan, at: At) -> str:
    session = session_at(plan, at.session)
    return f"{session.day.capitalize()}, place {at.position + 1} of {len(session.exercises)}"


def _join(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    joined = pairing.with_next(plan, at)
    letter = entry_at(joined, at).superset
    return Done(joined, f"{name_at(plan, at)}: in superset {letter}", at)


def _apart(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    changed, now = pairing.apart(plan, at)
    return Done(changed, f"{name_at(plan, at)}: done alone", now)


def _replace(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    changed = exchanging.replace(plan, at, order.fields["new"], intake)
    return Done(changed, f"{name_at(changed, at)} in place of {name_at(plan, at)}", at)


def _remove(order: Order, plan: Plan, intake: Intake | None) -> Done:
    at = find(order, plan)
    day = session_at(plan, at.session).day.capitalize()
    return Done(exchanging.remove(plan, at), f"{name_at(plan, at)} taken out of {day}")


def _add(order: Order, plan: Plan, intake: Intake | None) -> Done:
    changed, at = exchanging.add(plan, order.session, order.fields["new"], intake)
    day = session_at(changed, at.session).day.capitalize()
    return Done(changed, f"{name_at(changed, at)} added on {day}", at)


def _add_session(order: Order, plan: Plan, intake: Intake | None) -> Done:
    day, new = order.fields["day"], order.fields["new"]
    changed, number = days.add_session(plan, day, new, intake)
    name = catalogue.exercise(new).name
    return Done(changed, f"{day.capitalize()} added, with {name}", session=number)


def _session(order: Order, plan: Plan, intake: Intake | None) -> Done:
    changed, number = days.change_session(plan, order.session, **order.fields)
    session = session_at(changed, number)
    minutes = f", {session.minutes} min" if session.minutes else ""
    return Done(changed, f"{session.day.capitalize()}: {session.name}{minutes}", session=number)


def _mend(order: Order, plan: Plan, intake: Intake | None) -> Done:
    criterion, subject = order.fields["criterion"], order.fields["subject"]
    remark = mending.remark_of(plan, intake, criterion, subject)
    changed, at = mending.mended(plan, remark, intake)
    words = mend_words(remark.mend) if remark.mend else ""
    return Done(changed, f"{words[:1].upper()}{words[1:]}", at)


def _remove_session(order: Order, plan: Plan, intake: Intake | None) -> Done:
    session = session_at(plan, order.session)
    changed = days.remove_session(plan, order.session)
    return Done(changed, f"{session.day.capitalize()} ({session.name}) taken out")


ORDERS: Mapping[str, Callable[[Order, Plan, Intake | None], Done]] = {
    "prescribe": _prescribe,
    "sets": _sets,
    "move": _move,
    "move-day": _move_day,
    "join": _join,
    "apart": _apart,
    "replace": _replace,
    "remove": _remove,
    "add": _add,
    "add-session": _add_session,
    "session": _session,
    "mend": _mend,
    "remove-session": _remove_session,
}
