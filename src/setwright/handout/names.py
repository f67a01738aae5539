"""Names of files that are safe on every system, whatever a plan is called."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence

MOST = 60
# Names that Windows keeps for devices.
RESERVED = re.compile(r"(?:con|prn|aux|nul|com\d|lpt\d)\Z")


def safe_name(words: str) -> str:
    """A name of lower-case letters, digits and hyphens, never empty and never a path.

    >>> safe_name("../../Ölwechsel & Co.")
    'olwechsel-co'
    """
    plain = unicodedata.normalize("NFKD", words).encode("ascii", "ignore").decode().lower()
    name = re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:MOST].rstrip("-")
    return f"plan-{name}".rstrip("-") if not name or RESERVED.match(name) else name


def safe_names(words: Sequence[str]) -> list[str]:
    """Safe names that differ from each other, in the same order."""
    found: list[str] = []
    for one in words:
        name = base = safe_name(one)
        count = 1
        while name in found:
            count += 1
            name = f"{base}-{count}"
        found.append(name)
    return found
