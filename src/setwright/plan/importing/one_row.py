"""One line of a table to the sets it tells of."""

from __future__ import annotations

import re
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from setwright.documents.units import Unit
from setwright.exercises.catalogue import exercise
from setwright.plan.amounts import AmountError
from setwright.plan.done_words import load_kg
from setwright.plan.importing.cells import Cells
from setwright.plan.importing.load_cell import effort, said_load, unit_of_load
from setwright.plan.importing.marks import (
    ROLES,
    is_nothing,
    read_flag,
    read_pain,
    read_rest_s,
    read_side,
    read_symptoms,
)
from setwright.plan.importing.reps_cell import performed


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
    for head, full, partial, extra in performed(cells, number):
        load = said_load(cells, number, head, len(drafts), ident)
        own = unit_of_load(cells, number, load, unit)
        try:
            kilos = load_kg(load, ident, own)
        except AmountError as error:
            cells.ask("load", "load", f"The load does not suit the exercise: {error}.", number)
        fields = {"at": at, "exercise": ident, "load_kg": kilos, "unit": own}
        fields |= {"reps": full, "partial_reps": partial} | effort(cells, number, len(drafts))
        fields |= common | extra
        if said:
            fields["said"] = said[:120]
        _possible(cells, number, fields)
        if "number" in common:
            fields["number"] = common["number"] + from_zero + len(drafts)
        drafts.append(Draft(cells.line, fields, load.unit is not None, cells.answer == "keep"))
    return drafts


def _common(cells: Cells, number: int | None) -> dict[str, Any]:
    """What holds for every set of the line."""
    column = cells.column("rest", number)
    rest_unit = column.unit if column else None
    fields: dict[str, Any] = {
        "rest_s": cells.read("rest", number, lambda cell: read_rest_s(cell, rest_unit)),
        "side": cells.read("side", None, read_side),
        "to_failure": cells.read("failure", None, read_flag),
        "technique": cells.read("technique", None, read_flag),
        "symptoms": cells.read("symptom", None, read_symptoms),
        "pain": cells.read("pain", None, lambda cell: read_pain(cell, cells.get("pain_where"))),
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
        fields["number"] = cells.read("number", None, _place)
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
