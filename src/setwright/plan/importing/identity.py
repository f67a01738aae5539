"""Ids that follow from the content, so that the same line always makes the same record."""

from __future__ import annotations

import json
import uuid
from collections.abc import Hashable, Iterable
from typing import Any, TypeVar

K = TypeVar("K", bound=Hashable)

NAMESPACE = uuid.UUID("5d0f1c36-1d6a-5c2e-9a57-6f0d3b8c4e21")
# Where a set stands among the others, and how its exercise was spelled, do not make another set.
NOT_CONTENT = ("id", "number", "said", "unit")


def content_key(fields: dict[str, Any]) -> str:
    """The content of a record as text."""
    kept = {key: value for key, value in fields.items() if key not in NOT_CONTENT}
    return json.dumps(kept, sort_keys=True, default=str, ensure_ascii=False)


def derived_id(key: str, occurrence: int = 0) -> str:
    """The id of the so-and-so-many-th record of a content."""
    return str(uuid.uuid5(NAMESPACE, f"{key}#{occurrence}"))


def occurrences(keys: Iterable[K]) -> list[int]:
    """How often each key has come before."""
    seen: dict[K, int] = {}
    counts = []
    for key in keys:
        counts.append(seen.get(key, 0))
        seen[key] = counts[-1] + 1
    return counts
