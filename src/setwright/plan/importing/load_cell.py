"""The load of a line, its unit, and the effort as felt."""

from __future__ import annotations

import re
from typing import Any

from setwright.documents.units import Unit
from setwright.exercises.catalogue import exercise
from setwright.plan.amounts import AmountError
from setwright.plan.done_words import (
    SaidLoad,
    read_effort,
    read_said_load,
)
from setwright.plan.importing.cells import Cells
from setwright.plan.importing.marks import is_nothing


def said_load(
    cells: Cells, number: int | None, head: str | None, place: int, ident: str
) -> SaidLoad:
    """The load of one set of a line.

    Args:
        cells: of the line.
        number: of the group of columns, or None.
        head: what stood before the x beside the repetitions, or None.
        place: of the set in the line, from 0.
        ident: catalogue id of the exercise.

    Raises:
        DoubtError: when it must be asked.
    """
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


def unit_of_load(cells: Cells, number: int | None, load: SaidLoad, unit: Unit) -> Unit:
    """The unit of a load: of the cell, the answer, the unit column, the heading, or as given.

    Raises:
        DoubtError: when the unit column holds something else.
    """
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


def effort(cells: Cells, number: int | None, place: int) -> dict[str, Any]:
    """Fields of the record that tell the effort of one set of a line.

    Raises:
        DoubtError: when it must be asked.
    """
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
