"""Sets that carry the same number twice, as two phones in one session write them."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date

from setwright.plan.log import Record, SetRecord


def written_twice(records: Iterable[Record]) -> tuple[SetRecord, ...]:
    """Working sets that share exercise, day, number and side with another one, in their order.

    Nothing is dropped or merged: whether they were one set or two only the person can say, and
    takes one back if it was one.

    Args:
        records: those that hold.
    """
    places: dict[tuple[date, str, int | None, str | None], list[SetRecord]] = {}
    for one in records:
        if isinstance(one, SetRecord) and one.role == "working" and one.number is not None:
            key = (one.at.date(), one.exercise, one.number, one.side)
            places.setdefault(key, []).append(one)
    return tuple(one for sets in places.values() if len(sets) > 1 for one in sets)
