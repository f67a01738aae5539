"""One version for all style sheets and scripts: it stands in the folder of their addresses.

A browser may keep such a file for good, and old and new ones never meet: a module imports its
neighbours by relative addresses, which keep the folder.
"""

from __future__ import annotations

import hashlib
from functools import lru_cache
from importlib.metadata import version as installed
from pathlib import Path

FOLDER = Path(__file__).parent / "static"


@lru_cache
def version() -> str:
    """Changes when a file of ours does, or the library that brings the others."""
    digest = hashlib.sha256(installed("django-htmx").encode())
    for file in sorted(FOLDER.rglob("*")):
        if file.is_file():
            name = file.relative_to(FOLDER).as_posix()
            digest.update(b"\0" + name.encode() + b"\0" + file.read_bytes())
    return digest.hexdigest()[:12]
