"""One writer at a time: a lock on an open file, let go when the process ends in any way."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from typing import IO

if sys.platform == "win32":
    import msvcrt

    @contextmanager
    def locked(file: IO[bytes]) -> Iterator[None]:
        """Hold the lock of a file; waits until another process lets go of it."""
        file.seek(0)
        msvcrt.locking(file.fileno(), msvcrt.LK_LOCK, 1)
        try:
            yield
        finally:
            file.seek(0)
            msvcrt.locking(file.fileno(), msvcrt.LK_UNLCK, 1)
else:
    import fcntl

    @contextmanager
    def locked(file: IO[bytes]) -> Iterator[None]:
        """Hold the lock of a file; waits until another process lets go of it."""
        fcntl.flock(file, fcntl.LOCK_EX)
        try:
            yield
        finally:
            fcntl.flock(file, fcntl.LOCK_UN)
