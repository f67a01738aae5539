"""Lines of imported tables that wait for an answer: kept beside the log, nothing is lost."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, TypeAdapter

from setwright.documents.base import Document
from setwright.documents.journal import append_lines
from setwright.plan.importing.columns import Columns
from setwright.plan.importing.identity import derived_id, occurrences
from setwright.plan.importing.importer import Imported
from setwright.plan.importing.question import Question
from setwright.plan.importing.table import Table
from setwright.plan.log import RecordId
from setwright.plan.log_store import read_journal

HELD = "log-questions.jsonl"


class Held(Document):
    """A line held back.

    Attributes:
        id: follows from the line's cells.
        file: name of the table.
        line: where it stood.
        cells: heading and cell.
        about: kind of the question.
        asks: the question.
    """

    kind: Literal["held"] = "held"
    id: RecordId
    file: str
    line: int = Field(ge=1)
    cells: dict[str, str]
    about: str
    asks: str


class Settled(Document):
    """A line held back that has been answered since."""

    kind: Literal["settled"] = "settled"
    id: RecordId
    of: RecordId
    how: Literal["imported", "left out"]


ENTRIES: TypeAdapter[Held | Settled] = TypeAdapter(
    Annotated[Held | Settled, Field(discriminator="kind")]
)


@dataclass(frozen=True)
class HeldLines:
    """All lines ever held back, and the answers.

    Attributes:
        entries: in the order of the file.
    """

    entries: tuple[Held | Settled, ...] = ()

    @property
    def settled(self) -> frozenset[str]:
        """Ids of lines that have been answered."""
        return frozenset(one.of for one in self.entries if isinstance(one, Settled))

    @property
    def waiting(self) -> tuple[Held, ...]:
        """Lines that wait for an answer."""
        settled = self.settled
        held = {one.id: one for one in self.entries if isinstance(one, Held)}
        return tuple(one for one in held.values() if one.id not in settled)


def read_held(path: Path) -> HeldLines:
    """Read the lines held back for a client.

    Raises:
        DocumentError: when a line of the file is at fault.
    """
    return HeldLines(read_journal(path, ENTRIES)[0])


def line_ids(table: Table, columns: Columns) -> dict[int, str]:
    """An id for every line, from its cells and how often they came before."""
    cells = {row.line: _cells(row.cells, columns) for row in table.rows}
    keys = ["held " + repr(sorted(one.items())) for one in cells.values()]
    return {
        line: derived_id(key, count)
        for line, key, count in zip(cells, keys, occurrences(keys), strict=True)
    }


def still_open(imported: Imported, ids: dict[int, str], held: HeldLines) -> tuple[Question, ...]:
    """The questions of an import without the lines that were answered at another import."""
    settled = held.settled
    questions = []
    for question in imported.questions:
        lines = tuple(line for line in question.lines if ids[line] not in settled)
        if lines:
            questions.append(
                Question(
                    question.key,
                    question.kind,
                    lines,
                    question.column,
                    question.found,
                    question.asks,
                    question.answers,
                )
            )
    return tuple(questions)


def keep_held(
    path: Path,
    table: Table,
    columns: Columns,
    imported: Imported,
    questions: Sequence[Question],
) -> None:
    """Write down the lines of open questions, and which waiting lines are answered now.

    Raises:
        DocumentError: when the file cannot be read or written.
    """
    ids = line_ids(table, columns)
    rows = {row.line: row for row in table.rows}
    entries: list[Held | Settled] = [
        Held(
            id=ids[line],
            file=Path(table.name).name,
            line=line,
            cells=_cells(rows[line].cells, columns),
            about=question.kind,
            asks=question.asks,
        )
        for question in questions
        for line in question.lines
    ]
    waiting = {one.id for one in read_held(path).waiting}
    for lines, how in ((imported.record_lines, "imported"), (imported.left_out, "left out")):
        entries += [
            Settled.model_validate(
                {"id": derived_id(f"settled {ids[line]}"), "of": ids[line], "how": how}
            )
            for line in lines
            if ids[line] in waiting
        ]
    if entries:
        append_lines(path, [(one.id, one.model_dump_json()) for one in entries])


def _cells(cells: Sequence[str], columns: Columns) -> dict[str, str]:
    named = {}
    for index, text in enumerate(cells):
        if text:
            heading = columns.headings[index] if index < len(columns.headings) else ""
            name = heading or f"column {index + 1}"
            named[name if name not in named else f"{name} ({index + 1})"] = text
    return named
