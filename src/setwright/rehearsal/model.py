"""What a rehearsal gives back."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class WarmUpSet:
    """A ramp set.

    Attributes:
        load_kg: None when no load is known; then only the fraction counts.
        of_working: fraction of the working load.
    """

    of_working: float
    reps: int
    load_kg: float | None
    start_s: float
    work_s: float
    rest_s: float


@dataclass(frozen=True)
class RehearsedSet:
    """One working set as it will really go.

    Attributes:
        entry: index of the exercise in its session.
        number: set number from 1.
        start_s: seconds from the start of the session.
        work_s: seconds under the load, both sides of a one-sided exercise included.
        rest_s: rest actually had before the next set of the same exercise (0 on the last).
        load_kg: load, or None when no load is known.
        fraction: load as a fraction of 1RM.
        reps: repetitions planned to be done.
        possible: repetitions to failure at this point, median.
        possible_low: lower end of the 80 % interval between people.
        possible_high: upper end.
        fresh: repetitions to failure if the person were fresh.
        rir: planned repetitions in reserve.
        rir_real: possible minus reps: what the effort will really be (negative: it cannot be done).
        rest_needed_s: rest before this set that keeps performance (loses no more than the
            tolerated share of repetitions); 0 on the first set.
    """

    entry: int
    number: int
    start_s: float
    work_s: float
    rest_s: float
    load_kg: float | None
    fraction: float
    reps: int
    possible: float
    possible_low: float
    possible_high: float
    fresh: float
    rir: float
    rir_real: float
    rest_needed_s: float


@dataclass(frozen=True)
class RehearsedSession:
    """A session on the clock. Seconds; low and high span an 80 % interval."""

    index: int
    sets: tuple[RehearsedSet, ...]
    warm_up: tuple[tuple[int, WarmUpSet], ...]
    total_s: float
    low_s: float
    high_s: float
    working_s: float
    resting_s: float
    warm_up_s: float
    changing_s: float


@dataclass(frozen=True)
class Rehearsal:
    """The whole week."""

    sessions: tuple[RehearsedSession, ...]
