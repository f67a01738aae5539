"""Plans in tables: days as blocks of rows or side by side, with or without headings."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table import Table, cell_name
from setwright.documents.units import Unit
from setwright.plan.foreign import headings
from setwright.plan.foreign.columns import (
    Column,
    days_across,
    heading_row,
    heads_a_day,
    is_own,
)
from setwright.plan.foreign.draft import DayDraft
from setwright.plan.foreign.finish import finished
from setwright.plan.foreign.headings import DayHeading, day_heading
from setwright.plan.foreign.line import read_line
from setwright.plan.foreign.model import BY_CUSTOM, NO_PLAN, Reading
from setwright.plan.foreign.naming import likely
from setwright.plan.foreign.reader import Reader
from setwright.plan.foreign.rows import RowReader, unmarked
from setwright.plan.foreign.set_rows import sets_from
from setwright.plan.foreign.text_table import RULE

MAX_CELLS: Final = 20_000


@dataclass
class _Block:
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


class _Sheet(Reader):
    """Reads one sheet after the other into one draft."""

    def __init__(self, unit: Unit | None, answers: Mapping[str, str]) -> None:
        super().__init__(unit, answers)
        self.contents: list[tuple[str, str]] = []

    def sheet(self, table: Table, prefix: str) -> None:
        self.prefix = prefix
        cells = [text for _, _, text in table.filled()]
        self.contents += [(self.name(row, column), text) for row, column, text in table.filled()]
        if not _is_plan(table):
            for row, column, text in table.filled():
                self.draft.say(self.name(row, column), text, "note",
                               NO_PLAN, BY_CUSTOM)  # fmt: skip
            return
        week = headings.week_number(table.name)
        if week is not None and not self.this_week(week):
            for row, column, text in table.filled():
                self.other_week(self.name(row, column), text)
            return
        found = [day_heading(text) for text in cells]
        self.named_days = any(day is not None and not day.by_split for day in found)
        self.blocks = [_Block(0, table.columns - 1)]
        self.skipping = False
        self.table = table
        self.merged: dict[int, int] = {}
        self.first_rows: dict[int, int] = {}
        of_sheet = day_heading(table.name)
        if of_sheet is not None and not self.named_days:
            self.draft.days.append(DayDraft(of_sheet, None))
            self.blocks[0].day = self.here = self.draft.days[-1]
            self.named_days = True
        for at, line in enumerate(table.rows):
            if any(line):
                self.take(at, line)
            else:
                for block in self.blocks:
                    block.group = None

    def name(self, row: int, column: int) -> str:
        return f"{self.prefix}{cell_name(row, column)}"

    def take(self, at: int, row: Sequence[str]) -> None:
        cells = {column: text for column, text in enumerate(row) if text}
        for column in list(cells):
            if self.left_out(self.name(at, column), cells[column]):
                del cells[column]
        heads = heading_row(cells)
        if cells and all(RULE.match(text) for text in cells.values()):
            for column, text in cells.items():
                self.draft.say(self.name(at, column), text, "heading", "a rule")
        elif heads is not None:
            self._heads(at, cells, heads)
        elif days_across(cells):
            self._matrix(at, cells)
        elif self._side_by_side(cells):
            self._days(at, cells)
        else:
            for block in self.blocks:
                own = {c: text for c, text in block.cells(row).items() if c in cells}
                if own:
                    self.here = block.day
                    self._row(at, own, block)

    def _matrix(self, at: int, cells: Mapping[int, str]) -> None:
        """Head a table with a row an exercise and a column a day."""
        row = self.name(at, min(cells))
        name_at = min(days_across(cells)) - 1
        self.blocks = [_Block(0, max(block.last for block in self.blocks))]
        self.blocks[0].name_at = name_at
        for column, text in cells.items():
            place = self.name(at, column)
            day = self.begin_day(place, text, row) if column > name_at else None
            if day is not None:
                self.blocks[0].across[column] = day
            else:
                self.draft.say(place, text, "heading", "a heading of the table", row=row)

    def _across(self, at: int, cells: Mapping[int, str], block: _Block, row: str) -> bool:
        """Read a row with an exercise and what each day prescribes of it; False when it is none."""
        name = cells.get(block.name_at, "")
        told = {c: text for c, text in cells.items() if c in block.across}
        if not name or not told:
            return False
        for column, text in cells.items():
            place = self.name(at, column)
            if column in block.across and re.fullmatch(r"[-–—/x✗]", text):
                self.draft.say(place, text, "note", "not on this day", row=row)
            elif column in block.across:
                found = self.parsed(place, f"{name}, {self.answers.get(place, text)}")
                self.exercise(place, f"{name}, {text}", found, block.across[column])
                self.draft.change(len(self.draft.pieces) - 1, text=text)
            else:
                said = "the exercise of this row" if column == block.name_at else "a note"
                self.draft.say(place, text, "note", said, row=row)
        return True

    def _side_by_side(self, cells: Mapping[int, str]) -> bool:
        """Whether a row heads days side by side."""
        days = [day_heading(text) for text in cells.values()]
        if len(days) < 2 or any(day is None for day in days):
            return False
        return not self.named_days or not any(day is not None and day.by_split for day in days)

    def _days(self, at: int, cells: Mapping[int, str]) -> None:
        firsts = sorted(cells)
        lasts = [*(one - 1 for one in firsts[1:]), max(block.last for block in self.blocks)]
        self.blocks = [_Block(first, last) for first, last in zip(firsts, lasts, strict=True)]
        for block in self.blocks:
            place = self.name(at, block.first)
            block.day = self.begin_day(place, cells[block.first], self.name(at, firsts[0]))

    def _heads(self, at: int, cells: Mapping[int, str], heads: dict[int, Column]) -> None:
        starts = [one for one, column in sorted(heads.items()) if column.role == "exercise"]
        if len(starts) > 1 or len(self.blocks) > 1:
            self._split(heads, starts)
        else:
            self.blocks[0].columns = heads
        for block in self.blocks:
            block.own = is_own(list(block.columns.values()))
        for column, text in cells.items():
            place = self.name(at, column)
            block = next((b for b in self.blocks if b.first <= column <= b.last), self.blocks[0])
            if heads[column].role == "exercise" and heads_a_day(text):
                block.day = self.begin_day(place, text, self.name(at, min(cells)))
                block.columns[column] = Column("exercise", "")
                continue
            if heads[column].unit in ("kg", "lb"):
                self.set_unit("lb" if heads[column].unit == "lb" else "kg")
            said = f"column of {heads[column].role}"
            self.draft.say(place, text, "heading", said, row=self.name(at, min(cells)))

    def _split(self, heads: dict[int, Column], starts: list[int]) -> None:
        """Give every block its own columns; blocks begin at an exercise, or its order before it."""
        if len(self.blocks) == 1:
            firsts = [
                one - 1 if heads.get(one - 1, Column("", "")).role == "order" else one
                for one in starts
            ]
            firsts[0] = min(firsts[0], self.blocks[0].first)
            lasts = [*(one - 1 for one in firsts[1:]), self.blocks[0].last]
            self.blocks = [_Block(first, last) for first, last in zip(firsts, lasts, strict=True)]
        for block in self.blocks:
            block.columns = {
                at: column for at, column in heads.items() if block.first <= at <= block.last
            }

    def _row(self, at: int, cells: dict[int, str], block: _Block) -> None:
        row = self.name(at, min(cells))
        if self.week is not None and len(cells) == 1:
            self.elsewhere(next(iter(cells.values())))
        if block.across and not self.skipping and self._across(at, cells, block, row):
            return
        if self.skipping:
            for column, text in cells.items():
                self.other_week(self.name(at, column), text, row)
        elif at in self.merged:
            self._set_more(at, cells)
        elif block.columns and self._by_columns(at, cells, block, row):
            return
        elif len(cells) > 1 and block.columns:
            self._unplaced(at, cells, row)
        else:
            self._free(at, cells, block, row)

    def _by_columns(self, at: int, cells: dict[int, str], block: _Block, row: str) -> bool:
        """Read a row by its headings; False when it is none of those rows."""
        if len(cells) == 1:
            ((column, text),) = cells.items()
            if _role(block, column) not in ("day", "session") and day_heading(text) is not None:
                self._free(at, cells, block, row)
                return True
        self._place(at, cells, block, row)
        if not cells:
            return True
        name_at = next((c for c in cells if _role(block, c) == "exercise"), None)
        if name_at is None:
            if all(_role(block, c) in ("other", "note") for c in cells):
                for column, text in cells.items():
                    said = "a note; not kept in a plan"
                    self.draft.say(self.name(at, column), text, "note", said, BY_CUSTOM, row=row)
                return True
            return False
        telling = [
            c for c in cells if _role(block, c) not in ("exercise", "other", "order", "note")
        ]
        if headings.TOTAL.match(cells[name_at]) and not likely(cells[name_at]):
            for column, text in cells.items():
                self.draft.say(self.name(at, column), text, "note", "a sum or a remark", BY_CUSTOM,
                               row=row)  # fmt: skip
            return True
        whole = read_line(cells[name_at], self.unit, self.unit_said)
        if not telling and not whole.prescribes and not likely(whole.name or cells[name_at]):
            others = {c: text for c, text in cells.items() if c != name_at}
            self._free(at, {name_at: cells[name_at]}, block, row)
            for column, text in others.items():
                said = "a note; not kept in a plan"
                self.draft.say(self.name(at, column), text, "note", said, BY_CUSTOM, row=row)
            return True
        if self.warm_up and not whole.prescribes and not telling:
            return False
        places = {column: self.name(at, column) for column in cells}
        columns = {c: block.columns.get(c, Column("note", "")) for c in cells}
        self.trailing = {}
        # In our own workbook a row is an exercise, also where it stands again with one set more.
        sets = None if block.own else sets_from(self.table, at, block.columns, name_at, cells)
        reader = RowReader(self, columns, block.own, sets)
        self.first_rows[at] = reader.read(cells, places, name_at, self._day(block))
        if sets is not None:
            self.merged |= dict.fromkeys(sets.rows[1:], at)
        return True

    def _set_more(self, at: int, cells: Mapping[int, str]) -> None:
        """Account for a row that is one set more of the exercise above."""
        first = self.draft.pieces[self.first_rows[self.merged[at]]]
        waits = first.meaning == "not in the plan"
        for column, text in cells.items():
            said, why = f"a set more of {first.place}", f"waits for {first.place}" if waits else ""
            self.draft.say(self.name(at, column), text, "waiting" if waits else "exercise", said,
                           why=why, row=first.row)  # fmt: skip

    def _place(self, at: int, cells: dict[int, str], block: _Block, row: str) -> None:
        """Begin a day when the columns of day and session change; take their cells away."""
        said = {
            role: next((c for c in cells if _role(block, c) == role), None)
            for role in ("day", "session", "minutes")
        }
        if all(column is None for column in said.values()):
            return
        written = {role: cells.pop(c) if c is not None else "" for role, c in said.items()}
        words = {role: unmarked(text) for role, text in written.items()}
        day, session, minutes = block.key
        another = words["day"] not in ("", day) or words["session"] not in ("", session)
        if words["day"] not in ("", day):
            session = ""
        if another:
            minutes = ""
        key = (words["day"] or day, words["session"] or session, words["minutes"] or minutes)
        if key != block.key or block.day is None:
            block.key = key
            self.draft.days.append(DayDraft(_heading(*key), None))
            block.day = self.here = self.draft.days[-1]
        told = f"{block.day.heading.name}" if block.day.heading else ""
        for role, column in said.items():
            if column is not None:
                piece = self.draft.say(
                    self.name(at, column), written[role], "day", f"{role} of {told!r}", row=row
                )
                if block.day.piece is None:
                    block.day.piece = piece

    def _unplaced(self, at: int, cells: Mapping[int, str], row: str) -> None:
        for column, text in cells.items():
            self.draft.say(self.name(at, column), text, "attention", "not in the plan", 0.5,
                           "figures without an exercise in their row", row=row)  # fmt: skip

    def _day(self, block: _Block) -> DayDraft:
        if block.day is None:
            block.day = self.current()
        return block.day

    def _free(self, at: int, cells: dict[int, str], block: _Block, row: str) -> None:
        """Read cells that no heading explains, as lines of a note."""
        first, *rest = cells
        joined = ", ".join(cells.values())
        if rest and self._pair(at, cells, row):
            return
        if rest and read_line(joined, self.unit, self.unit_said).prescribes:
            place = self.name(at, first)
            found = self.parsed(place, joined)
            others = [
                self.draft.say(self.name(at, c), cells[c], "exercise", f"more of {place}", row=row)
                for c in rest
            ]
            self.draft.exercise(found, place, cells[first], self._day(block), row=row,
                                cells=others, group=block.group)  # fmt: skip
            return
        for column, text in cells.items():
            lines = [line.strip() for line in text.splitlines() if line.strip()]
            several = sum(1 for one in lines if read_line(one).prescribes) > 1
            place = self.name(at, column)
            if several and place not in self.answers:
                here = self.contents.index((place, text))
                parts = [(f"{place}:{n}", line) for n, line in enumerate(lines, 1)]
                self.contents[here : here + 1] = parts
                for part, line in parts:
                    self._alone(part, line, block, row)
            else:
                self._alone(place, text, block, row)

    def _pair(self, at: int, cells: Mapping[int, str], row: str) -> bool:
        """``Client`` beside ``Joren``: a key and its value."""
        if len(cells) != 2:
            return False
        (first, key), (second, value) = cells.items()
        said = f"{key.rstrip(': ')}: {value}"
        patterns = (headings.TITLE, headings.PERSON, headings.UNIT)
        if not any(pattern.match(said) for pattern in patterns):
            return False
        self.about(self.name(at, first), said, read_line(said), row)
        self.draft.change(len(self.draft.pieces) - 1, text=key)
        self.draft.say(self.name(at, second), value, "title", f"the {key.rstrip(': ')}", row=row)
        return True

    def _alone(self, place: str, text: str, block: _Block, row: str) -> None:
        found = self.parsed(place, ", ".join(text.splitlines()))
        if place not in self.answers and self.beside(place, text, found, row):
            return
        if found.prescribes:
            rest = self.day_before(place, text)
            if rest:
                block.day, block.group = self.here, None
                text, found = rest, self.parsed(place, rest)
            self.exercise(place, text, found, self._day(block), block.group)
            return
        day = self.begin_day(place, text, row)
        if day is not None:
            block.day, block.group = day, None
        elif headings.SUPERSET.match(headings.unlabelled(headings.bare(text))):
            block.group = ("superset", place)
            self.draft.say(
                place, text, "heading", "a superset of the rows below", BY_CUSTOM, row=row
            )
        else:
            self.about(place, text, found, row)


def _role(block: _Block, column: int) -> str:
    found = block.columns.get(column)
    return found.role if found is not None else "note"


def _heading(day: str, session: str, minutes: str) -> DayHeading:
    """The day that the columns of day, session and minutes say."""
    found = day_heading(day) if day else None
    weekdays = found.weekdays if found is not None else ()
    name = session or (found.name if found is not None else f"Day {day}" if day else "Session")
    figures = "".join(one for one in minutes if one.isdigit())
    time = int(figures) if figures and 5 <= int(figures[:4]) <= 300 else None
    if time is None and found is not None:
        time = found.minutes
    return DayHeading(weekdays, name.strip(), time)


def _is_plan(table: Table) -> bool:
    """Whether a sheet prescribes anything; a log, which has dates, does not."""
    for row in table.rows:
        cells = {at: text for at, text in enumerate(row) if text}
        heads = heading_row(cells)
        if heads is not None:
            return not any(column.heading.strip().lower() == "date" for column in heads.values())
        if any(read_line(text).prescribes for text in cells.values()):
            return True
        if len(cells) > 1 and read_line(", ".join(cells.values())).prescribes:
            return True
    return False


def read_plan_tables(
    tables: Sequence[Table], name: str, unit: Unit | None, answers: Mapping[str, str]
) -> Reading:
    """Read a plan from tables, cell by cell.

    Args:
        tables: the sheets, or the one table of a CSV file.
        name: of the file.
        unit: of bare loads, when the coach says it.
        answers: by cell, for example ``B7`` or ``Week!B7`` where there are several sheets.

    Raises:
        DocumentError: when there are more cells than a plan has.
    """
    held = sum(1 for table in tables for _ in table.filled())
    if held > MAX_CELLS:
        allowed = f"up to {MAX_CELLS:,} cells with content: choose one sheet, or leave the log out"
        raise DocumentError(name, (Fault("", f"{held:,} cells with content", allowed),))
    reader = _sheets(tables, unit, answers, {})
    late = reader.trailing | reader.late
    if late:
        reader = _sheets(tables, unit, answers, late)
    return finished(reader.draft, name, reader.contents)


def _sheets(
    tables: Sequence[Table],
    unit: Unit | None,
    answers: Mapping[str, str],
    for_all: Mapping[str, Any],
) -> _Sheet:
    """Read the sheets, with what is said for all further below already known."""
    reader = _Sheet(unit, answers)
    reader.draft.defaults.update(for_all)
    reader.for_all = dict(for_all)
    for table in tables:
        reader.sheet(table, f"{table.name}!" if len(tables) > 1 else "")
    return reader
