"""Everything the log shows of one week, computed once and shared by every proposal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property

from setwright.anatomy.atlas import index, parts
from setwright.exercises import catalogue
from setwright.plan.intake import Intake
from setwright.plan.log import SetRecord
from setwright.plan.symptoms import Symptom
from setwright.plan.week import Plan
from setwright.training.after_break import Return, coming_back
from setwright.training.client import Client
from setwright.training.ease import Ease, ease_due
from setwright.training.facts.attendance import (
    LeftOut,
    SessionDone,
    Unable,
    WeekKept,
    left_out,
    left_unsaid,
    sessions_done,
    unable,
    weeks_kept,
)
from setwright.training.facts.dose import PartDose, part_doses
from setwright.training.facts.effort import HonestyOf, honesty_by_pattern
from setwright.training.facts.odd import OddSet, odd_sets
from setwright.training.facts.strength import Change, changes, stalls
from setwright.training.facts.twice import written_twice
from setwright.training.pain import PainCourse, pain_courses

# A part counts as loaded by an exercise from this share on.
LOADED_FROM = 0.25


@dataclass(frozen=True)
class Facts:
    """One week of one client.

    Attributes:
        client: up to the end of the week, or to today in a week under way.
        monday: first day of the week.
        plan: in force, or None.
    """

    client: Client
    monday: date
    plan: Plan | None

    @property
    def intake(self) -> Intake:
        """Of the client."""
        return self.client.folder.intake

    @property
    def day(self) -> date:
        """Last day looked at."""
        return date.fromordinal(self.client.day)

    @property
    def under_way(self) -> bool:
        """The week is not over yet."""
        return self.day < self.monday + timedelta(6)

    @cached_property
    def sessions(self) -> tuple[SessionDone, ...]:
        """Sessions of the plan and what came of each."""
        return () if self.plan is None else sessions_done(self.client, self.plan, self.monday)

    @cached_property
    def kept(self) -> tuple[WeekKept, ...]:
        """Done against planned over the last weeks, this one last."""
        return weeks_kept(self.client, self.monday)

    @cached_property
    def left_out(self) -> tuple[LeftOut, ...]:
        """Exercises skipped or replaced."""
        return left_out(self.client, self.monday)

    @cached_property
    def unable(self) -> tuple[Unable, ...]:
        """Exercises tried of which no repetition could be done."""
        return unable(self.client, self.monday)

    @cached_property
    def unsaid(self) -> tuple[str, ...]:
        """Exercises of sessions that were done, without a set and without a word."""
        return () if self.plan is None else left_unsaid(self.client, self.plan, self.monday)

    @cached_property
    def parts(self) -> tuple[PartDose, ...]:
        """Dose of every part against its target."""
        return part_doses(self.client, self.plan, self.monday)

    @cached_property
    def changes(self) -> tuple[Change, ...]:
        """Change of strength on every exercise trained lately."""
        return changes(self.client)

    @cached_property
    def stalls(self) -> tuple[Change, ...]:
        """Exercises that gained next to nothing."""
        return stalls(self.client, self.changes)

    @cached_property
    def rose(self) -> tuple[Change, ...]:
        """Changes upwards beyond noise, of exercises that do not stall."""
        stalled = {one.exercise for one in self.stalls}
        return tuple(one for one in self.changes if one.rose and one.exercise not in stalled)

    @cached_property
    def fell(self) -> tuple[Change, ...]:
        """Changes downwards beyond noise."""
        return tuple(one for one in self.changes if one.fell)

    @cached_property
    def honesty(self) -> tuple[HonestyOf, ...]:
        """Honesty of effort by movement pattern."""
        return honesty_by_pattern(self.client)

    @cached_property
    def pain(self) -> tuple[PainCourse, ...]:
        """Pain of the last two weeks, worst first."""
        return pain_courses(self.client.folder.log, self.day)

    @cached_property
    def symptoms(self) -> tuple[Symptom, ...]:
        """Symptoms of this week, and earlier ones that no professional has cleared since.

        A clearance speaks only for symptoms before it, and never hides those of this week.
        """
        cleared_on, today = self.intake.screening.cleared_on, self.client.day
        found: list[Symptom] = []
        for by_day in self.client.past.reports.values():
            for on, one in sorted(by_day.items()):
                if self.monday.toordinal() <= on <= today:
                    found += one.symptoms
                elif on <= today:
                    found += one.later(on, today, cleared_on).symptoms
        return tuple(dict.fromkeys(found))

    @cached_property
    def odd(self) -> tuple[OddSet, ...]:
        """Entries of the week that are hard to believe."""
        return odd_sets(self.client, self.monday)

    @cached_property
    def twice(self) -> tuple[SetRecord, ...]:
        """Sets of the week whose number was given twice."""
        standing = self.client.folder.log.standing()
        return written_twice(one for one in standing if self.monday <= one.at.date() <= self.day)

    @cached_property
    def ease(self) -> Ease:
        """Whether a lighter week is due."""
        # A week agreed to be lighter and still to come has eased nothing yet.
        eased = [one for one in self.client.block.eased if one <= self.client.day]
        since = max([self.client.block.start, *eased])
        return ease_due(self.client.lifter, self.client.past, self.client.day, since)

    @cached_property
    def back(self) -> tuple[tuple[str, Return], ...]:
        """Exercises of the plan that come back from a break next week, and how."""
        if self.plan is None:
            return ()
        day = (self.monday + timedelta(7)).toordinal()
        past = self.client.past
        names = {entry.exercise for one in self.plan.sessions for entry in one.exercises}
        rows = (
            (name, coming_back(past.before(name, day), day, past.days)) for name in sorted(names)
        )
        return tuple((name, back) for name, back in rows if back is not None)

    @cached_property
    def sore_parts(self) -> frozenset[str]:
        """Parts loaded by an exercise that hurt in the last two weeks: no more sets for them."""
        found = set()
        for one in self.pain:
            if one.exercise in catalogue.ids():
                shares = catalogue.shares()[catalogue.row(one.exercise)]
                found |= {p.id for p in parts() if shares[index()[p.id]] >= LOADED_FROM}
        return frozenset(found)
