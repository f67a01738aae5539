"""Who works on a workspace: servers side by side, or one restore alone."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from setwright.documents.errors import DocumentError, Fault

FILE = "in-use.lock"


@contextmanager
def in_use(folder: Path, alone: bool = False) -> Iterator[None]:
    """Hold a workspace until the block or the process ends.

    Args:
        folder: of the workspace.
        alone: nobody else may hold it; otherwise any number of servers may.

    Raises:
        DocumentError: when it is held in a way that does not go together, or cannot be written.
    """
    try:
        folder.mkdir(mode=0o700, parents=True, exist_ok=True)
        file = os.fdopen(os.open(folder / FILE, os.O_RDWR | os.O_CREAT, 0o600), "r+b")
    except OSError as error:
        fault = Fault("", error.strerror or "unreadable", "a folder that can be written")
        raise DocumentError(str(folder), (fault,)) from error
    with file:
        if not _take(file, alone):
            found = "a running server" if alone else "a restore under way"
            allowed = "a workspace whose servers are stopped" if alone else "a moment's patience"
            raise DocumentError(str(folder), (Fault("", found, allowed),))
        yield


if sys.platform == "win32":
    import msvcrt

    def _take(file: IO[bytes], alone: bool) -> bool:
        try:
            file.seek(0)
            msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True
else:
    import fcntl

    def _take(file: IO[bytes], alone: bool) -> bool:
        try:
            fcntl.flock(file, (fcntl.LOCK_EX if alone else fcntl.LOCK_SH) | fcntl.LOCK_NB)
        except OSError:
            return False
        return True
