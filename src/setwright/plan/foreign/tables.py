"""Plans in tables: days as blocks of rows or side by side, with or without headings."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any, Final

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.table import Table
from setwright.documents.units import Unit
from setwright.plan.foreign.finish import finished
from setwright.plan.foreign.model import Reading
from setwright.plan.foreign.sheet import SheetReader

MAX_CELLS: Final = 20_000


def read_plan_tables(
    tables: Sequence[Table], name: str, unit: Unit | None, answers: Mapping[str, str]
) -> Reading:
    """Read a plan from tables, cell by cell.

    Args:
        tables: the sheets, or the one table of a CSV file.
        name: of the file.
        unit: of bare loads, when the coach says it.
        answers: by cell, for example ``B7`` or ``Week!B7`` where there are several sheets.

    Raises:
        DocumentError: when there are more cells than a plan has.
    """
    held = sum(1 for table in tables for _ in table.filled())
    if held > MAX_CELLS:
        allowed = f"up to {MAX_CELLS:,} cells with content: choose one sheet, or leave the log out"
        raise DocumentError(name, (Fault("", f"{held:,} cells with content", allowed),))
    reader = _sheets(tables, unit, answers, {})
    late = reader.trailing | reader.late
    if late:
        reader = _sheets(tables, unit, answers, late)
    return finished(reader.draft, name, reader.contents)


def _sheets(
    tables: Sequence[Table],
    unit: Unit | None,
    answers: Mapping[str, str],
    for_all: Mapping[str, Any],
) -> SheetReader:
    """Read the sheets, with what is said for all further below already known."""
    reader = SheetReader(unit, answers)
    reader.draft.defaults.update(for_all)
    reader.for_all = dict(for_all)
    for table in tables:
        reader.sheet(table, f"{table.name}!" if len(tables) > 1 else "")
    return reader
