"""The phone page's own scripts, served where its worker may look after them."""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from pathlib import Path

FOLDER = Path(__file__).parents[1] / "static" / "setwright" / "js" / "phone"


@lru_cache
def modules() -> Mapping[str, bytes]:
    """Name without its ending, and text, of every module."""
    return {file.stem: file.read_bytes() for file in sorted(FOLDER.glob("*.js"))}
