"""Files written whole or not at all."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault


def write_bytes(path: Path, content: bytes) -> None:
    """Write a file whole or not at all: a temporary file beside it, then a rename.

    Raises:
        DocumentError: when the file cannot be written.
    """
    try:
        handle, temporary = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
    except OSError as error:
        raise _refused(path, error, "a folder that can be written") from None
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        mode = path.stat().st_mode & 0o777 if path.exists() else 0o666 & ~_umask()
        Path(temporary).chmod(mode)
        Path(temporary).replace(path)
    except OSError as error:
        raise _refused(path, error, "a file that can be written") from None
    finally:
        Path(temporary).unlink(missing_ok=True)


def _refused(path: Path, error: OSError, allowed: str) -> DocumentError:
    found = (error.strerror or "a failed write").lower()
    return DocumentError(str(path), (Fault("", found, allowed),))


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
