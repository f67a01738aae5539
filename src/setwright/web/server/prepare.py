"""Making Django ready inside any process: the server, a command, a test."""

from __future__ import annotations

import os
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault
from setwright.web.options import DATABASE_FILE


def set_up(folder: Path | None = None) -> None:
    """Set Django up for the workspace in a folder; what is written is for its user only.

    Args:
        folder: of the workspace; by default what `SETWRIGHT_DATA` says.

    Raises:
        DocumentError: when the folder or the settings cannot be used.
    """
    import django

    os.umask(0o077)
    if folder is not None:
        os.environ["SETWRIGHT_DATA"] = str(folder)
    os.environ.setdefault("DJANGO_SETTINGS_MODULE", "setwright.web.settings")
    django.setup()


def migrate() -> None:
    """Bring the database to the present form.

    Raises:
        DocumentError: when it cannot be reached or changed.
    """
    from django.core.management import call_command
    from django.db import DatabaseError

    try:
        call_command("migrate", verbosity=0, interactive=False)
    except DatabaseError as error:
        words = str(error).strip().splitlines()[0]
        fault = Fault("", words, "a database that can be reached and changed")
        raise DocumentError("database", (fault,)) from error


def refuse_missing(folder: Path) -> None:
    """Refuse a folder without an embedded database, where no other database is named.

    Raises:
        DocumentError: when there is no workspace.
    """
    there = (folder / DATABASE_FILE).is_file() or os.environ.get("SETWRIGHT_DATABASE")
    if not there:
        raise DocumentError(str(folder), (Fault("", "no workspace", "a folder of a workspace"),))
