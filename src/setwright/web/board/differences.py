"""What differs between two versions of a week, line by line."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from setwright.exercises import catalogue
from setwright.plan.shorthand import format_prescription
from setwright.plan.week import Entry, Plan

Kind = Literal["added", "taken out", "changed", "moved"]


@dataclass(frozen=True)
class Change:
    """One exercise that differs.

    Attributes:
        day: on which it stands, in the second plan unless it was taken out.
        before: what it was, empty when it was added.
        after: what it is, empty when it was taken out.
    """

    kind: Kind
    day: str
    name: str
    before: str
    after: str


def differences(first: Plan, second: Plan) -> tuple[Change, ...]:
    """What the second plan has otherwise than the first, in the order of the week."""
    old, new = _lines(first), _lines(second)
    gone = {place: line for place, line in old.items() if place not in new}
    found = []
    for (day, exercise, nth), line in new.items():
        name = catalogue.exercise(exercise).name
        if (before := old.get((day, exercise, nth))) is not None:
            if before != line:
                found.append(Change("changed", day, name, before, line))
            continue
        left = next((place for place in gone if place[1] == exercise), None)
        if left is None:
            found.append(Change("added", day, name, "", line))
        else:
            found.append(Change("moved", day, name, f"{left[0]}: {gone.pop(left)}", line))
    found += [
        Change("taken out", day, catalogue.exercise(exercise).name, line, "")
        for (day, exercise, _), line in gone.items()
    ]
    return tuple(found)


def _lines(plan: Plan) -> dict[tuple[str, str, int], str]:
    """Prescriptions by day, exercise and how often it stood there before."""
    found: dict[tuple[str, str, int], str] = {}
    for session in plan.sessions:
        for entry in session.exercises:
            day, nth = session.day.capitalize(), 0
            while (day, entry.exercise, nth) in found:
                nth += 1
            found[day, entry.exercise, nth] = _line(entry, plan)
    return found


def _line(entry: Entry, plan: Plan) -> str:
    return format_prescription(entry, plan.unit)
