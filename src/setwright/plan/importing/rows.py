"""Every line of a table: sets, body masses, questions, or a heading; none is dropped."""

from __future__ import annotations

from datetime import date, datetime, time

from setwright.documents.units import Unit, to_kg
from setwright.plan.amounts import AmountError, number
from setwright.plan.importing.cells import Cells
from setwright.plan.importing.columns import Columns
from setwright.plan.importing.dates import (
    DateOrder,
    OrderUnknownError,
    order_of,
    read_date,
    read_time,
)
from setwright.plan.importing.marks import is_nothing
from setwright.plan.importing.one_row import Draft, sets_of
from setwright.plan.importing.question import LEAVE_OUT, DoubtError, Question, key_of
from setwright.plan.importing.settings import Lines, Settings
from setwright.plan.importing.table import Row, Table, shown_cell
from setwright.plan.naming import UnsureNameError, exercise_id

EARLIEST = date(1970, 1, 1)
WITHOUT_FIGURES = "lines without figures"
SKIPPED = "skipped"


class LineReader:
    """Reads lines in order; a blank day or exercise is that of the line above."""

    def __init__(self, table: Table, columns: Columns, settings: Settings) -> None:
        self._table, self._columns, self._settings = table, columns, settings
        self._day = settings.day
        self._clock: time | None = None
        self._words = ""
        self._headings = tuple(one.casefold() for one in columns.headings)
        self._order = settings.order or self._proven()
        # Some number their sets from 0.
        self._from_zero = "0" in self._column("number")
        self.lines = Lines()

    def read(self) -> Lines:
        """Read them all."""
        for row in self._table.rows:
            if row.line <= self._columns.heading_line or self._repeats_heading(row):
                self.lines.headings.append(row.line)
                continue
            cells = Cells(row, self._columns, self._settings.answers)
            try:
                self._line(cells)
            except DoubtError as doubt:
                self.lines.questions.append(doubt.question)
        return self.lines

    def _proven(self) -> DateOrder | None:
        return order_of((*self._column("date"), *self._column("at")))[0]

    def _column(self, role: str) -> list[str]:
        """The cells below the heading."""
        column = self._columns.of(role)
        if column is None:
            return []
        return [
            row.cells[column.index]
            for row in self._table.rows
            if row.line > self._columns.heading_line and column.index < len(row.cells)
        ]

    def _repeats_heading(self, row: Row) -> bool:
        words = tuple(cell.casefold() for cell in row.cells)
        return any(words) and words == self._headings[: len(words)]

    def _line(self, cells: Cells) -> None:
        # The day and the exercise are read first, whatever becomes of the line: the lines below
        # may stand under them.
        doubt = self._take_day(cells)
        if not is_nothing(cells.get("exercise")):
            self._words = cells.get("exercise")
        if cells.answer == LEAVE_OUT:
            self.lines.left_out.append(cells.line)
            return
        told = [role for role in ("performed", "load", "reps") if self._tells(cells, role)]
        mass = cells.get("body_mass")
        if not told and is_nothing(mass):
            self._heading_or_question(cells, doubt)
            return
        if doubt is not None:
            raise doubt
        at = self._at(cells)
        if not is_nothing(mass):
            self._mass(cells, at)
        if told:
            self._sets(cells, at)

    def _tells(self, cells: Cells, role: str) -> bool:
        return any(not is_nothing(cells.get(role, one)) for one in self._columns.numbers)

    def _heading_or_question(self, cells: Cells, doubt: DoubtError | None) -> None:
        """A line without a set: a heading of the lines below, or a set that tells no figures."""
        day = not is_nothing(cells.get("date")) or not is_nothing(cells.get("at"))
        exercise = not is_nothing(cells.get("exercise"))
        more = any(not is_nothing(cells.get(role)) for role in ("number", "rir", "rpe", "rest"))
        if day != exercise and not more:
            if doubt is not None:
                raise doubt
            self.lines.headings.append(cells.line)
        elif self._settings.answers.get(WITHOUT_FIGURES) == LEAVE_OUT:
            self.lines.left_out.append(cells.line)
        elif self._settings.answers.get(WITHOUT_FIGURES) == SKIPPED and doubt is None:
            ident = self._exercise(cells)
            if ident is None:
                self.lines.left_out.append(cells.line)
            else:
                self.lines.skipped.append((cells.line, self._at(cells), ident))
        else:
            asks = "Was this done? Then say what; or was it skipped, or is it to be left out?"
            forms = (SKIPPED, LEAVE_OUT)
            answers = (
                f"{cells.line} reps=...",
                *(f"{WITHOUT_FIGURES}={form}" for form in forms),
            )
            found = "neither load nor repetitions"
            raise DoubtError(
                Question(WITHOUT_FIGURES, "no set", (cells.line,), "", found, asks, answers)
            )

    def _take_day(self, cells: Cells) -> DoubtError | None:
        for role in ("at", "date"):
            cell = cells.get(role)
            if is_nothing(cell):
                continue
            try:
                self._day, self._clock = read_date(cell, self._order)
                return None
            except OrderUnknownError:
                self._day = None
                return DoubtError(
                    Question(
                        "date order",
                        "date order",
                        (cells.line,),
                        self._heading(cells, role),
                        shown_cell(cell),
                        "Does the day or the month come first?",
                        ("date order=dmy", "date order=mdy"),
                    )
                )
            except AmountError as error:
                self._day = None
                try:
                    cells.ask("date", role, f"Which day was it? Allowed: {error.args[0]}.")
                except DoubtError as doubt:
                    return doubt
        return None

    @staticmethod
    def _heading(cells: Cells, role: str) -> str:
        column = cells.column(role)
        return column.heading if column else ""

    def _at(self, cells: Cells) -> datetime:
        if self._day is None:
            cells.ask("date", "date", "Which day was it? Neither this line nor one above tells.")
        if not EARLIEST <= self._day <= self._settings.today:
            asks = f"Which day was it? {self._day} is in the future or long past."
            cells.ask("impossible", "date", asks)
        clock = self._clock
        if not is_nothing(cells.get("time")):
            try:
                clock = read_time(cells.get("time"))
            except AmountError as error:
                cells.ask("time", "time", f"At what time? Allowed: {error.args[0]}.")
        return datetime.combine(self._day, clock or time(0))

    def _mass(self, cells: Cells, at: datetime) -> None:
        cell = cells.get("body_mass")
        column = cells.column("body_mass")
        text = cell.casefold()
        unit: Unit = self._settings.unit
        if (column and column.unit == "lb") or text.endswith(("lb", "lbs")):
            unit = "lb"
        elif (column and column.unit == "kg") or text.endswith("kg"):
            unit = "kg"
        try:
            kilos = round(to_kg(number(text.rstrip("lbskg. ")), unit), 3)
        except ValueError:
            kilos = 0.0
        if not 30 <= kilos <= 300:
            cells.ask("impossible", "body_mass", "What was the body mass? Allowed: 30 to 300 kg.")
        self.lines.masses.append((cells.line, at, kilos))

    def _sets(self, cells: Cells, at: datetime) -> None:
        ident = self._exercise(cells)
        if ident is None:
            self.lines.left_out.append(cells.line)
            return
        said = "" if self._words.casefold() == ident else self._words
        drafts: list[Draft] = []
        # Numbered columns that are empty leave the columns of the whole line.
        numbers = self._columns.numbers
        told = tuple(one for one in numbers if one is not None and cells.told(one))
        for one in told or (None,):
            drafts += sets_of(cells, one, ident, said, at, self._settings.unit, self._from_zero)
        self.lines.drafts += drafts

    def _exercise(self, cells: Cells) -> str | None:
        """The exercise meant; None when it is to be left out."""
        words = self._words
        if not words:
            cells.ask("exercise", "exercise", "Which exercise? Neither this line nor one above.")
        answered = self._settings.answers.get(key_of(words))
        if answered is not None and answered.casefold() == LEAVE_OUT:
            return None
        known = self._settings.names.get(words.casefold())
        if answered is None and known is not None:
            return known
        try:
            return exercise_id(answered or words)
        except UnsureNameError as error:
            near = str(error).partition("; ")[2].capitalize()
            raise DoubtError(
                Question(
                    key_of(words),
                    "exercise",
                    (cells.line,),
                    self._heading(cells, "exercise"),
                    shown_cell(answered or words),
                    f"Which exercise of the catalogue is it? {near}".rstrip(),
                    (f"{words}=EXERCISE", f"{words}={LEAVE_OUT}"),
                )
            ) from None
