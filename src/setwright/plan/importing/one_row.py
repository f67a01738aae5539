"""One line of a table to the sets it tells of."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import Any, TypeVar

from setwright.documents.units import Unit
from setwright.exercises.catalogue import exercise
from setwright.plan.amounts import AmountError
from setwright.plan.done_several import read_sets_text, split_groups
from setwright.plan.done_words import (
    REPS_FORMS,
    SaidLoad,
    load_kg,
    read_done_reps,
    read_effort,
    read_said_load,
)
from setwright.plan.importing.cells import Cells
from setwright.plan.importing.marks import (
    ROLES,
    is_nothing,
    read_flag,
    read_pain,
    read_rest_s,
    read_side,
    read_symptoms,
)

T = TypeVar("T")
MOST_SETS = 20


@dataclass(frozen=True)
class Draft:
    """A set read from a line, not yet checked against the log.

    Attributes:
        line: where it stands.
        fields: of the set record, without its id.
        unit_said: whether the unit stands in the cell itself.
        kept: whether the coach has said that the line is right as it is.
    """

    line: int
    fields: dict[str, Any]
    unit_said: bool
    kept: bool


def sets_of(
    cells: Cells,
    number: int | None,
    ident: str,
    said: str,
    at: datetime,
    unit: Unit,
    from_zero: bool = False,
) -> list[Draft]:
    """The sets of one line, or of one numbered group of columns in it.

    Args:
        cells: of the line.
        number: of the group of columns; None for the line as a whole.
        ident: catalogue id of the exercise.
        said: its name as written, where that differs.
        at: when it was done.
        unit: of loads that carry none.
        from_zero: whether the table numbers its sets from 0.

    Raises:
        DoubtError: when something in it must be asked.
    """
    common = _common(cells, number)
    drafts: list[Draft] = []
    for head, full, partial, extra in _performed(cells, number):
        load = _said_load(cells, number, head, len(drafts), ident)
        own = _unit(cells, number, load, unit)
        try:
            kilos = load_kg(load, ident, own)
        except AmountError as error:
            cells.ask("load", "load", f"The load does not suit the exercise: {error}.", number)
        fields = {"at": at, "exercise": ident, "load_kg": kilos, "unit": own}
        fields |= {"reps": full, "partial_reps": partial} | _effort(cells, number, len(drafts))
        fields |= common | extra
        if said:
            fields["said"] = said[:120]
        _possible(cells, number, fields)
        if "number" in common:
            fields["number"] = common["number"] + from_zero + len(drafts)
        drafts.append(Draft(cells.line, fields, load.unit is not None, cells.answer == "keep"))
    return drafts


def _read(
    cells: Cells, role: str, number: int | None, how: Callable[[str], T], kind: str = "cell"
) -> T:
    cell = cells.get(role, number)
    try:
        return how(cell)
    except AmountError as error:
        cells.ask(kind, role, f"What is meant? Allowed: {error.args[0]}.", number)


def _common(cells: Cells, number: int | None) -> dict[str, Any]:
    """What holds for every set of the line."""
    column = cells.column("rest", number)
    rest_unit = column.unit if column else None
    fields: dict[str, Any] = {
        "rest_s": _read(cells, "rest", number, lambda cell: read_rest_s(cell, rest_unit)),
        "side": _read(cells, "side", None, read_side),
        "to_failure": _read(cells, "failure", None, read_flag),
        "technique": _read(cells, "technique", None, read_flag),
        "symptoms": _read(cells, "symptom", None, read_symptoms),
        "pain": _read(cells, "pain", None, lambda cell: read_pain(cell, cells.get("pain_where"))),
    }
    notes = [] if is_nothing(cells.get("note")) else [cells.get("note")]
    role = cells.get("role")
    if not is_nothing(role):
        said = ROLES.get(role.casefold())
        if said is None:
            notes.append(role)
        else:
            fields |= said
    if len("; ".join(notes)) > 500:
        cells.ask("note", "note", "The note is longer than 500 characters; what shall be kept?")
    fields["note"] = "; ".join(notes)
    place = cells.get("number")
    if not is_nothing(place) and number is None:
        fields["number"] = _read(cells, "number", None, _place)
    return {key: value for key, value in fields.items() if _says(value)}


def _says(value: object) -> bool:
    """Whether a field says anything; a rest of 0 does."""
    return value is not None and value is not False and value != "" and value != ()


def _place(cell: str) -> int | None:
    text = cell
    if text.casefold() in ROLES:
        return None
    match = re.fullmatch(r"(?:set|satz|#)?\s*(\d{1,2})(?:\.0)?", text, re.IGNORECASE)
    if match is None:
        raise AmountError("the number of the set")
    return int(match[1])


def _performed(
    cells: Cells, number: int | None
) -> list[tuple[str | None, int, int, dict[str, Any]]]:
    """Load as text where the cell tells it, full and partial repetitions, and what else it says."""
    role = "reps" if is_nothing(cells.get("performed", number)) else "performed"
    cell = cells.get(role, number)
    if is_nothing(cell):
        cells.ask("no reps", role, "No repetitions: how many were done?", number)
    text = cell
    found: list[tuple[str | None, int, int, dict[str, Any]]] = []
    try:
        for group in split_groups(text):
            done = read_sets_text(group)
            counts, head = done.counts, done.head
            if head and role == "reps" and not is_nothing(cells.get("load", number)):
                counts, head = _times(head, counts), None
            for place, (full, partial) in enumerate(counts):
                extra = dict(done.tail.fields)
                if done.tail.rirs is not None:
                    extra["rir"] = done.tail.rirs[place % len(done.tail.rirs)]
                found.append((head or None, full, partial, extra))
    except AmountError as error:
        allowed = error.args[0] if len(error.args) == 1 else REPS_FORMS
        cells.ask("reps", role, f"What was done? Allowed: {allowed}.", number)
    return _with_partials(cells, number, _as_many(cells, number, found))


def _times(head: str, counts: tuple[tuple[int, int], ...]) -> tuple[tuple[int, int], ...]:
    """``3x8`` beside a column of loads: three sets of eight."""
    if not head.isdigit() or not 1 <= int(head) <= MOST_SETS or len(counts) != 1:
        raise AmountError("`8`, `8+3p`, `8,8,7` or `3x8`")
    return counts * int(head)


def _as_many(
    cells: Cells, number: int | None, found: list[tuple[str | None, int, int, dict[str, Any]]]
) -> list[tuple[str | None, int, int, dict[str, Any]]]:
    count = cells.get("sets")
    if is_nothing(count) or number is not None:
        return found
    text = count
    if not re.fullmatch(r"\d{1,2}(?:\.0)?", text) or not 1 <= int(float(text)) <= MOST_SETS:
        cells.ask("sets", "sets", f"How many sets? Allowed: 1 to {MOST_SETS}.")
    wanted = int(float(text))
    if len(found) == 1:
        return found * wanted
    if len(found) != wanted:
        cells.ask("sets", "sets", f"{wanted} sets are told, and repetitions of {len(found)}.")
    return found


def _with_partials(
    cells: Cells, number: int | None, found: list[tuple[str | None, int, int, dict[str, Any]]]
) -> list[tuple[str | None, int, int, dict[str, Any]]]:
    cell = cells.get("partials", number)
    if is_nothing(cell):
        return found
    partial = _read(cells, "partials", number, lambda told: read_done_reps(told)[0])
    return [(head, full, partial, extra) for head, full, _, extra in found]


def _said_load(
    cells: Cells, number: int | None, head: str | None, place: int, ident: str
) -> SaidLoad:
    role = "load"
    cell = head or ""
    if head is None:
        cell = cells.get("load", number)
        for other in ("assistance", "added"):
            told = cells.get(other)
            if cell in ("", "0") and told not in ("", "0", "-"):
                role, cell = other, told
    if is_nothing(cell):
        if exercise(ident).loading in ("bodyweight", "band"):
            return SaidLoad(0.0)
        cells.ask("no load", "load", "No load: what was lifted?", number)
    text = cell
    pieces = [piece for piece in re.split(r"\s*[;/]\s*(?=[\d+-])|,\s+|,(?=\d+,)", text) if piece]
    try:
        if len(pieces) == 1 or head is not None:
            said = read_said_load(text)
        else:
            said = read_said_load(pieces[place])
    except (AmountError, IndexError):
        allowed = "`100`, `100 kg`, `225 lb`, `BW+10`, `-20 assisted`, or one load for each set"
        cells.ask("load", role, f"What was lifted? Allowed: {allowed}.", number)
    if role == "assistance":
        return SaidLoad(-abs(said.figure), said.unit, said.per, said.body)
    return said


def _unit(cells: Cells, number: int | None, load: SaidLoad, unit: Unit) -> Unit:
    if load.unit is not None:
        return load.unit
    if cells.answer in ("kg", "lb"):
        return "kg" if cells.answer == "kg" else "lb"
    told = cells.get("unit").casefold().rstrip("s.")
    if told:
        if told in ("kg", "kilo", "kilogram"):
            return "kg"
        if told in ("lb", "pound"):
            return "lb"
        cells.ask("unit", "unit", "Which unit? Allowed: kg or lb.")
    column = cells.column("load", number)
    if column is not None and column.unit in ("kg", "lb"):
        return "kg" if column.unit == "kg" else "lb"
    return unit


def _effort(cells: Cells, number: int | None, place: int) -> dict[str, Any]:
    for role in ("rir", "rpe", "effort"):
        cell = cells.get(role, number)
        if is_nothing(cell):
            continue
        text = cell
        if re.fullmatch(r"(?:to\s+)?(?:failure|fail|f|max)", text, re.IGNORECASE):
            return {"to_failure": True}
        if role == "effort" and not re.search(r"rir|rpe|@", text, re.IGNORECASE):
            asks = "Is this RIR or RPE? Say which column it is: --map rpe='...' or --map rir='...'."
            cells.ask("effort", role, asks, number)
        # Five or more in reserve, as some write what they no longer count.
        text = re.sub(r"(?<=\d)\s*\+\Z|\A>\s*", "", text)
        pieces = re.split(r"\s*[;/]\s*|,\s+|,(?!5\b)", text)
        try:
            said = pieces[place] if len(pieces) > 1 else text
            return {"rir": read_effort(said, rpe=role == "rpe")}
        except (AmountError, IndexError) as error:
            allowed = error.args[0] if isinstance(error, AmountError) else "one for each set"
            cells.ask("effort", role, f"How hard was it? Allowed: {allowed}.", number)
    return {}


def _possible(cells: Cells, number: int | None, fields: dict[str, Any]) -> None:
    """Ask about figures that nobody lifts."""
    one = exercise(fields["exercise"])
    if not -250 <= fields["load_kg"] <= 1000:
        cells.ask("impossible", "load", "No person lifts that; what was meant?", number)
    if fields["reps"] > 200 or fields["partial_reps"] > 200:
        cells.ask("impossible", "reps", "More than 200 repetitions; what was meant?", number)
    if cells.answer == "keep":
        return
    if fields["load_kg"] > 500 and one.pattern not in ("squat", "hinge", "calf raise", "carry"):
        cells.ask("impossible", "load", "Above 500 kg; is that right?", number, keep=True)
    if fields["reps"] > 100:
        cells.ask(
            "impossible", "reps", "More than 100 repetitions; is that right?", number, keep=True
        )
    if fields["load_kg"] == 0 and one.bodyweight_share == 0 and one.loading != "band":
        cells.ask(
            "no load", "load", f"{one.name} without a load; what was lifted?", number, keep=True
        )
