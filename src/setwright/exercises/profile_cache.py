"""The computed profiles of the whole catalogue, shipped with the hash of what they came from."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable
from functools import cache
from pathlib import Path
from typing import Final

from setwright.documents.base import Document
from setwright.documents.knowledge import folder_of
from setwright.exercises.computed import Computed

FILE: Final = folder_of("setwright.exercises", "profiles.json")
# What a profile depends on: declared movements, the figures, and the code that computes.
_INPUTS: Final = (
    (folder_of("setwright.exercises", "movements"), ("*.yaml",)),
    (folder_of("setwright.exercises", "."), ("computed.py", "for_body.py", "movements.py")),
    (folder_of("setwright.mechanics", "."), ("**/*.py", "**/*.json")),
)


class ProfilesFile(Document):
    """The shipped profiles.

    Attributes:
        inputs_sha256: hash over the inputs.
        profiles: by exercise id.
    """

    inputs_sha256: str
    profiles: dict[str, Computed]


def inputs_digest() -> str:
    """The sha256 over the names and bytes of everything the profiles come from."""
    seen = hashlib.sha256()
    for path in _inputs():
        seen.update(path.name.encode() + b"\0" + path.read_bytes() + b"\0")
    return seen.hexdigest()


def _inputs() -> Iterable[Path]:
    for folder, patterns in _INPUTS:
        found = {path for pattern in patterns for path in folder.glob(pattern)}
        yield from sorted(path for path in found if "__pycache__" not in path.parts)


@cache
def shipped() -> ProfilesFile:
    """The profiles as shipped; ``make profiles`` computes them anew.

    Raises:
        FileNotFoundError: when they were never computed.
    """
    return ProfilesFile.model_validate_json(FILE.read_text(encoding="utf-8"))


def computed(ident: str) -> Computed:
    """The shipped profile of an exercise.

    Raises:
        KeyError: when there is none.
    """
    return shipped().profiles[ident]
