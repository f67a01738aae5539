"""What the coach says about a table, and what its lines became."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime

from setwright.documents.units import Unit
from setwright.plan.importing.dates import DateOrder
from setwright.plan.importing.one_row import Draft
from setwright.plan.importing.question import Question


@dataclass(frozen=True)
class Settings:
    """What the coach says about a table.

    Attributes:
        unit: of figures that carry none.
        today: nothing is done after it.
        order: of day, month and year in dates that are figures alone.
        answers: to questions, by ``question.key_of``.
        names: exercises that words meant in this log before.
        day: of every set that tells none.
    """

    unit: Unit
    today: date
    order: DateOrder | None = None
    answers: Mapping[str, str] = field(default_factory=dict)
    names: Mapping[str, str] = field(default_factory=dict)
    day: date | None = None


@dataclass
class Lines:
    """What the lines of a table became.

    Attributes:
        drafts: sets.
        masses: line, time and kg of body masses.
        skipped: line, time and exercise of lines that were not done, as answered.
        questions: one for each line held back.
        headings: lines that are headings, or tell only the day or the exercise of those below.
        left_out: lines the coach answered to leave out.
    """

    drafts: list[Draft] = field(default_factory=list)
    masses: list[tuple[int, datetime, float]] = field(default_factory=list)
    skipped: list[tuple[int, datetime, str]] = field(default_factory=list)
    questions: list[Question] = field(default_factory=list)
    headings: list[int] = field(default_factory=list)
    left_out: list[int] = field(default_factory=list)
