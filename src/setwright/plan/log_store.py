"""The files a client's records live in: one record a line, appended, never rewritten."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TypeVar

from pydantic import TypeAdapter, ValidationError

from setwright.documents.base import Document
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.journal import Line, append_lines, read_lines, whole
from setwright.documents.validation import explained
from setwright.plan.decision import Decision
from setwright.plan.log import Log, Record

R = TypeVar("R")

RECORDS: TypeAdapter[Record] = TypeAdapter(Record)
DECISIONS: TypeAdapter[Decision] = TypeAdapter(Decision)


def read_log(path: Path) -> Log:
    """Read a log; a file that is not there yet is an empty log.

    Raises:
        DocumentError: with every line that is whole and no record.
    """
    records, notes = read_journal(path, RECORDS)
    return _once(records, notes)


def append_records(path: Path, records: Sequence[Record]) -> tuple[Record, ...]:
    """Add records to a log and return those that were not there yet.

    When this returns, the records are on the disk. A record whose id the log holds is left out.

    Raises:
        DocumentError: when the file cannot be written.
    """
    added = append_lines(path, [(record.id, line_of(record)) for record in records])
    first = {record.id: record for record in reversed(records) if record.id in added}
    return tuple(reversed(first.values()))


def read_decisions(path: Path) -> tuple[Decision, ...]:
    """Read the decisions of a client, in the order they were taken.

    Raises:
        DocumentError: with every line that is whole and no decision.
    """
    return read_journal(path, DECISIONS)[0]


def append_decision(path: Path, decision: Decision) -> bool:
    """Add a decision; False when it is there already.

    Raises:
        DocumentError: when the file cannot be written.
    """
    return bool(append_lines(path, [(decision.id, line_of(decision))]))


def line_of(document: Document) -> str:
    """One line of a journal: a record or a decision as a JSON object."""
    data = document.model_dump_json(exclude_defaults=True)
    kind = getattr(document, "kind", None)
    return data if kind is None else f'{{"kind":"{kind}",{data[1:]}'


def _once(records: Iterable[Record], notes: tuple[str, ...]) -> Log:
    first: dict[str, Record] = {}
    more: list[str] = []
    for record in records:
        known = first.setdefault(record.id, record)
        if known != record:
            more.append(f"two records carry the id {record.id}; the first one counts")
    return Log(tuple(first.values()), notes + tuple(more))


def read_journal(path: Path, adapter: TypeAdapter[R]) -> tuple[tuple[R, ...], tuple[str, ...]]:
    """Entries of an append-only file, and notes on lines that were cut off.

    Raises:
        DocumentError: with every line that is whole and no entry.
    """
    found: list[R] = []
    notes: list[str] = []
    faults: list[Fault] = []
    for line in read_lines(path):
        try:
            found.append(adapter.validate_json(line.raw, strict=True))
        except ValidationError as error:
            if whole(line.raw):
                faults += _faults(line, error)
            else:
                notes.append(_torn(path, line))
    if faults:
        raise DocumentError(str(path), tuple(faults))
    return tuple(found), tuple(notes)


def _torn(path: Path, line: Line) -> str:
    return (
        f"{path.name}:{line.number}: a record was cut off while it was written "
        f"({len(line.raw)} bytes kept, not counted)"
    )


def _faults(line: Line, error: ValidationError) -> list[Fault]:
    if error.errors()[0]["type"] == "json_invalid":
        text = line.raw[:40].decode("utf-8", "replace")
        return [Fault("", repr(text), "one JSON object, as `setwright log` writes it", line.number)]
    rows = explained(error)
    return [
        Fault(field.partition(".")[2] or field, found, allowed, line.number)
        for field, found, allowed in rows
    ]
