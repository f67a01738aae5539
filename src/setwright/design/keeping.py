"""What a design keeps of another plan: exercises that stay on their day as they are prescribed."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from string import ascii_uppercase

import numpy as np
from numpy.typing import NDArray

from setwright.documents.errors import DocumentError, Fault
from setwright.plan.intake import Day
from setwright.plan.week import Entry, Plan, Session


@dataclass(frozen=True)
class Kept:
    """Exercises that stay.

    Attributes:
        entries: index of the day and the exercise, in the order of the plan.
        days: names of the days by their index.
        names: names of the sessions by their day.
    """

    entries: tuple[tuple[int, Entry], ...] = ()
    days: tuple[Day, ...] = ()
    names: Mapping[Day, str] = field(default_factory=dict)

    def stays(self, day: Day, entry: Entry) -> bool:
        """Whether an exercise of a day is kept."""
        return any(
            self.days[number] == day and one.exercise == entry.exercise
            for number, one in self.entries
        )

    def cells(self, days: int) -> NDArray[np.bool_]:
        """The day of each, shape (K, D)."""
        found = np.zeros((len(self.entries), days), dtype=bool)
        for row, (day, _) in enumerate(self.entries):
            found[row, day] = True
        return found


NOTHING_KEPT = Kept()


def kept_of(plan: Plan, days: Sequence[Day]) -> Kept:
    """Everything of a plan, to be kept.

    Args:
        plan: what stays, and nothing else.
        days: the days that are trained, in order.

    Raises:
        DocumentError: when the plan has a session on another day, or an exercise twice on one.
    """
    found: list[tuple[int, Entry]] = []
    names: dict[Day, str] = {}
    for number, session in enumerate(plan.sessions):
        if session.day not in days:
            raise _fault(f"sessions.{number}.day", session.day, f"one of {', '.join(days)}")
        names.setdefault(session.day, session.name)
        day = days.index(session.day)
        held = {entry.exercise for there, entry in found if there == day}
        taken = {entry.superset for there, entry in found if there == day}
        for entry in _lettered(session, taken):
            if entry.exercise in held:
                raise _fault(f"sessions.{number}", f"{entry.exercise} twice", "once a day")
            held.add(entry.exercise)
            found.append((day, entry))
    return Kept(tuple(found), tuple(days), names)


def _fault(where: str, what: str, allowed: str) -> DocumentError:
    return DocumentError("keep", (Fault(where, what, allowed),))


def _lettered(session: Session, taken: set[str | None]) -> list[Entry]:
    """The exercises with letters no other session has; what has lost its partner has none."""
    letters = [entry.superset for entry in session.exercises]
    shared = [one for one in dict.fromkeys(letters) if one and letters.count(one) > 1]
    fresh = dict(zip(shared, (one for one in ascii_uppercase if one not in taken), strict=False))
    return [
        entry.model_copy(update={"superset": fresh.get(entry.superset or "")})
        for entry in session.exercises
    ]


def gathered(entries: Sequence[Entry]) -> list[Entry]:
    """The exercises with those of a superset one after the other, where the first of it stands."""
    found: list[Entry] = []
    for entry in entries:
        if entry.superset is None:
            found.append(entry)
        elif entry not in found:
            found += [one for one in entries if one.superset == entry.superset]
    return found
