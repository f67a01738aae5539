"""Entries of the week that are too far off to be believed: to be asked about."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from setwright.documents.units import KG_PER_LB
from setwright.training.client import Client
from setwright.training.done import DoneSet
from setwright.training.lifter import Lifter
from setwright.training.seeds import seeds_of

# A load off by the factor between the units, within a tenth.
NEAR = 0.1
# What was done in so many weeks before tells what to expect.
WEEKS_BEFORE = 16


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
    intake = client.folder.intake
    lifter = Lifter.start(intake.sex, intake.experience, seeds_of(intake))
    last: dict[str, float] = {}
    found = []
    for one in client.done:
        if not first - 7 * WEEKS_BEFORE <= one.day < first + 7:
            continue
        fold = lifter.fold(one)
        if fold.odd and one.day >= first:
            found.append(_odd(one, fold.expected, last.get(one.exercise)))
        if not fold.odd:
            last[one.exercise] = one.load_kg
    return tuple(found)


def _odd(one: DoneSet, expected: float, before: float | None) -> OddSet:
    instead = None
    if before and one.load_kg > 0:
        for factor in (KG_PER_LB, 1 / KG_PER_LB):
            if abs(one.load_kg * factor / before - 1) <= NEAR:
                instead = one.load_kg * factor
    return OddSet(one.id, one.day, one.exercise, one.load_kg, one.reps, expected, instead)
