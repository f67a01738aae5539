"""What the response to a week holds."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray


@dataclass(frozen=True)
class Dose:
    """The working sets of one exercise in one session.

    Attributes:
        session: index of the session.
        exercise: exercise id.
        sets: working sets.
        reps: mean repetitions a set.
        rir: mean real repetitions in reserve over the sets.
        rest_s: mean rest between sets.
        whole_partials: every repetition is a lengthened partial.
        kept: mean repetitions possible over those of the fresh muscle, 0 to 1.
    """

    session: int
    exercise: str
    sets: float
    reps: float
    rir: float
    rest_s: float
    whole_partials: bool = False
    kept: float = 1.0


@dataclass(frozen=True)
class WeekResponse:
    """Response of every part; P parts in the order of the atlas, S sessions.

    Attributes:
        parts: part ids, length P.
        session_sets: fractional sets, shape (S, P): share times sets, nothing else.
        weekly_sets: fractional sets a week, shape (P,).
        effective_sets: sets after effort, repetitions, rest, stretch and crowding within a
            session, shape (P,).
        growth: expected growth, percent of size a week, median, shape (P,).
        growth_low: lower end of the 80 % interval, shape (P,).
        growth_high: upper end, shape (P,).
    """

    parts: tuple[str, ...]
    session_sets: NDArray[np.float64]
    weekly_sets: NDArray[np.float64]
    effective_sets: NDArray[np.float64]
    growth: NDArray[np.float64]
    growth_low: NDArray[np.float64]
    growth_high: NDArray[np.float64]
