"""What can be set from outside, by environment variables, and the defaults."""

from __future__ import annotations

import os
import secrets
from dataclasses import dataclass
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault

SECRET_FILE = "secret.key"
DATABASE_FILE = "workspace.sqlite3"


@dataclass(frozen=True)
class Options:
    """Settings of one workspace.

    Attributes:
        folder: where the embedded database and the secret lie.
        dsn: of a PostgreSQL database; empty for the embedded one.
        hosts: names the server answers to.
        https: served over HTTPS (by a proxy in front): cookies are then sent over it only.
        debug: error pages with detail; never for real people's data.
        proxy: the proxy in front sets X-Forwarded-Proto and X-Forwarded-For.
    """

    folder: Path
    dsn: str
    hosts: tuple[str, ...]
    https: bool
    debug: bool
    proxy: bool


def from_environment() -> Options:
    """Read `SETWRIGHT_DATA`, `_DATABASE`, `_HOSTS`, `_HTTPS`, `_DEBUG` and `_PROXY`."""
    read = os.environ.get
    return Options(
        Path(read("SETWRIGHT_DATA", "workspace")),
        read("SETWRIGHT_DATABASE", ""),
        tuple(filter(None, read("SETWRIGHT_HOSTS", "localhost,127.0.0.1,[::1]").split(","))),
        _yes("SETWRIGHT_HTTPS"),
        _yes("SETWRIGHT_DEBUG"),
        _yes("SETWRIGHT_PROXY"),
    )


def secret_of(folder: Path) -> str:
    """The workspace's own secret: from `SETWRIGHT_SECRET`, or made once and kept in its folder.

    Raises:
        DocumentError: when it cannot be kept or read.
    """
    if given := os.environ.get("SETWRIGHT_SECRET"):
        return given
    file = folder / SECRET_FILE
    try:
        folder.mkdir(parents=True, exist_ok=True)
        try:
            handle = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
        except FileExistsError:
            return file.read_text()
        with os.fdopen(handle, "w") as out:
            out.write(secrets.token_urlsafe(64))
        return file.read_text()
    except OSError as error:
        fault = Fault("", error.strerror or "unreadable", "a folder that can be written")
        raise DocumentError(str(file), (fault,)) from error


def _yes(name: str) -> bool:
    return os.environ.get(name, "").lower() in ("1", "yes", "true", "on")
