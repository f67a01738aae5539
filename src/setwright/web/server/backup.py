"""A backup: every row as one line of JSON, packed; it restores to either kind of database.

The first line tells the form of the database, the last one the number of rows and their sum, so
that a file cut short or changed is known before anything is touched.
"""

from __future__ import annotations

import gzip
import hashlib
import json
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import UTC, date, datetime
from io import BytesIO
from pathlib import Path
from typing import Any

from django.apps import apps
from django.core import serializers
from django.db import DatabaseError, connection, transaction
from django.db.migrations.recorder import MigrationRecorder
from django.db.models import Model

from setwright import __version__
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.whole_file import write_bytes

FORMAT = "backup/1"
LEFT_OUT = frozenset({"attempt"})
"""Counted attempts: a quarter of an hour old at most, and worth nothing elsewhere."""


@dataclass(frozen=True)
class Kept:
    """A backup that was read through and is whole.

    Attributes:
        made_at: when, UTC.
        version: of Setwright that made it.
        migrations: applied to the database then.
        rows: lines of JSON, as they were written.
    """

    made_at: datetime
    version: str
    migrations: frozenset[tuple[str, str]]
    rows: tuple[bytes, ...]


def models() -> list[type[Model]]:
    """Everything that is kept, in the order in which it is written."""
    ours = apps.get_app_config("workspace").get_models()
    kept = [one for one in ours if one._meta.model_name not in LEFT_OUT]
    return [*kept, apps.get_model("sessions", "Session")]


def backup(file: Path) -> int:
    """Write a backup and read it back; the file is whole or not there. Servers may go on.

    Returns:
        How many rows it holds.

    Raises:
        DocumentError: when the database is damaged, or the file cannot be written.
    """
    _refuse_damaged()
    with _snapshot():
        data = _packed(_lines())
    kept = read_backup(data, str(file))
    write_bytes(file, data)
    file.chmod(0o600)
    return len(kept.rows)


def read_backup(data: bytes, name: str) -> Kept:
    """Read a backup through.

    Raises:
        DocumentError: when it is none, or damaged.
    """
    try:
        lines = gzip.decompress(data).splitlines()
        head, tail = json.loads(lines[0]), json.loads(lines[-1])
    except (OSError, EOFError, ValueError, IndexError) as error:
        raise _damaged(name, "no backup, or one that is damaged") from error
    if not isinstance(head, dict) or head.get("setwright") != FORMAT:
        raise _damaged(name, "another format")
    rows = tuple(lines[1:-1])
    if tail != {"rows": len(rows), "sha256": _sum(rows)}:
        raise _damaged(name, "rows that were changed or are lacking")
    return Kept(
        datetime.fromisoformat(head["made_at"]),
        head["version"],
        frozenset((app, migration) for app, migration in head["migrations"]),
        rows,
    )


def _lines() -> Iterator[bytes]:
    for model in models():
        rows = model._default_manager.order_by("pk").iterator(1000)
        for one in serializers.serialize("python", rows):
            yield json.dumps(one, default=_moment, ensure_ascii=False).encode()


def _moment(value: date) -> str:
    """A day or a time, to the microsecond."""
    return value.isoformat()


def _packed(rows: Iterable[bytes]) -> bytes:
    lines = list(rows)
    head = {
        "setwright": FORMAT,
        "version": __version__,
        "made_at": datetime.now(UTC).isoformat(timespec="seconds"),
        "migrations": sorted(MigrationRecorder(connection).applied_migrations()),
    }
    tail = {"rows": len(lines), "sha256": _sum(lines)}
    out = BytesIO()
    with gzip.GzipFile(fileobj=out, mode="wb", compresslevel=6, mtime=0) as packed:
        for line in (json.dumps(head).encode(), *lines, json.dumps(tail).encode()):
            packed.write(line + b"\n")
    return out.getvalue()


def _sum(rows: Iterable[bytes]) -> str:
    digest = hashlib.sha256()
    for row in rows:
        digest.update(row + b"\n")
    return digest.hexdigest()


def _refuse_damaged() -> None:
    if connection.vendor != "sqlite":
        return
    with connection.cursor() as cursor:
        try:
            cursor.execute("PRAGMA integrity_check")
            found = [str(row[0]) for row in cursor.fetchall()]
        except DatabaseError as error:
            found = [str(error)]
    if found != ["ok"]:
        fault = Fault("", found[0][:200], "an undamaged database; an older backup may hold more")
        raise DocumentError("database", (fault,))


def _snapshot() -> Any:
    """A transaction that sees one state of every table."""
    if connection.vendor == "postgresql":
        with connection.cursor() as cursor:
            cursor.execute(
                "SET SESSION CHARACTERISTICS AS TRANSACTION ISOLATION LEVEL REPEATABLE READ"
            )
    return transaction.atomic()


def _damaged(name: str, found: str) -> DocumentError:
    allowed = "a file as `setwright backup` wrote it"
    return DocumentError(name, (Fault("", found, allowed),))
