"""What the sessions of a week are worth, as the person's aims weigh growth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from setwright.audit.criteria.recovery import MOST_BOTH_DAYS
from setwright.audit.muscles import parts_of_muscles
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.rehearsal.clock import change_seconds
from setwright.rehearsal.model import RehearsedSession
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import central_growth, doses_of
from setwright.response.model import Dose
from setwright.response.person import person_of
from setwright.response.targets import priority_weights
from setwright.training.attended import planned_day


class WeekWorth:
    """One week of a plan as figures.

    Attributes:
        plan: the week.
        monday: its first day, as an ordinal.
        doses: of every exercise, in the plan's order.
        seconds: of every session on the clock.
    """

    def __init__(self, plan: Plan, intake: Intake, monday: int) -> None:
        """Rehearse the week once."""
        lived = rehearse(plan, intake)
        self.plan = plan
        self.monday = monday
        self.doses = doses_of(plan, lived)
        self.seconds = [one.total_s for one in lived.sessions]
        self._lived = lived.sessions
        self._person = person_of(intake)
        self._weights = priority_weights(intake)
        self._worth: dict[frozenset[int], float] = {}
        self._muscles = np.array([self._by_muscle(n) for n in range(len(plan.sessions))])

    def _by_muscle(self, session: int) -> NDArray[np.float64]:
        sets = np.zeros(catalogue.shares().shape[1])
        for dose in self.doses:
            if dose.session == session:
                sets += dose.sets * catalogue.shares()[catalogue.row(dose.exercise)]
        return np.array([sets[columns].max() for columns in parts_of_muscles().values()])

    def worth(self, sessions: frozenset[int]) -> float:
        """Growth of a week with these sessions, percent a week, weighed."""
        if sessions not in self._worth:
            self._worth[sessions] = self.worth_of([d for d in self.doses if d.session in sessions])
        return self._worth[sessions]

    def worth_of(self, doses: Sequence[Dose]) -> float:
        """Growth of these doses, percent a week, weighed."""
        if not doses:
            return 0.0
        place = {session: n for n, session in enumerate(sorted({d.session for d in doses}))}
        renumbered = [replace(dose, session=place[dose.session]) for dose in doses]
        growth = central_growth(renumbered, self._person, len(place))
        return float(self._weights @ growth)

    def lost(self, kept: frozenset[int], session: int) -> float:
        """What a session would add to those kept."""
        return self.worth(kept | {session}) - self.worth(kept)

    def clash(self, early: int, late: int) -> bool:
        """Whether two sessions on days in a row work a muscle hard twice, unlike the plan."""
        days = [planned_day(self.plan, one, self.monday) for one in (early, late)]
        if (days[1] - days[0]) % 7 == 1:
            return False
        both = np.minimum(self._muscles[early], self._muscles[late])
        return bool(both.max() > MOST_BOTH_DAYS)

    def set_seconds(self, session: int, position: int) -> tuple[float, float]:
        """Seconds an exercise takes to get to, warm-up included, and seconds of one of its sets."""
        lived: RehearsedSession = self._lived[session]
        entry = self.plan.sessions[session].exercises[position]
        sets = [one for one in lived.sets if one.entry == position]
        warm = sum(one.work_s + one.rest_s for at, one in lived.warm_up if at == position)
        work = sum(one.work_s for one in sets) / len(sets) + sum(entry.rest_s) / 2
        return change_seconds(catalogue.exercise(entry.exercise)) + warm, work
