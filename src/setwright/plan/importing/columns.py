"""Which column holds what: guessed from the headings, and as the coach says."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cached_property

from setwright.documents.errors import DocumentError, Fault
from setwright.plan.amounts import AmountError
from setwright.plan.importing.dates import read_date
from setwright.plan.importing.headings import HEADINGS, plain_heading, role_of, unit_of
from setwright.plan.importing.table import Row, Table, shown_cell

LOOK_LINES = 15
LOOK_AT_CELLS = 50


@dataclass(frozen=True)
class Column:
    """One column put to use.

    Attributes:
        index: from 0.
        heading: as it stands in the file.
        role: what it holds.
        unit: unit said in the heading: kg, lb, min, s, or None.
        number: which set of the line it tells of, or None.
    """

    index: int
    heading: str
    role: str
    unit: str | None = None
    number: int | None = None


@dataclass(frozen=True)
class Columns:
    """The columns of a table.

    Attributes:
        heading_line: line of the headings.
        used: columns that are read.
        unused: headings of the columns that are not.
        headings: every heading by its place.
    """

    heading_line: int
    used: tuple[Column, ...]
    unused: tuple[str, ...]
    headings: tuple[str, ...] = field(default=())

    def of(self, role: str, number: int | None = None) -> Column | None:
        """The column of a role."""
        return self._by_role.get((role, number))

    @cached_property
    def _by_role(self) -> dict[tuple[str, int | None], Column]:
        return {(column.role, column.number): column for column in self.used}

    @cached_property
    def numbers(self) -> tuple[int | None, ...]:
        """Which sets a line tells of; None for a line that is one set."""
        counted = sorted({c.number for c in self.used if c.number is not None})
        return tuple(counted) or (None,)


def find_columns(table: Table, said: Mapping[str, str], day_said: bool = False) -> Columns:
    """Find the heading line and what each column holds.

    Args:
        table: the table.
        said: role to heading, as the coach says; it goes before every guess.
        day_said: whether the day of all sets is known without a column.

    Raises:
        DocumentError: when a heading is not there, or no column can hold exercises or sets.
    """
    head = _heading_row(table, said)
    headings = tuple(cell for cell in head.cells)
    taken = _as_said(table, head, headings, said)
    used = list(taken.values())
    for index, heading in enumerate(headings):
        if index in taken or not heading:
            continue
        column = _guess(index, heading)
        if column and not any((c.role, c.number) == (column.role, column.number) for c in used):
            if column.role in said:
                continue
            used.append(column)
    if not any(column.role in ("date", "at") for column in used):
        used = _with_days(table, head, headings, used)
    sets = {c.number for c in used if c.role in ("reps", "performed")}
    used = [column for column in used if column.number is None or column.number in sets]
    places = {column.index for column in used}
    unused = tuple(h for index, h in enumerate(headings) if h and index not in places)
    columns = Columns(head.line, tuple(used), unused, headings)
    _enough(table, columns, day_said)
    return columns


def _with_days(
    table: Table, head: Row, headings: tuple[str, ...], used: list[Column]
) -> list[Column]:
    """Columns with the one that holds days by its content: one headed as a time, or not read."""
    read = {column.index for column in used if column.role != "time"}
    below = [row for row in table.rows if row.line > head.line][:LOOK_AT_CELLS]
    for index, heading in enumerate(headings):
        cells = [row.cells[index] for row in below if index < len(row.cells) and row.cells[index]]
        if index in read or not cells or sum(map(_is_day, cells)) <= len(cells) / 2:
            continue
        return [c for c in used if c.index != index] + [Column(index, heading, "at")]
    return used


def _is_day(cell: str) -> bool:
    if re.fullmatch(r"[\d.,]+", cell) and not re.fullmatch(r"\d+\.\d+\.\d+\.?", cell):
        return False
    try:
        read_date(cell, "dmy")
    except AmountError:
        return False
    return True


def _guess(index: int, heading: str) -> Column | None:
    meant = role_of(heading)
    if meant is None:
        return None
    return Column(index, heading, meant[0], unit_of(heading, meant[0]), meant[1])


def _heading_row(table: Table, said: Mapping[str, str]) -> Row:
    wanted = {plain_heading(heading) for heading in said.values()}

    def known(row: Row) -> int:
        words = [cell for cell in row.cells if cell]
        guessed = {column.role for word in words if (column := _guess(0, word))}
        return len(guessed) + 3 * sum(plain_heading(word) in wanted for word in words)

    best = max(table.rows[:LOOK_LINES], key=known)
    if known(best) < 2:
        first = ", ".join(shown_cell(cell) for cell in table.rows[0].cells[:8])
        allowed = "headings such as Date, Exercise, Weight, Reps; or --map exercise='...' and more"
        fault = Fault("headings", f"no line of known headings; the first line is {first}", allowed)
        raise DocumentError(table.name, (fault,))
    return best


def _as_said(
    table: Table, head: Row, headings: tuple[str, ...], said: Mapping[str, str]
) -> dict[int, Column]:
    taken: dict[int, Column] = {}
    for role, heading in said.items():
        base, _, number = role.partition(".")
        if base not in HEADINGS or (number and not number.isdigit()):
            allowed = ", ".join(HEADINGS)
            raise DocumentError("--map", (Fault("", repr(role), f"one of: {allowed}"),))
        exact = [i for i, one in enumerate(headings) if one.casefold() == heading.casefold()]
        near = [i for i, one in enumerate(headings) if plain_heading(one) == plain_heading(heading)]
        found = exact or near
        if not found:
            there = ", ".join(repr(one) for one in headings if one)
            fault = Fault("headings", f"no column {heading!r}", f"one of: {there}", head.line)
            raise DocumentError(table.name, (fault,))
        index = found[0]
        unit = unit_of(headings[index], base)
        taken[index] = Column(index, headings[index], base, unit, int(number) if number else None)
    return taken


def _enough(table: Table, columns: Columns, day_said: bool) -> None:
    roles = {column.role for column in columns.used}
    lacking = []
    if "exercise" not in roles:
        lacking.append("the exercise")
    if not roles & {"reps", "performed"} and "load" not in roles:
        lacking.append("the repetitions")
    if not roles & {"date", "at"} and not day_said:
        lacking.append("the day (or say --day, when all was done on one)")
    if lacking:
        there = ", ".join(repr(heading) for heading in columns.headings if heading)
        allowed = "say which one with --map, for example --map exercise='Lift' --map date='When'"
        fault = Fault(
            "headings",
            f"no column for {' and '.join(lacking)} among {there}",
            allowed,
            columns.heading_line,
        )
        raise DocumentError(table.name, (fault,))
