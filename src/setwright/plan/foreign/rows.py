"""A row of a table with headings: its cells by role, each read and accounted for."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from setwright.documents.units import Unit
from setwright.plan.amounts import AmountError
from setwright.plan.foreign import readings
from setwright.plan.foreign.columns import Column
from setwright.plan.foreign.draft import DayDraft
from setwright.plan.foreign.line import Doubt, Found, read_line
from setwright.plan.foreign.model import BY_CUSTOM, DOUBTFUL
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.reader import Reader
from setwright.plan.foreign.readings import Read
from setwright.plan.foreign.set_rows import Sets, among

NOTHING: Final = re.compile(r"[-–—/.x✓☐□]|n/?a|none|keine?|nil|bw|body\s?weight", re.IGNORECASE)
# What a spreadsheet makes of figures such as 8-10 or 3-1-1.
_DATE = re.compile(
    r"(?P<year>\d{4})-(?P<month>\d\d)-(?P<day>\d\d)(?:T.*)?\Z|"
    r"\d{1,2}[.\s-]*(?:jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)\w*\.?"
    r"(?:[.\s-]*\d{2,4})?\Z|"
    r"(?:jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)\w*[.\s-]*\d{1,4}\Z",
    re.IGNORECASE,
)
_FIELDS: Final = {
    "sets": ("sets",), "reps": ("reps",), "scheme": ("sets", "reps"), "rir": ("rir",),
    "rpe": ("rir",), "rest": ("rest_s",), "tempo": ("tempo",), "load": ("load_kg",),
    "partials": ("partials",), "order": (),
}  # fmt: skip
_ORDER = tuple(_FIELDS)
# `10`, `8-10`, `60 kg x 10`, `10 @ 60 kg`.
_BAND = r"\d{1,3}(?:\s*(?:-|–|to)\s*\d{1,3})?"
_SET = re.compile(
    rf"(?:(?P<load>\d{{1,4}}(?:[.,]\d{{1,3}})?\s*(?:kgs?|lbs?)?)\s*[x×*]\s*(?P<behind>{_BAND})|"
    rf"(?P<reps>{_BAND})(?:\s*(?:reps?|wdh\.?))?"
    r"(?:\s*(?:@|at|mit|x|×)\s*(?P<at>\d{1,4}(?:[.,]\d{1,3})?\s*(?:kgs?|lbs?)))?)",
    re.IGNORECASE,
)
_LETTER = re.compile(r"(?P<letter>[A-Za-z])\s?\d?[.)]?\Z|\d{1,2}(?P<sub>[a-d])\Z")


class RowReader:
    """Reads one row.

    Args:
        reader: the state of the import.
        columns: by index.
        own: whether the table is our own workbook's.
        sets: of rows below that are further sets of this one's exercise, or None.
    """

    def __init__(
        self, reader: Reader, columns: Mapping[int, Column], own: bool, sets: Sets | None = None
    ) -> None:
        self.reader, self.columns, self.own, self.sets = reader, columns, own, sets
        self.found = Found()
        self.pieces: list[int] = []
        self.blocked_by = ""
        self.row = ""

    def read(
        self, cells: Mapping[int, str], places: Mapping[int, str], name_at: int, day: DayDraft
    ) -> int:
        """Put the row's exercise into a day; index of its piece.

        Args:
            cells: text by column, without the columns of day and session.
            places: name of each cell.
            name_at: column of the exercise.
            day: the session.
        """
        self.row = places[name_at]
        self._name(places[name_at], cells[name_at])
        if self.sets is not None:
            self.found.prescribes = True
            self.found.fields["sets"] = len(self.sets.rows)
            self.found.notes += self.sets.notes
        each = [at for at in cells if self.columns[at].role == "each"]
        if each:
            self._each(places, {at: cells[at] for at in each})
        others = [at for at in cells if at != name_at and at not in each]
        others.sort(key=lambda at: (_rank(self.columns[at].role), at))
        for at in others:
            said = cells[at] if self.sets is None else self.sets.cells[at]
            self._cell(places[at], cells[at], said, self.columns[at])
        return self.reader.draft.exercise(
            self.found, places[name_at], cells[name_at], day, row=self.row, cells=self.pieces,
            blocked_by=self.blocked_by,
        )  # fmt: skip

    def _name(self, place: str, text: str) -> None:
        answer = self.reader.answers.get(place)
        words = answer if answer is not None else text
        if named(words).ident is not None:
            self.found.name = words
            return
        self.found = read_line(words, self.reader.unit, self.reader.unit_said)
        self.found.name = self.found.name or words
        if not self.found.prescribes and self.found.doubts:
            # Figures in a name are part of it.
            self.found.doubts = []
            self.found.name = words

    def _cell(self, place: str, text: str, said: str, column: Column) -> None:
        answer = self.reader.answers.get(place)
        words = (answer if answer is not None else said).strip()
        say = self.reader.draft.say
        role = column.role
        if role == "week":
            self._week(place, text, words)
        elif role == "other":
            meaning = f"column {column.heading!r}: not kept in a plan"
            say(place, text, "note", meaning, BY_CUSTOM, row=self.row)
        elif NOTHING.fullmatch(words):
            meaning = "no added load" if role == "load" else "nothing"
            say(place, text, "note", meaning, row=self.row)
        elif role == "note":
            self.found.notes.append(unmarked(words))
            self.pieces.append(say(place, text, "exercise", "note", row=self.row))
        elif role == "order":
            self._order(place, text, words)
        else:
            self._amount(place, text, words, column)

    def _each(self, places: Mapping[int, str], cells: Mapping[int, str]) -> None:
        """Repetitions in a column a set, with the load before or behind them or without."""
        say = self.reader.draft.say
        reps: list[str] = []
        loads: list[str] = []
        for at, text in sorted(cells.items()):
            words = self.reader.answers.get(places[at], text).strip()
            if NOTHING.fullmatch(words):
                say(places[at], text, "note", "nothing", row=self.row)
                continue
            match = _SET.fullmatch(words)
            if match is None:
                self._doubt(places[at], text, Doubt(words, "no repetitions of a set"))
                continue
            reps.append(match["reps"] or match["behind"])
            loads += [one for one in (match["load"], match["at"]) if one]
            said = f"repetitions of set {len(reps)}"
            self.pieces.append(say(places[at], text, "exercise", said, row=self.row))
        if not reps:
            return
        self.found.prescribes = True
        self.found.fields["sets"] = len(reps)
        self.found.read("reps", "/".join(reps), lambda: readings.reps(among(reps), None), True)
        if loads:
            self.found.read("load_kg", loads[0], lambda: readings.load(
                loads[0], self.reader.unit, self.reader.unit_said))  # fmt: skip
            if len(set(loads)) > 1:
                self.found.notes.append(f"loads by set {', '.join(loads)}")

    def _week(self, place: str, text: str, words: str) -> None:
        """A cell of the first of several weeks: what it prescribes, or a figure nobody explains."""
        said = read_line(words, self.reader.unit, self.reader.unit_said)
        if said.fields and not said.doubts and not set(said.fields) & set(self.found.fields):
            for name, value in said.fields.items():
                self.found.keep(name, Read(value, said.confidence), words)
            self.found.prescribes = self.found.prescribes or said.prescribes
            self.found.notes += [one for one in (said.name, *said.notes) if one]
            self.pieces.append(
                self.reader.draft.say(place, text, "exercise", ", ".join(said.fields), row=self.row)
            )
            return
        if said.prescribes:
            doubts = said.doubts or [Doubt(words, "a second prescription", blocks=False)]
            self._doubt(place, text, *doubts)
            return
        meaning = "a week's own column: not kept in a plan"
        self.reader.draft.say(place, text, "note", meaning, BY_CUSTOM, row=self.row)

    def _order(self, place: str, text: str, words: str) -> None:
        match = _LETTER.match(words)
        meaning = "its place in the session"
        if match is not None:
            said = match["letter"] or chr(64 + int(re.findall(r"[1-9]", words)[0]))
            self.found.label = said.upper()
            meaning = f"alternated with the others of {self.found.label}"
        self.pieces.append(self.reader.draft.say(place, text, "exercise", meaning, row=self.row))

    def _amount(self, place: str, text: str, words: str, column: Column) -> None:
        role = column.role
        blocks = role in ("sets", "reps", "scheme")
        date = _DATE.match(words)
        if date is not None and role != "rest":
            self._doubt(place, text, _date_doubt(date, blocks))
            return
        said = self._said(role, words, column.unit)
        expected = _FIELDS[role]
        missing = [name for name in expected if name not in said.fields]
        doubts = list(said.doubts)
        if missing and not doubts:
            doubts = [Doubt(words, f"no {role} that could be read", blocks)]
        if said.name:
            said.notes.append(said.name)
        for name, value in said.fields.items():
            self.found.keep(name, Read(value, said.confidence), words)
        self.found.assumed += said.assumed
        if doubts:
            if not any(doubt.blocks for doubt in doubts):
                self.found.notes += [doubt.text for doubt in doubts if doubt.text]
            self._doubt(place, text, *doubts, must=blocks and bool(missing))
            return
        self.found.notes += said.notes
        meaning = ", ".join(expected).replace("_s", "").replace("_kg", "")
        kept = ", and a note" if said.notes else ""
        self.pieces.append(
            self.reader.draft.say(
                place, text, "exercise", f"{meaning}{kept}", said.confidence,
                "; ".join(said.assumed), row=self.row,
            )
        )  # fmt: skip

    def _alone(self, role: str, words: str, unit: str | None) -> tuple[str, Read]:
        """A cell that holds its amount and nothing else: the field and its value.

        Raises:
            AmountError: when it holds something else.
        """
        reader, count = self.reader, self.found.fields.get("sets")
        if role == "reps":
            return "reps", readings.reps(words, count)
        if role == "tempo":
            return "tempo", readings.tempo(words)
        if role == "rest":
            return "rest_s", readings.rest(words, unit)
        if role == "load":
            said: Unit = "lb" if unit == "lb" else "kg" if unit == "kg" else reader.unit
            return "load_kg", readings.load(words, said, unit is not None or reader.unit_said)
        if role in ("rir", "rpe") and re.fullmatch(r"[\d\s.,/>→–—-]+", words):
            if role == "rpe":
                return "rir", readings.rpe(words, count)
            return "rir", readings.rir(words.replace("-", ">") if self.own else words, count)
        raise AmountError(role)

    def _said(self, role: str, words: str, unit: str | None) -> Found:
        """What a cell says, read as a line that begins with its heading."""
        reader = self.reader
        try:
            return _of_field(*self._alone(role, words, unit))
        except AmountError:
            pass  # read as a line, which finds out what else stands there
        before = {
            "sets": "", "reps": f"{self.found.fields.get('sets', 1)} x ", "rir": "RIR ",
            "rpe": "RPE ", "rest": "rest ", "tempo": "tempo ", "load": "load ",
            "partials": "partials ", "scheme": "",
        }[role]  # fmt: skip
        form = f"{before}{words}"
        if role == "sets":
            form = re.sub(r"\A(\d+(?:\s*[-–]\s*\d+)?)(?:\s*(?:x|×|sets?))?\Z", r"\1 sets", words)
        if role in ("rir", "rpe") and re.search(r"rir|rpe|reserve|fail|versagen", words, re.I):
            form = words
        if role == "rest" and unit and re.fullmatch(r"[\d.,\s–-]+", words):
            form = f"rest {words} {unit}"
        if role == "load":
            figure = re.fullmatch(r"@?\s*\d[\d.,]*", words)
            form = f"{words} {unit}" if figure and unit else f"load {words}" if figure else words
        said = read_line(form, reader.unit, reader.unit_said)
        if role == "sets":
            said.doubts = [Doubt(words, "one number of sets") for _ in said.doubts[:1]]
            if "sets" not in said.fields and not said.doubts:
                said.doubts = [Doubt(words, "no number of sets")]
        if role == "reps" and "sets" not in self.found.fields:
            said.fields.pop("sets", None)
        return said

    def _doubt(self, place: str, text: str, *doubts: Doubt, must: bool = False) -> None:
        blocks = must or any(doubt.blocks for doubt in doubts)
        if blocks:
            self.blocked_by = self.blocked_by or place
        self.reader.draft.say(
            place, text, "attention", "not in the plan" if blocks else "kept as a note", DOUBTFUL,
            "; ".join(doubt.why for doubt in doubts),
            [one for doubt in doubts for one in doubt.candidates], self.row,
        )  # fmt: skip


def unmarked(text: str) -> str:
    """Text without the apostrophe that keeps a spreadsheet from running it."""
    return text[1:] if re.match(r"'[=+\-@＝＋－＠]", text) else text


def _rank(role: str) -> int:
    return _ORDER.index(role) if role in _ORDER else len(_ORDER)


def _of_field(name: str, read: Read) -> Found:
    assumed = [read.assumed] if read.assumed else []
    return Found(fields={name: read.value}, confidence=read.confidence, assumed=assumed)


def _date_doubt(match: re.Match[str], blocks: bool) -> Doubt:
    candidates: tuple[str, ...] = ()
    if match["year"]:
        low, high = sorted((int(match["month"]), int(match["day"])))
        candidates = (f"{low}-{high}",)
    why = "a date, which a spreadsheet makes of figures such as 8-10"
    return Doubt(match[0], why, blocks, candidates)
