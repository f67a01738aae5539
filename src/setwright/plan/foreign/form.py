"""A client's intake from the table of a form: one line of answers, or question beside answer."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from pydantic import ValidationError

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table import Table, cell_name
from setwright.documents.table_file import chosen, read_tables
from setwright.documents.validation import explained
from setwright.plan.amounts import AmountError
from setwright.plan.foreign import answers as read
from setwright.plan.foreign.model import BY_CUSTOM, DOUBTFUL, Piece
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.questions import REQUIRED, asks_for
from setwright.plan.foreign.readings import Read
from setwright.plan.intake import DAYS, Intake, Screening

DEFAULT_MINUTES = 60
# What the coach can answer by name, besides by cell.
BY_NAME = (*REQUIRED, "minutes", "gym")
# The careful side, taken until a doubtful answer is cleared up.
CAREFUL = {"active_last_3_months": False, "clearance": False}


@dataclass(frozen=True)
class FormReading:
    """A form as understood.

    Attributes:
        name: of the file.
        pieces: every question and answer.
        intake: None while something that must be known is missing.
    """

    name: str
    pieces: tuple[Piece, ...]
    intake: Intake | None

    @property
    def attention(self) -> tuple[Piece, ...]:
        """What is in doubt, or missing."""
        return tuple(piece for piece in self.pieces if piece.kind == "attention")


@dataclass
class _Form:
    fields: dict[str, Any] = field(default_factory=dict)
    screening: dict[str, bool] = field(default_factory=dict)
    pieces: list[Piece] = field(default_factory=list)
    unit: str = "kg"

    def say(self, place: str, text: str, meaning: str, sure: float = 1.0, why: str = "") -> None:
        kind = "attention" if sure <= DOUBTFUL else "setting"
        self.pieces.append(Piece(place, text, kind, meaning, sure, why, (), place))  # type: ignore[arg-type]

    def put(self, name: str, value: Read, place: str, text: str) -> None:
        self.fields[name] = value.value
        self.say(place, text, f"{name}: {value.value}", value.confidence, value.assumed)


def read_form(data: bytes, name: str, sheet: str | None, said: Mapping[str, str]) -> FormReading:
    """Read the answers of one person.

    Args:
        data: the file, CSV or XLSX.
        name: of the file.
        sheet: of a workbook, the first with content when None.
        said: answers of the coach, by cell or by field (``experience=beginner``); ``person=NAME``
            chooses one of several people.

    Raises:
        DocumentError: when the file is no form, or holds several people and none is chosen.
    """
    table = chosen(read_tables(data, name), sheet, name)[0]
    form = _Form()
    for question, answer, place in _pairs(table, name, said, form):
        text = said.get(place, answer)
        if text:
            _take(form, question, text, place)
    for by_name in BY_NAME:
        if by_name in said:
            _take(form, by_name.replace("_band", ""), said[by_name], by_name)
    places = {piece.place for piece in form.pieces} | {*BY_NAME, "person"}
    strange = sorted(set(said) - places)
    if strange:
        allowed = f"a cell with an answer, or {', '.join(BY_NAME)} or person"
        raise DocumentError(name, tuple(Fault("answer", repr(one), allowed) for one in strange))
    intake = _intake(form)
    return FormReading(name, tuple(form.pieces), intake)


def _pairs(
    table: Table, name: str, said: Mapping[str, str], form: _Form
) -> list[tuple[str, str, str]]:
    """Question, answer and the answer's cell; the questions are accounted for."""
    down = [row[0] for row in table.rows]
    across = list(table.rows[0])
    known_down = sum(1 for one in down if one and asks_for(one))
    known_across = sum(1 for one in across if one and asks_for(one))
    if max(known_down, known_across) < 2:
        found = "no questions that ask for an intake"
        raise DocumentError(name, (Fault("", found, "a form: questions, and answers to them"),))
    if known_down > known_across:
        pairs = [
            (row[0], row[1] if len(row) > 1 else "", cell_name(at, 1), cell_name(at, 0))
            for at, row in enumerate(table.rows)
        ]
        rest = [(r, c, text) for r, c, text in table.filled() if c > 1]
    else:
        at = _person(table, name, said)
        pairs = [
            (question, table.rows[at][column], cell_name(at, column), cell_name(0, column))
            for column, question in enumerate(across)
        ]
        rest = [(r, c, text) for r, c, text in table.filled() if r not in (0, at)]
    for question, _, _, place in pairs:
        if question:
            field_ = asks_for(question)
            asked = f"asks for {field_}" if field_ else "a question the intake has no field for"
            form.say(place, question, asked, 1.0 if field_ else BY_CUSTOM)
    for row, column, text in rest:
        form.say(cell_name(row, column), text, "not of this person's answers", BY_CUSTOM)
    return [(question, answer, place) for question, answer, place, _ in pairs]


def _person(table: Table, name: str, said: Mapping[str, str]) -> int:
    """The row of the one person, or of the one chosen."""
    rows = [at for at in range(1, len(table.rows)) if any(table.rows[at])]
    if len(rows) == 1:
        return rows[0]
    column = next((c for c, one in enumerate(table.rows[0]) if asks_for(one) == "name"), 0)
    wanted = said.get("person", "").strip().casefold()
    found = [at for at in rows if table.rows[at][column].casefold() == wanted]
    if len(found) == 1:
        return found[0]
    names = ", ".join(repr(table.rows[at][column]) for at in rows[:20])
    fault = Fault("", f"the answers of {len(rows)} people", f"--answer person=NAME, one of {names}")
    raise DocumentError(name, (fault,))


def _take(form: _Form, question: str, text: str, place: str) -> None:
    """Read one answer."""
    field_ = asks_for(question)
    try:
        if field_ is None:
            _load_of(form, question, text, place)
        elif field_.startswith("screening."):
            _screening(form, field_.removeprefix("screening."), text, place)
        elif field_ == "aside":
            form.say(place, text, "not kept in an intake")
        elif field_ in ("age_band", "sex", "experience", "gym", "setting"):
            form.put(field_, getattr(read, field_)(text), place, text)
        elif field_ == "body_mass_kg":
            form.put(field_, read.body_mass(text, question), place, text)
        elif field_ == "stature_cm":
            form.put(field_, read.stature(text, question), place, text)
        elif field_ in ("days", "minutes"):
            _time(form, field_, text, place)
        elif field_ == "name":
            form.put(field_, Read(text.strip()[:80]), place, text)
        elif field_ == "unit":
            form.unit = "lb" if "l" in text.lower() or "pound" in text.lower() else "kg"
            form.put(field_, Read(form.unit), place, text)
        else:
            _lists(form, field_, text, place, question)
    except AmountError as error:
        form.say(place, text, "not in the intake", DOUBTFUL, f"{field_}: {error} expected")


def _screening(form: _Form, name: str, text: str, place: str) -> None:
    try:
        answer = read.yes_no(text)
    except AmountError:
        careful = CAREFUL.get(name, True)
        form.screening[name] = careful
        said = f"screening.{name}: {'yes' if careful else 'no'}, the careful side"
        form.say(place, text, said, DOUBTFUL, "neither yes nor no")
        return
    form.screening[name] = bool(answer.value)
    form.say(place, text, f"screening.{name}: {'yes' if answer.value else 'no'}")


def _time(form: _Form, field_: str, text: str, place: str) -> None:
    value = read.days(text) if field_ == "days" else read.minutes(text)
    form.fields[field_] = value.value
    told = ", ".join(DAYS[one] for one in value.value) if field_ == "days" else value.value
    form.say(place, text, f"{field_}: {told}", value.confidence, value.assumed)
    if field_ == "days" and "minutes" not in form.fields and "min" in text.lower():
        form.fields["minutes"] = read.minutes(text).value


def _lists(form: _Form, field_: str, text: str, place: str, question: str) -> None:
    if read.is_none(text):
        form.say(place, text, f"{field_}: none")
        return
    if field_.startswith("aims."):
        known, strange = read.muscles(text)
        form.fields.setdefault("aims", {})[field_.removeprefix("aims.")] = tuple(known)
        kept = ", ".join(known)
    elif field_.startswith("avoid."):
        known, strange = read.exercises(text)
        reason = field_.removeprefix("avoid.")
        form.fields.setdefault("avoid", []).extend(
            {"exercise": one, "reason": reason, "note": ""} for one in known
        )
        kept = ", ".join(known)
    elif field_ == "known_loads":
        loads, strange = read.done(text, _before_brackets(question), form.unit)
        form.fields.setdefault("known_loads", []).extend(loads)
        kept = ", ".join(one["exercise"] for one in loads)
    else:
        raise AmountError("a date of birth is not read: an age in years")
    if strange:
        form.say(place, text, f"{field_}: {kept or 'nothing'}", DOUBTFUL,
                 f"not understood: {', '.join(strange)}")  # fmt: skip
    else:
        form.say(place, text, f"{field_}: {kept}", BY_CUSTOM)


def _before_brackets(question: str) -> str:
    return question.partition("(")[0].strip(" :?")


def _load_of(form: _Form, question: str, text: str, place: str) -> None:
    """The answer to a question that names an exercise: a set that was done."""
    question = _before_brackets(question)
    if named(question).ident is None:
        form.say(place, text, "not in the intake", DOUBTFUL, "the intake has no field for it")
        return
    loads, strange = read.done(text, question, form.unit)
    form.fields.setdefault("known_loads", []).extend(loads)
    if strange:
        raise AmountError("a set that was done, for example `80 kg x 8`")
    form.say(place, text, f"known_loads: {named(question).ident}", BY_CUSTOM)


def _intake(form: _Form) -> Intake | None:
    """The intake, or None with what is missing said."""
    missing = [one for one in REQUIRED if one not in form.fields]
    for one in missing:
        form.say(one, "", "no intake without it", DOUBTFUL, f"not known: --answer {one}=...")
    asked = [
        name
        for name, field_ in Screening.model_fields.items()
        if field_.annotation is bool and name not in form.screening
    ]
    if asked:
        words = ", ".join(one.replace("_", " ") for one in asked)
        form.say("screening", "", "taken as no", DOUBTFUL, f"the form does not ask about: {words}")
    form.screening.setdefault("active_last_3_months", False)
    if missing:
        return None
    fields = dict(form.fields)
    minutes = fields.pop("minutes", None)
    if minutes is None:
        form.say("minutes", "", f"{DEFAULT_MINUTES} min a session", DOUBTFUL, "not known")
    fields["days"] = tuple(
        {"day": DAYS[day], "minutes": minutes or DEFAULT_MINUTES} for day in fields["days"]
    )
    if "gym" not in fields:
        form.say("gym", "", "full gym", DOUBTFUL, "not known: --answer gym=..., or a kit list")
        fields["gym"] = "full gym"
    for name in ("avoid", "known_loads"):
        fields[name] = tuple(fields.get(name, ()))
    try:
        return Intake.model_validate(
            {"setwright": "intake/1", "screening": form.screening, **fields}, strict=True
        )
    except ValidationError as error:
        for where, found, allowed in explained(error):
            form.say(where, found, "no intake with it", DOUBTFUL, f"allowed: {allowed}")
        return None
