"""A backup put in the place of a workspace, whole or not at all."""

from __future__ import annotations

import json

from django.core import serializers
from django.core.management.color import no_style
from django.core.serializers.base import DeserializationError
from django.db import DatabaseError, connection, transaction
from django.db.migrations.recorder import MigrationRecorder

from setwright.documents.errors import DocumentError, Fault
from setwright.web.models import Account, Attempt
from setwright.web.server.backup import Kept, models


def restore(kept: Kept, over: bool) -> int:
    """Put a backup in the place of what is there, in one transaction.

    Args:
        kept: a backup, read through.
        over: in the place of accounts that are there.

    Returns:
        How many rows there are now.

    Raises:
        DocumentError: when the workspace is in use and ``over`` is not said, when the backup is
            of a later version, or when its rows do not go together; then nothing is changed.
    """
    if not over and Account.objects.exists():
        fault = Fault("", "a workspace that is in use", "an empty one, or --yes to replace it")
        raise DocumentError("restore", (fault,))
    _refuse_later(kept)
    try:
        with transaction.atomic():
            Attempt.objects.all().delete()
            for model in reversed(models()):
                _empty(model._meta.db_table)
            for row in kept.rows:
                for one in serializers.deserialize("python", [json.loads(row)]):
                    one.object.save_base(raw=True, force_insert=True)
            with connection.cursor() as cursor:
                for statement in connection.ops.sequence_reset_sql(no_style(), models()):
                    cursor.execute(statement)
            connection.check_constraints()
    except (DatabaseError, DeserializationError, ValueError, TypeError) as error:
        words = str(error).strip().splitlines()[0][:200] if str(error).strip() else "a bad row"
        raise DocumentError("restore", (Fault("", words, "rows that go together"),)) from error
    return len(kept.rows)


def _empty(table: str) -> None:
    """Delete every row of a table; that others refer to them is mended by the end."""
    with connection.cursor() as cursor:
        cursor.execute(f"DELETE FROM {connection.ops.quote_name(table)}")


def _refuse_later(kept: Kept) -> None:
    here = frozenset(MigrationRecorder(connection).applied_migrations())
    later = sorted(f"{app}.{name}" for app, name in kept.migrations - here)
    if later:
        found = f"a backup of version {kept.version}, with {', '.join(later)}"
        raise DocumentError("restore", (Fault("", found, "a backup of this version or before"),))
