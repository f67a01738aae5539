"""The page's own scripts: one version for all, so that old and new ones never meet."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

FOLDER = Path(__file__).parents[1] / "static" / "setwright" / "js" / "phone"


@lru_cache
def modules() -> Mapping[str, bytes]:
    """Name without its ending, and text, of every module."""
    return {file.stem: file.read_bytes() for file in sorted(FOLDER.glob("*.js"))}


@lru_cache
def version() -> str:
    """Changes when one of them does; part of their addresses, which relative imports keep."""
    digest = hashlib.sha256()
    for name, text in modules().items():
        digest.update(name.encode() + b"\0" + text + b"\0")
    return digest.hexdigest()[:12]
