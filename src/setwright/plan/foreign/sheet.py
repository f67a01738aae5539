"""How a sheet is laid out: its headings, and its days one after the other or side by side."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from setwright.documents.table import Table
from setwright.plan.foreign import headings
from setwright.plan.foreign.blocks import Block
from setwright.plan.foreign.columns import Column, days_across, heading_row, heads_a_day, is_own
from setwright.plan.foreign.draft import DayDraft
from setwright.plan.foreign.headings import day_heading
from setwright.plan.foreign.line import read_line
from setwright.plan.foreign.model import BY_CUSTOM, NO_PLAN
from setwright.plan.foreign.table_rows import TableRowReader
from setwright.plan.foreign.text_table import RULE


class SheetReader(TableRowReader):
    """Reads one sheet after the other into one draft."""

    def sheet(self, table: Table, prefix: str) -> None:
        """Read a sheet whose places begin with a prefix."""
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
        self.blocks = [Block(0, table.columns - 1)]
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

    def take(self, at: int, row: Sequence[str]) -> None:
        """Take a row for what it is: a heading, days side by side, or work."""
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
                    self.row(at, own, block)

    def _matrix(self, at: int, cells: Mapping[int, str]) -> None:
        """Head a table with a row an exercise and a column a day."""
        row = self.name(at, min(cells))
        name_at = min(days_across(cells)) - 1
        self.blocks = [Block(0, max(block.last for block in self.blocks))]
        self.blocks[0].name_at = name_at
        for column, text in cells.items():
            place = self.name(at, column)
            day = self.begin_day(place, text, row) if column > name_at else None
            if day is not None:
                self.blocks[0].across[column] = day
            else:
                self.draft.say(place, text, "heading", "a heading of the table", row=row)

    def _side_by_side(self, cells: Mapping[int, str]) -> bool:
        """Whether a row heads days side by side."""
        days = [day_heading(text) for text in cells.values()]
        if len(days) < 2 or any(day is None for day in days):
            return False
        return not self.named_days or not any(day is not None and day.by_split for day in days)

    def _days(self, at: int, cells: Mapping[int, str]) -> None:
        firsts = sorted(cells)
        lasts = [*(one - 1 for one in firsts[1:]), max(block.last for block in self.blocks)]
        self.blocks = [Block(first, last) for first, last in zip(firsts, lasts, strict=True)]
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
            self.blocks = [Block(first, last) for first, last in zip(firsts, lasts, strict=True)]
        for block in self.blocks:
            block.columns = {
                at: column for at, column in heads.items() if block.first <= at <= block.last
            }


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
