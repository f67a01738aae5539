"""Adding records to a client's log: once each, whoever sends them and however often."""

from __future__ import annotations

import json
from collections.abc import Iterable
from dataclasses import dataclass

from django.db import transaction
from pydantic import JsonValue, ValidationError

from setwright.documents.base import Document
from setwright.documents.validation import explained
from setwright.plan.log import Record
from setwright.plan.log_store import RECORDS, line_of
from setwright.web.engine.folder import record_of
from setwright.web.models import Account, Client, LogEntry

MOST = 2000
YEARS = range(1990, 2101)
ANOTHER = "another record carries this id"


@dataclass(frozen=True)
class Refused:
    """A record that was not kept, and why; the others of its batch were.

    Attributes:
        position: place in what was sent, from 0.
        id: as sent; empty when it was none.
        why: field by field, in plain words.
    """

    position: int
    id: str
    why: tuple[str, ...]


@dataclass(frozen=True)
class Appended:
    """What became of the records of one sending.

    Attributes:
        accepted: ids kept now.
        known: ids that were kept before, with the same content: sent twice, kept once.
        refused: what can never be kept as it was sent.
    """

    accepted: tuple[str, ...]
    known: tuple[str, ...]
    refused: tuple[Refused, ...]


def append_records(
    client: Client, records: Iterable[JsonValue | Record], who: Account | None
) -> Appended:
    """Keep records of a client. When this returns, they survive a killed process.

    One that is at fault does not hold up the others. The caller notes the trail.

    Args:
        client: whose log it is.
        records: each as the JSON object of a log's line, or a record; the first 2000 are read.
        who: sent them.
    """
    refused: list[Refused] = []
    kept: dict[str, tuple[int, Record]] = {}
    for position, raw in enumerate(records):
        read = _too_many(position) if position >= MOST else _read(position, raw)
        if isinstance(read, Refused):
            refused.append(read)
        elif kept.setdefault(read.id, (position, read))[1] != read:
            refused.append(Refused(position, read.id, (ANOTHER,)))
    with transaction.atomic():
        before = _texts(client, kept)
        LogEntry.objects.bulk_create(
            [_entry(client, one, who) for _, one in kept.values() if one.id not in before],
            ignore_conflicts=True,
        )
        after = _texts(client, kept)
    differs = {ident for ident, text in after.items() if record_of(text) != kept[ident][1]}
    refused += [Refused(kept[ident][0], ident, (ANOTHER,)) for ident in differs]
    held = [ident for ident in kept if ident not in differs]
    return Appended(
        tuple(ident for ident in held if ident not in before),
        tuple(ident for ident in held if ident in before),
        tuple(sorted(refused, key=lambda one: one.position)),
    )


def _read(position: int, raw: JsonValue | Record) -> Record | Refused:
    ident = raw.get("id") if isinstance(raw, dict) else getattr(raw, "id", "")
    ident = ident if isinstance(ident, str) else ""
    try:
        text = line_of(raw) if isinstance(raw, Document) else json.dumps(raw)
        record = RECORDS.validate_json(text, strict=True)
    except ValidationError as error:
        return Refused(position, ident[:36], _words(error))
    if record.at.year not in YEARS:
        allowed = f"a time of the years {YEARS.start} to {YEARS.stop - 1}"
        return Refused(position, ident, (f"at: found {record.at}; allowed: {allowed}",))
    return record


def _words(error: ValidationError) -> tuple[str, ...]:
    if error.errors()[0]["type"] == "json_invalid":
        return ("not the text of a record",)
    rows = explained(error)
    return tuple(f"{field}: found {found}; allowed: {allowed}" for field, found, allowed in rows)


def _too_many(position: int) -> Refused:
    return Refused(position, "", (f"more than {MOST} records at once",))


def _texts(client: Client, idents: Iterable[str]) -> dict[str, str]:
    rows = client.log.filter(record_id__in=list(idents))
    return dict(rows.values_list("record_id", "text"))


def _entry(client: Client, record: Record, who: Account | None) -> LogEntry:
    at = record.at.isoformat()
    return LogEntry(client=client, record_id=record.id, at=at, text=line_of(record), sent_by=who)
