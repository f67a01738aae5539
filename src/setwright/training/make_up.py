"""Exercises of a dropped session that still fit into the sessions that are kept."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from setwright.plan.intake import Day
from setwright.response.model import Dose
from setwright.training.week_worth import WeekWorth

# More would make a session far longer than the person is used to (rhabdo-spike; the figure is
# common practice).
MOST_ADDED = 2


@dataclass(frozen=True)
class Added:
    """An exercise of a dropped session done in another one.

    Attributes:
        taken_from: index of the dropped session, and of the exercise in it.
        into: index of the session that takes it in.
        exercise: id.
        sets: of it.
        session: that takes it in.
        day: for which that session was planned.
    """

    taken_from: tuple[int, int]
    into: int
    exercise: str
    sets: int
    session: str
    day: Day


@dataclass(frozen=True)
class _Offer:
    dose: Dose
    sets: int
    seconds: float
    gain: float


def made_up(
    week: WeekWorth, kept: frozenset[int], dropped: Sequence[int], room: Mapping[int, float]
) -> tuple[tuple[Added, ...], float]:
    """Exercises to add, most growth a minute first, and what the week is then worth.

    Args:
        week: as figures.
        kept: sessions done or to be done.
        dropped: sessions left out.
        room: spare seconds of the sessions to be done.
    """
    doses = [dose for dose in week.doses if dose.session in kept]
    waiting = [
        (number, position)
        for number in dropped
        for position in range(len(week.plan.sessions[number].exercises))
    ]
    spare = dict(room)
    taken: dict[int, int] = {}
    added: list[Added] = []
    worth = week.worth_of(doses)
    while waiting:
        offers = [
            (offer.gain / offer.seconds, -session, place, offer)
            for place in range(len(waiting))
            for session, seconds in spare.items()
            if taken.get(session, 0) < MOST_ADDED
            and (offer := _offer(week, doses, worth, waiting[place], session, seconds)) is not None
        ]
        if not offers:
            break
        _, _, place, offer = max(offers, key=lambda one: one[:3])
        taken_from = waiting.pop(place)
        session = offer.dose.session
        doses.append(offer.dose)
        worth += offer.gain
        spare[session] -= offer.seconds
        taken[session] = taken.get(session, 0) + 1
        home = week.plan.sessions[session]
        added.append(
            Added(taken_from, session, offer.dose.exercise, offer.sets, home.name, home.day)
        )
    return tuple(added), worth


def _offer(
    week: WeekWorth,
    doses: Sequence[Dose],
    worth: float,
    wanted: tuple[int, int],
    session: int,
    seconds: float,
) -> _Offer | None:
    """As many sets of an exercise as fit into a session, and what they gain; None for no gain."""
    number, position = wanted
    entry = week.plan.sessions[number].exercises[position]
    if any(one.exercise == entry.exercise and one.session == session for one in doses):
        return None
    before, each = week.set_seconds(number, position)
    sets = min(int((seconds - before) // each), entry.sets)
    if sets < min(2, entry.sets):
        return None
    first = sum(len(one.exercises) for one in week.plan.sessions[:number])
    dose = replace(week.doses[first + position], session=session, sets=float(sets))
    gain = week.worth_of([*doses, dose]) - worth
    return _Offer(dose, sets, before + each * sets, gain) if gain > 0 else None
