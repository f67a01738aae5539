"""Making Django ready inside any process: the server, a command, a test."""

from __future__ import annotations

import os
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault


def set_up(folder: Path | None = None) -> None:
    """Set Django up for the workspace in a folder.

    Args:
        folder: of the workspace; by default what `SETWRIGHT_DATA` says.

    Raises:
        DocumentError: when the folder or the settings cannot be used.
    """
    import django

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
