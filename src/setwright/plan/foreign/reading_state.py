"""The state of a reading, shared by notes and tables: the draft, the day, the week, the unit."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from setwright.documents.units import Unit
from setwright.plan.foreign import headings
from setwright.plan.foreign.draft import DayDraft, Draft
from setwright.plan.foreign.headings import DayHeading, day_heading
from setwright.plan.foreign.line import Found, read_line
from setwright.plan.foreign.model import DOUBTFUL
from setwright.plan.foreign.naming import named

# An answer that leaves a line out of the plan.
LEAVE_OUT = frozenset({"skip", "leave out", "note"})


class ReadingState:
    """What was read so far, and where the reading stands.

    Attributes:
        draft: the growing plan.
        unit: of bare loads.
        unit_said: whether that unit was said.
        answers: by place.
        named_days: whether days are headed by weekday or number, so that ``Push`` heads none.
        week: number of the week being read, None when none is said.
        here: the session being read, None before the first.
        letter: whether the file begins with a greeting, as a letter or a message does.
        late: effort and rest said for all only below exercises that they hold for.
        for_all: what an earlier reading of the file found to be said for all.
        trailing: said below the last exercise of the file, without a word for all.
    """

    def __init__(self, unit: Unit | None, answers: Mapping[str, str]) -> None:
        self.draft = Draft()
        self.unit: Unit = unit or "kg"
        self.unit_said = unit is not None
        self.answers = answers
        self.named_days = False
        self.week: int | None = None
        self.here: DayDraft | None = None
        self.warm_up = False
        self.skipping = False
        self.letter = False
        self.late: dict[str, Any] = {}
        self.trailing: dict[str, Any] = {}
        self.for_all: dict[str, Any] = {}
        if unit is not None:
            self.draft.head["unit"] = unit

    def parsed(self, place: str, text: str) -> Found:
        """A line read, with what was answered about it."""
        found = read_line(text, self.unit, self.unit_said)
        answer = self.answers.get(place)
        if answer is None:
            return found
        said = read_line(answer, self.unit, self.unit_said)
        if said.name and said.prescribes:
            said.label = said.label or found.label
            said.assumed.append("as answered")
            return said
        found.fields |= said.fields
        if said.name and named(said.name).ident is not None:
            found.name = said.name
        elif said.name:
            found.notes.append(said.name)
        found.doubts = list(said.doubts)
        found.prescribes = found.prescribes or said.prescribes
        found.assumed.append("as answered")
        return found

    def left_out(self, place: str, text: str, row: str = "") -> bool:
        """Whether an answer leaves a piece out; it is accounted for then."""
        if self.answers.get(place, "").strip().lower() not in LEAVE_OUT:
            return False
        self.draft.say(place, text, "note", "left out, as answered", row=row)
        return True

    def begin_day(self, place: str, text: str, row: str = "") -> DayDraft | None:
        """Begin a day when a line heads one; a day without training heads none."""
        heading = day_heading(text)
        if heading is None or (heading.by_split and self.named_days):
            return None
        if heading.week is not None and not self.this_week(heading.week):
            return None
        self.warm_up = False
        self.here = self.draft.day(place, text, heading, row)
        return self.here

    def this_week(self, week: int) -> bool:
        """Whether a week is the one being read: the first that is named."""
        self.week = self.week or week
        return week == self.week

    def elsewhere(self, text: str) -> bool:
        """Whether a line stands under the heading of another week."""
        said = headings.week_number(text)
        heading = day_heading(text)
        if said is None and heading is not None:
            said = heading.week
        if said is not None:
            self.skipping = said != self.week
        return self.skipping

    def current(self) -> DayDraft:
        """The day being read; one without a heading when there is none."""
        if self.here is None:
            self.here = DayDraft(DayHeading((), "Session 1"), None)
            self.draft.days.append(self.here)
        return self.here

    def other_week(self, place: str, text: str, row: str = "") -> int:
        """Account for a piece of another week."""
        why = "another week; a plan is one week: import it apart"
        return self.draft.say(place, text, "attention", "not in the plan", DOUBTFUL, why, row=row)

    def set_unit(self, unit: Unit) -> None:
        """Take the unit of bare loads from the file, unless the coach has said it."""
        if self.unit_said:
            return
        self.unit, self.unit_said = unit, True
        self.draft.head["unit"] = unit
