"""A plan from a file of any making: told apart by its content, read, accounted for."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Final

from setwright.documents.csv_table import decoded, find_delimiter, read_csv
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table_file import MAX_BYTES, chosen, is_workbook, read_tables
from setwright.documents.units import Unit
from setwright.plan.foreign.model import Reading
from setwright.plan.foreign.notes import MAX_LINES, read_notes
from setwright.plan.foreign.tables import read_plan_tables
from setwright.plan.foreign.text_table import table_in

TABLE_ENDINGS: Final = (".csv", ".tsv", ".tab")
NO_ANSWERS: Final[Mapping[str, str]] = MappingProxyType({})


def import_plan(
    data: bytes,
    name: str,
    sheet: str | None = None,
    unit: Unit | None = None,
    answers: Mapping[str, str] = NO_ANSWERS,
) -> Reading:
    """Read a plan from notes, CSV or XLSX.

    Args:
        data: the file's bytes.
        name: of the file; an ending such as ``.csv`` makes text a table.
        sheet: the one sheet to be read, all when None.
        unit: of bare loads, when the coach says it.
        answers: by line (``12``) or cell (``B7``, ``Week!B7``): words read instead of or besides
            what stands there, or ``skip``.

    Returns:
        Every line or cell accounted for, and the plan of what is surely understood.

    Raises:
        DocumentError: when the file cannot be read at all, or an answer fits no place.
    """
    if len(data) > MAX_BYTES:
        fault = Fault("", f"{len(data):,} bytes", f"at most {MAX_BYTES:,} bytes")
        raise DocumentError(name, (fault,))
    if is_workbook(data):
        tables = chosen(read_tables(data, name), sheet, name)
        reading = read_plan_tables(tables, name, unit, answers)
    else:
        text = decoded(data, name)
        if sheet is not None:
            raise DocumentError(name, (Fault("sheet", repr(sheet), "a sheet of a workbook only"),))
        if name.lower().endswith(TABLE_ENDINGS) or _tabbed(text):
            reading = read_plan_tables((read_csv(text, name),), name, unit, answers)
        elif text.count("\n") < MAX_LINES and (table := table_in(text)) is not None:
            reading = read_plan_tables((table,), name, unit, answers)
        else:
            reading = read_notes(text, name, unit, answers)
    if not reading.pieces:
        raise DocumentError(name, (Fault("", "nothing", "a plan"),))
    strange = sorted(set(answers) - {piece.place for piece in reading.pieces})
    if strange:
        allowed = "a line or cell with content, as the preview names it"
        raise DocumentError(name, tuple(Fault("answer", repr(one), allowed) for one in strange))
    return reading


def _tabbed(text: str) -> bool:
    """Whether text was pasted from a spreadsheet: most lines have tabs inside."""
    lines = [line for line in text.splitlines() if line.strip()]
    inside = sum(1 for line in lines if "\t" in line.strip())
    return len(lines) > 1 and 10 * inside >= 6 * len(lines) and find_delimiter(text) == "\t"
