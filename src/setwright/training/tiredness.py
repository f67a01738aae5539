"""How tired the sets of a day leave every exercise of the catalogue, as they come in the log."""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.typing import NDArray

from setwright.exercises import catalogue
from setwright.rehearsal.fatigue import Fatigue, Sex, overlap
from setwright.training.done import DoneSet

# Rest that is taken for granted when the log does not say (common practice).
USUAL_REST_S = 150.0
SHORTEST_REST_S = 15.0


@cache
def _reach() -> NDArray[np.float64]:
    return overlap(catalogue.shares())


@cache
def _whole_body() -> NDArray[np.float64]:
    return np.array([one.whole_body for one in catalogue.exercises()])


class Tiredness:
    """The fatigue of one day."""

    def __init__(self, sex: Sex) -> None:
        self._sex: Sex = sex
        self._fatigue = Fatigue(_reach(), _whole_body(), sex)
        self._last: DoneSet | None = None

    def copy(self) -> Tiredness:
        """An independent copy."""
        other = Tiredness.__new__(Tiredness)
        other._sex, other._last = self._sex, self._last
        other._fatigue = self._fatigue.copy()
        return other

    def kept_at(self, exercise: str, day: int, rest_s: float | None = None) -> float:
        """Share of the fresh repetitions after a rest.

        Args:
            exercise: id.
            day: another day than that of the sets done finds everything fresh.
            rest_s: rest from the last set done; None for a usual one.
        """
        last = self._last
        if last is None or day != last.day:
            return 1.0
        state = self._fatigue.copy()
        rest = rest_s
        if rest is None:
            rest = last.rest_s if last.rest_s and last.exercise == exercise else USUAL_REST_S
        state.rest(rest)
        return state.kept(catalogue.row(exercise))

    def before(self, done: DoneSet) -> float:
        """Rest until a set of the log and say what was kept at its start."""
        last = self._last
        if last is None or done.day != last.day:
            self._fatigue = Fatigue(_reach(), _whole_body(), self._sex)
            return 1.0
        self._fatigue.rest(_rested(last, done))
        return self._fatigue.kept(catalogue.row(done.exercise))

    def after(self, done: DoneSet, really_left: float) -> None:
        """Take in a set that was done."""
        self._fatigue.work(catalogue.row(done.exercise), max(done.reps, 0.0), really_left)
        self._last = done


def _rested(last: DoneSet, done: DoneSet) -> float:
    """Seconds from the end of one set to the start of the next, from what the log says."""
    if done.rest_s is not None and done.exercise == last.exercise:
        return done.rest_s
    lasted = done.reps * catalogue.exercise(done.exercise).rep_s
    between = (done.minute - last.minute) * 60.0 - lasted
    if between >= SHORTEST_REST_S:
        return between
    return done.rest_s if done.rest_s is not None else USUAL_REST_S
