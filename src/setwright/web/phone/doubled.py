"""Sets that two devices gave the same number: both stay, and are shown as such."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.plan.log import Record, SetRecord


def doubled(records: Iterable[Record]) -> frozenset[str]:
    """Ids of working sets that share exercise, day, number and side with another one.

    Nothing is dropped or merged: whether they were one set or two only the person can say, and
    takes one back if it was one.

    Args:
        records: those that hold.
    """
    places: dict[tuple[object, ...], list[str]] = {}
    for one in records:
        if isinstance(one, SetRecord) and one.role == "working" and one.number is not None:
            key = (one.at.date(), one.exercise, one.number, one.side)
            places.setdefault(key, []).append(one.id)
    return frozenset(ident for ids in places.values() if len(ids) > 1 for ident in ids)
