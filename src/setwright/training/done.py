"""A set as it was done, in the form that the estimate of strength reads."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class DoneSet:
    """One working set of the log.

    Attributes:
        id: of the log record.
        day: proleptic ordinal of the date.
        minute: minutes since midnight.
        exercise: id in the catalogue.
        number: place among the working sets of this exercise on this day, from 1.
        load_kg: as lifted: a hand for dumbbells; added to body weight; negative for assistance.
        system_kg: load the muscles move, above 0.
        reps: full repetitions; a partial one counts half.
        rir: repetitions in reserve as felt; None when not said.
        to_failure: the set ended because no further repetition could be done.
        rest_s: rest before this set; None when not said.
    """

    id: str
    day: int
    minute: float
    exercise: str
    number: int
    load_kg: float
    system_kg: float
    reps: float
    rir: float | None
    to_failure: bool
    rest_s: float | None
