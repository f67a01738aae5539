"""What a log book without a model predicts: three plain rules, each in its readings.

Every rule knows what the estimate knows: the log so far, the load and the reserve to stop at.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from setwright.rehearsal.comparators import epley
from setwright.training.done import DoneSet

BASELINES = (
    "equation, last set",
    "equation, same set last session",
    "equation, mean 1RM so far",
    "last result repeated",
    "same set last session repeated",
    "mean of the exercise",
)


@dataclass
class _Known:
    """What one exercise's log holds.

    Attributes:
        last: latest set.
        numbered: latest set by its place among the day's sets, as of earlier days.
        today: the same for the day under way.
        day: of the latest set.
        sets: so far.
        reps: their sum.
        maxima: sum of the 1RM by equation.
    """

    last: DoneSet
    numbered: dict[int, DoneSet] = field(default_factory=dict)
    today: dict[int, DoneSet] = field(default_factory=dict)
    day: int = -1
    sets: int = 0
    reps: float = 0.0
    maxima: float = 0.0


class LogBook:
    """The sets of one lifter, for the baselines."""

    def __init__(self) -> None:
        """Empty."""
        self._known: dict[str, _Known] = {}
        self._told: dict[str, float] = {}

    def add(self, done: DoneSet, told_rir: float) -> None:
        """Take in a set; where no reserve was written down, the one told is taken."""
        known = self._known.setdefault(done.exercise, _Known(done))
        if done.day != known.day:
            known.numbered.update(known.today)
            known.today = {}
            known.day = done.day
        known.last = done
        known.today[done.number] = done
        self._told[done.id] = told_rir
        known.sets += 1
        known.reps += done.reps
        known.maxima += self._one_rm(done)

    def sets_of(self, exercise: str) -> int:
        """Sets of an exercise so far."""
        known = self._known.get(exercise)
        return known.sets if known else 0

    def _one_rm(self, done: DoneSet) -> float:
        told = self._told.get(done.id, 0.0)
        rir = 0.0 if done.to_failure else (told if done.rir is None else done.rir)
        return epley(done.load_kg, done.reps + rir)

    def predict(
        self, exercise: str, number: int, day: int, load_kg: float, rir: float
    ) -> tuple[float, ...] | None:
        """Repetitions by each of ``BASELINES``; None before any set of the exercise."""
        known = self._known.get(exercise)
        if known is None:
            return None
        earlier = known.numbered if known.day == day else {**known.numbered, **known.today}
        same = earlier.get(number, known.last)
        return (
            _reps(self._one_rm(known.last), load_kg, rir),
            _reps(self._one_rm(same), load_kg, rir),
            _reps(known.maxima / known.sets, load_kg, rir),
            known.last.reps,
            same.reps,
            known.reps / known.sets,
        )


def _reps(one_rm_kg: float, load_kg: float, rir: float) -> float:
    return max(30.0 * (one_rm_kg / load_kg - 1.0) - rir, 0.0)
