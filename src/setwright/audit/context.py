"""What every criterion looks at: the plan and what was computed from it, once."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import index
from setwright.exercises import catalogue
from setwright.exercises.model import Exercise
from setwright.plan.intake import DAYS, Intake
from setwright.plan.week import Entry, Plan
from setwright.rehearsal.model import Rehearsal, RehearsedSet
from setwright.response.growth import Person
from setwright.response.model import Dose, WeekResponse


@dataclass(frozen=True)
class Placed:
    """One exercise of the plan with its place and its declaration."""

    session: int
    position: int
    entry: Entry
    exercise: Exercise


@dataclass(frozen=True)
class Context:
    """A plan with everything the criteria read.

    Attributes:
        plan: the plan.
        intake: the person's limits, or None when the plan is judged alone.
        rehearsal: the plan lived through.
        doses: one per exercise of a session, in the plan's order.
        response: fractional sets and growth.
        person: whose response it is.
    """

    plan: Plan
    intake: Intake | None
    rehearsal: Rehearsal
    doses: tuple[Dose, ...]
    response: WeekResponse
    person: Person

    @cached_property
    def placed(self) -> tuple[Placed, ...]:
        """Every exercise of the week in order."""
        return tuple(
            Placed(number, position, entry, catalogue.exercise(entry.exercise))
            for number, session in enumerate(self.plan.sessions)
            for position, entry in enumerate(session.exercises)
        )

    def of_session(self, session: int) -> tuple[Placed, ...]:
        """The exercises of one session in order."""
        return tuple(item for item in self.placed if item.session == session)

    def rehearsed(self, item: Placed) -> tuple[RehearsedSet, ...]:
        """The rehearsed working sets of one exercise."""
        sets = self.rehearsal.sessions[item.session].sets
        return tuple(one for one in sets if one.entry == item.position)

    def shares(self, item: Placed) -> NDArray[np.float64]:
        """Shares of the exercise over the parts, shape (P,)."""
        row: NDArray[np.float64] = catalogue.shares()[catalogue.row(item.exercise.id)]
        return row

    def column(self, part: str) -> int:
        """Position of a part in every array over the parts."""
        return index()[part]

    def subject(self, item: Placed) -> str:
        """How a remark names an exercise of the week: unique within a criterion."""
        return self._subjects[item.session, item.position]

    @cached_property
    def _subjects(self) -> dict[tuple[int, int], str]:
        """Names of the exercises of the week; one done again on a day is numbered."""
        times: dict[str, int] = {}
        names = {}
        for item in self.placed:
            name = f"{item.exercise.id} on {self.plan.sessions[item.session].day}"
            times[name] = times.get(name, 0) + 1
            again = "" if times[name] == 1 else f", again ({times[name]})"
            names[item.session, item.position] = name + again
        return names

    def session_subject(self, session: int) -> str:
        """How a remark names a session."""
        return f"{self.plan.sessions[session].name} on {self.plan.sessions[session].day}"

    def pairs(self) -> Iterator[tuple[Placed, ...]]:
        """The supersets of the week: exercises of one session that share a letter."""
        for number in range(len(self.plan.sessions)):
            groups: dict[str, list[Placed]] = {}
            for item in self.of_session(number):
                if item.entry.superset:
                    groups.setdefault(item.entry.superset, []).append(item)
            yield from (tuple(group) for group in groups.values() if len(group) > 1)

    def day_number(self, session: int) -> int:
        """Day of the week of a session, Monday 0."""
        return DAYS.index(self.plan.sessions[session].day)
