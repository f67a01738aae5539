"""A rehearsed session as blocks of time: one block an exercise or a superset."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.plan.week import Session
from setwright.rehearsal.model import RehearsedSession


@dataclass(frozen=True)
class Span:
    """A stretch of time, s from the start of the session."""

    start_s: float
    end_s: float


@dataclass(frozen=True)
class Lane:
    """One exercise of a block.

    Attributes:
        position: its index in the session.
        warm_up: its ramp sets with the rest after each.
        sets: its working sets.
    """

    position: int
    warm_up: tuple[Span, ...]
    sets: tuple[Span, ...]


@dataclass(frozen=True)
class Block:
    """An exercise, or the exercises of a superset, from the change-over to the last set.

    Attributes:
        whole: from the end of the block before to the end of the last set.
        opens_s: where the change-over ends and the first ramp or working set begins.
        lanes: the exercises in order.
    """

    whole: Span
    opens_s: float
    lanes: tuple[Lane, ...]

    @property
    def minutes(self) -> float:
        """Length in minutes, change-over included."""
        return (self.whole.end_s - self.whole.start_s) / 60


def blocks(session: Session, lived: RehearsedSession) -> tuple[Block, ...]:
    """The blocks of a session in the order they are done."""
    groups: dict[str, list[int]] = {}
    for position, entry in enumerate(session.exercises):
        groups.setdefault(entry.superset or f"alone {position}", []).append(position)
    lanes = [tuple(_lane(position, lived) for position in group) for group in groups.values()]
    lanes.sort(key=lambda row: min(span.start_s for lane in row for span in lane.sets))
    found = []
    before = 0.0
    for row in lanes:
        work = [span for lane in row for span in (*lane.warm_up, *lane.sets)]
        end = max(span.end_s for span in work)
        opens = min(span.start_s for span in work)
        found.append(Block(Span(before, end), opens, row))
        before = end
    return tuple(found)


def _lane(position: int, lived: RehearsedSession) -> Lane:
    warm = tuple(
        Span(one.start_s, one.start_s + one.work_s + one.rest_s)
        for entry, one in lived.warm_up
        if entry == position
    )
    sets = tuple(
        Span(one.start_s, one.start_s + one.work_s) for one in lived.sets if one.entry == position
    )
    return Lane(position, warm, sets)
