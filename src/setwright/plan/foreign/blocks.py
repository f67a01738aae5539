"""Columns of a table that are read together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from setwright.plan.foreign.columns import Column
from setwright.plan.foreign.draft import DayDraft
from setwright.plan.foreign.headings import DayHeading, day_heading


@dataclass
class Block:
    """Columns that are read together: a whole sheet, or one day of several side by side.

    Attributes:
        first: column.
        last: column, itself within.
        columns: what each column holds; empty without headings.
        day: the session being read.
        key: day, session and minutes as the columns last had them.
        group: of a superset begun by a heading.
        own: whether the headings are those of our own workbook.
        across: session of each column, where a row is an exercise and a column a day.
        name_at: column of the exercises then.
    """

    first: int
    last: int
    columns: dict[int, Column] = field(default_factory=dict)
    day: DayDraft | None = None
    key: tuple[str, str, str] = ("", "", "")
    group: tuple[str, str] | None = None
    own: bool = False
    across: dict[int, DayDraft] = field(default_factory=dict)
    name_at: int = 0

    def cells(self, row: Sequence[str]) -> dict[int, str]:
        """The block's cells with content in a row."""
        return {at: row[at] for at in range(self.first, min(self.last + 1, len(row))) if row[at]}


def role_of(block: Block, column: int) -> str:
    """What a column holds; a note where no heading says it."""
    found = block.columns.get(column)
    return found.role if found is not None else "note"


def heading_of(day: str, session: str, minutes: str) -> DayHeading:
    """The day that the columns of day, session and minutes say."""
    found = day_heading(day) if day else None
    weekdays = found.weekdays if found is not None else ()
    name = session or (found.name if found is not None else f"Day {day}" if day else "Session")
    figures = "".join(one for one in minutes if one.isdigit())
    time = int(figures) if figures and 5 <= int(figures[:4]) <= 300 else None
    if time is None and found is not None:
        time = found.minutes
    return DayHeading(weekdays, name.strip(), time)
