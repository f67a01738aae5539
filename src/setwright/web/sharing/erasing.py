"""Erasing a person: every row goes, and what stood in the file is overwritten."""

from __future__ import annotations

import time

from django.apps import apps
from django.contrib.sessions.models import Session
from django.db import OperationalError, connection, transaction
from django.db.backends.utils import CursorWrapper

from setwright.web import trail
from setwright.web.memory import forget
from setwright.web.models import Account, Client

TRIES, PAUSE_S = 20, 0.1


def erase(client: Client, who: Account) -> bool:
    """Erase a client; the trail stays, and holds no name.

    Args:
        client: with everything that is kept of the person.
        who: asked for it.

    Returns:
        Whether the database's files are clean already; see ``overwrite``.
    """
    with transaction.atomic():
        trail.note(who, client, "erased")
        account = client.account
        client.delete()
        if account is not None:
            _sign_out(account)
            account.delete()
    forget()
    return overwrite()


def overwrite() -> bool:
    """Leave nothing of deleted rows in the database's files.

    Returns:
        False when others were at work all the time: then the last traces go when the server stops.
    """
    try:
        with connection.cursor() as cursor:
            if connection.vendor == "sqlite":
                cursor.execute("VACUUM")
                return _cut_log(cursor)
            tables = [
                model._meta.db_table for model in apps.get_app_config("workspace").get_models()
            ]
            cursor.execute(f"VACUUM (FULL) {', '.join(tables)}")
    except OperationalError:
        return False
    return True


def _cut_log(cursor: CursorWrapper) -> bool:
    """Empty SQLite's write-ahead log, which is possible only while nobody reads."""
    for _ in range(TRIES):
        cursor.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        if not cursor.fetchone()[0]:
            return True
        time.sleep(PAUSE_S)
    return False


def _sign_out(account: Account) -> None:
    for session in Session.objects.all():
        if session.get_decoded().get("_auth_user_id") == str(account.pk):
            session.delete()
