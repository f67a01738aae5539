"""Tables with a row for every set: which rows belong together, and what they say as one."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from setwright.documents.table import Table
from setwright.plan.foreign.columns import Column


@dataclass(frozen=True)
class Sets:
    """The sets of one exercise, a row each.

    Attributes:
        rows: of the table, the first one included.
        cells: what the rows say as one, by column.
        notes: what differs from set to set and is no field of an exercise.
        numbered: column with the number of the set, or None.
    """

    rows: tuple[int, ...]
    cells: Mapping[int, str]
    notes: tuple[str, ...] = ()
    numbered: int | None = None


def sets_from(
    table: Table, at: int, columns: Mapping[int, Column], name_at: int, cells: Mapping[int, str]
) -> Sets | None:
    """The sets that begin in a row, or None when the row is no first set of several.

    Args:
        table: the whole table.
        at: row, from 0.
        columns: what each column holds.
        name_at: column of the exercise.
        cells: the row's cells, without those of day and session.
    """
    by_role = {column.role: place for place, column in sorted(columns.items(), reverse=True)}
    numbered = by_role.get("sets")
    if "scheme" in by_role or "each" in by_role or "reps" not in by_role:
        return None
    if numbered is not None and cells.get(numbered) != "1":
        return None
    rows = [at]
    while at + len(rows) < len(table.rows):
        row = table.rows[at + len(rows)]
        again = row[name_at] in ("", cells[name_at])
        new_day = any(
            row[place] not in ("", table.rows[at][place])
            for role, place in by_role.items() if role in ("day", "session")
        )  # fmt: skip
        counted = numbered is None or row[numbered] == str(len(rows) + 1)
        if not again or new_day or not counted or not row[by_role["reps"]]:
            break
        rows.append(at + len(rows))
    if len(rows) < 2:
        return None
    return _as_one(table, rows, columns, cells, numbered)


def _as_one(
    table: Table, rows: Sequence[int], columns: Mapping[int, Column], cells: Mapping[int, str],
    numbered: int | None,
) -> Sets:  # fmt: skip
    said = dict(cells)
    notes = []
    for place, column in columns.items():
        written = [table.rows[row][place] for row in rows if table.rows[row][place]]
        if not written or len(set(written)) < 2:
            continue
        if column.role == "reps":
            said[place] = among(written)
        elif column.role in ("rir", "rpe"):
            said[place] = f"{written[0]}>{written[-1]}"
        elif column.role in ("load", "rest", "tempo"):
            notes.append(f"{column.role} by set {', '.join(written)}")
    if numbered is not None:
        said[numbered] = str(len(rows))
    return Sets(tuple(rows), said, tuple(notes), numbered)


def among(reps: list[str]) -> str:
    """Repetitions of several sets as one amount: a figure a set, or the band of all."""
    if len(set(reps)) == 1:
        return reps[0]
    figures = [int(one) for words in reps for one in re.findall(r"\d+", words)]
    if all(words.isdigit() for words in reps):
        return "/".join(reps)
    return f"{min(figures)}-{max(figures)}"
