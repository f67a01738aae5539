"""Entries of the week that are too far off to be believed: to be asked about."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from setwright.documents.units import KG_PER_LB
from setwright.training.client import Client
from setwright.training.done import DoneSet

# A load off by the factor between the units, within a tenth.
NEAR = 0.1


@dataclass(frozen=True)
class OddSet:
    """A set that cannot well be right.

    Attributes:
        id: of the log record.
        day: proleptic ordinal.
        exercise: id.
        load_kg: as logged.
        reps: as logged.
        expected: repetitions that were expected at that load.
        instead_kg: the load if the other unit was meant; None when that does not explain it.
    """

    id: str
    day: int
    exercise: str
    load_kg: float
    reps: float
    expected: float
    instead_kg: float | None


def odd_sets(client: Client, monday: date) -> tuple[OddSet, ...]:
    """Sets of a week that the estimate did not believe, in time order."""
    first = monday.toordinal()
    unbelieved = {one.id: expected for one, expected in client.odd}
    last: dict[str, float] = {}
    found = []
    for one in client.done:
        expected = unbelieved.get(one.id)
        if expected is None:
            last[one.exercise] = one.load_kg
        elif first <= one.day < first + 7:
            found.append(_odd(one, expected, last.get(one.exercise)))
    return tuple(found)


def _odd(one: DoneSet, expected: float, before: float | None) -> OddSet:
    instead = None
    if before and one.load_kg > 0:
        for factor in (KG_PER_LB, 1 / KG_PER_LB):
            if abs(one.load_kg * factor / before - 1) <= NEAR:
                instead = one.load_kg * factor
    return OddSet(one.id, one.day, one.exercise, one.load_kg, one.reps, expected, instead)
