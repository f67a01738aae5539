"""The repetitions of a line: one set or several."""

from __future__ import annotations

import re
from typing import Any

from setwright.plan.amounts import AmountError
from setwright.plan.done_several import read_sets_text, split_groups
from setwright.plan.done_words import REPS_FORMS, read_done_reps
from setwright.plan.importing.cells import Cells
from setwright.plan.importing.marks import is_nothing

MOST_SETS = 20


def performed(
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
    partial = cells.read("partials", number, lambda told: read_done_reps(told)[0])
    return [(head, full, partial, extra) for head, full, _, extra in found]
