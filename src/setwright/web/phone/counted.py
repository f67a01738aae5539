"""Sets of today that count as done, those among them that say nothing of strength included."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from setwright.plan.log import SetRecord
from setwright.training.client import Client
from setwright.training.from_log import left_out


def sets_today(client: Client, exercise: str) -> tuple[SetRecord, ...]:
    """Working sets of an exercise today, in order, as they were logged."""
    day = date.fromordinal(client.day)
    return tuple(
        one
        for one in client.folder.log.sets()
        if one.exercise == exercise and one.role == "working" and one.at.date() == day
    )


def count_of(sets: Sequence[SetRecord]) -> int:
    """How many there are: two sides of one number are one, and without a repetition none is.

    The phone counts the same way without a network.
    """
    waiting: set[tuple[int | None, str]] = set()
    count = 0
    for one in (one for one in sets if one.reps + one.partial_reps > 0):
        if one.side is None:
            count += 1
            continue
        other = (one.number, "right" if one.side == "left" else "left")
        if other in waiting:
            waiting.discard(other)
        else:
            waiting.add((one.number, one.side))
            count += 1
    return count


def why_unread(client: Client, sets: Sequence[SetRecord]) -> str:
    """Why these sets say nothing of strength, in plain words; empty when they do."""
    ids = {one.id for one in sets}
    reasons = left_out(client.folder.log, client.folder.intake)
    return next((why for record, why in reversed(reasons) if record.id in ids), "")
