"""What is asked of a person: sets with their loads, repetitions and effort."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Change = Literal["first", "up", "same", "down", "restart", "stop"]


@dataclass(frozen=True, slots=True)
class PlannedSet:
    """One working set to come.

    Attributes:
        number: from 1.
        load_kg: as lifted; None when it is found by feel or has no figure.
        reps: repetitions to aim at.
        most: repetitions to stop at even when more is left.
        rir: repetitions in reserve to stop at, as this person feels them.
        rir_real: what should really be left.
        expected: repetitions expected at that effort, or None when nothing is known.
        low: lower end of their 80 % interval.
        high: upper end.
        rest_s: shortest and longest rest after it.
        to_failure: as many as possible; ``reps`` are then the least that is expected.
    """

    number: int
    load_kg: float | None
    reps: int
    most: int
    rir: float
    rir_real: float
    expected: float | None
    low: float | None
    high: float | None
    rest_s: tuple[int, int]
    to_failure: bool = False


@dataclass(frozen=True, slots=True)
class Prescribed:
    """One exercise of a session to come.

    Attributes:
        exercise: id.
        change: of the first set's load against the last time; "stop": leave it out.
        sets: to do; none when it is left out.
        before_kg: load of the first set last time, or None.
        because: short plain sentences.
        evidence: ids of findings.
    """

    exercise: str
    change: Change
    sets: tuple[PlannedSet, ...]
    before_kg: float | None
    because: tuple[str, ...]
    evidence: tuple[str, ...]
