"""The cells of one line by role, as they stand or as an answer says."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import NoReturn, TypeVar

from setwright.plan.amounts import AmountError
from setwright.plan.importing.columns import Column, Columns
from setwright.plan.importing.marks import is_nothing
from setwright.plan.importing.question import LINE_ANSWERS, DoubtError, Question, key_of
from setwright.plan.importing.table import Row, shown_cell

T = TypeVar("T")


class Cells:
    """The cells of one line."""

    def __init__(self, row: Row, columns: Columns, answers: Mapping[str, str]) -> None:
        self.line = row.line
        self.answer = answers.get(str(row.line), "").casefold()
        self._row = row
        self._columns = columns
        self._answers = answers

    def get(self, role: str, number: int | None = None) -> str:
        """The cell of a role; a column of the whole line where the set has none of its own."""
        if self._answers:
            said = self._answers.get(key_of(self.line, self._name(role, number)))
            if said is not None:
                return said
        column = self.column(role, number)
        if column is None or column.index >= len(self._row.cells):
            return ""
        return self._row.cells[column.index]

    def told(self, number: int) -> bool:
        """Whether the line has anything in its own columns of a numbered set."""
        own = [column for column in self._columns.used if column.number == number]
        return any(not is_nothing(self.get(column.role, number)) for column in own)

    def column(self, role: str, number: int | None = None) -> Column | None:
        """The column of a role."""
        own = self._columns.of(role, number)
        return own if own is not None or number is None else self._columns.of(role)

    def read(self, role: str, number: int | None, how: Callable[[str], T]) -> T:
        """A cell read, or a question about it.

        Raises:
            DoubtError: when it cannot be read.
        """
        try:
            return how(self.get(role, number))
        except AmountError as error:
            self.ask("cell", role, f"What is meant? Allowed: {error.args[0]}.", number)

    def ask(
        self, kind: str, role: str, asks: str, number: int | None = None, *, keep: bool = False
    ) -> NoReturn:
        """Hold the line back with a question about one of its cells.

        Args:
            kind: of the question.
            role: of the cell.
            asks: the question.
            number: which set of the line.
            keep: whether the cell may be right as it stands.

        Raises:
            DoubtError: always.
        """
        column = self.column(role, number)
        name = self._name(role, number)

        def whole(answer: str) -> str:
            return f"{self.line}={answer}"

        raise DoubtError(
            Question(
                key_of(self.line, name),
                kind,
                (self.line,),
                column.heading if column else "",
                shown_cell(self.get(role, number)),
                asks,
                (f"{key_of(self.line, name)}=...", *map(whole, LINE_ANSWERS[0 if keep else 1 :])),
            )
        )

    @staticmethod
    def _name(role: str, number: int | None) -> str:
        return role if number is None else f"{role}.{number}"
