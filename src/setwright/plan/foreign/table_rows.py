"""Rows of a table: by the headings above them, or as lines of a note."""

from __future__ import annotations

import re
from collections.abc import Mapping

from setwright.documents.table import Table, cell_name
from setwright.documents.units import Unit
from setwright.plan.foreign import headings
from setwright.plan.foreign.blocks import Block, heading_of, role_of
from setwright.plan.foreign.columns import Column
from setwright.plan.foreign.draft import DayDraft
from setwright.plan.foreign.headings import day_heading
from setwright.plan.foreign.line import read_line
from setwright.plan.foreign.model import BY_CUSTOM
from setwright.plan.foreign.naming import likely
from setwright.plan.foreign.reader import Reader
from setwright.plan.foreign.rows import RowReader, unmarked
from setwright.plan.foreign.set_rows import sets_from


class TableRowReader(Reader):
    """Reads rows of one table into a draft.

    Attributes:
        contents: place and text of every cell of every sheet.
        prefix: of the places in this sheet.
        table: the sheet.
        merged: rows that are a set more, with the row of the first set.
        first_rows: piece of the exercise in each row that begins one.
    """

    table: Table
    prefix: str
    merged: dict[int, int]
    first_rows: dict[int, int]

    def __init__(self, unit: Unit | None, answers: Mapping[str, str]) -> None:
        super().__init__(unit, answers)
        self.contents: list[tuple[str, str]] = []

    def name(self, row: int, column: int) -> str:
        """The place of a cell, as a coach writes it."""
        return f"{self.prefix}{cell_name(row, column)}"

    def row(self, at: int, cells: dict[int, str], block: Block) -> None:
        """Read the cells of a row that stand in a block."""
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

    def _across(self, at: int, cells: Mapping[int, str], block: Block, row: str) -> bool:
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

    def _by_columns(self, at: int, cells: dict[int, str], block: Block, row: str) -> bool:
        """Read a row by its headings; False when it is none of those rows."""
        if len(cells) == 1:
            ((column, text),) = cells.items()
            if role_of(block, column) not in ("day", "session") and day_heading(text) is not None:
                self._free(at, cells, block, row)
                return True
        self._place(at, cells, block, row)
        if not cells:
            return True
        name_at = next((c for c in cells if role_of(block, c) == "exercise"), None)
        if name_at is None:
            if all(role_of(block, c) in ("other", "note") for c in cells):
                for column, text in cells.items():
                    said = "a note; not kept in a plan"
                    self.draft.say(self.name(at, column), text, "note", said, BY_CUSTOM, row=row)
                return True
            return False
        telling = [
            c for c in cells if role_of(block, c) not in ("exercise", "other", "order", "note")
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

    def _place(self, at: int, cells: dict[int, str], block: Block, row: str) -> None:
        """Begin a day when the columns of day and session change; take their cells away."""
        said = {
            role: next((c for c in cells if role_of(block, c) == role), None)
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
            self.draft.days.append(DayDraft(heading_of(*key), None))
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

    def _day(self, block: Block) -> DayDraft:
        if block.day is None:
            block.day = self.current()
        return block.day

    def _free(self, at: int, cells: dict[int, str], block: Block, row: str) -> None:
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

    def _alone(self, place: str, text: str, block: Block, row: str) -> None:
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
