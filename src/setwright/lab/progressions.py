"""Two fixed progressions for the closed loop.

They are given more than the policy: they see every set as it was, the policy sees the log with
its slips.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from setwright.lab.attempt import Outcome
from setwright.lab.coaches import Written, steps
from setwright.lab.movements import BAND, MOVEMENTS, SETS
from setwright.training.done import DoneSet

FAILED_TWICE = 2
STEP_DOWN = 0.9


@dataclass
class RepsThenLoad:
    """One repetition more a visit up to the top of the band, then one step of load.

    A visit with a set that could not be done is repeated; after two in a row the load falls by a
    tenth (common practice).
    """

    loads: dict[str, float] = field(default_factory=dict)
    reps: dict[str, int] = field(default_factory=dict)
    failed: dict[str, int] = field(default_factory=dict)

    def write(self, names: Sequence[str], day: int) -> dict[str, list[Written]]:
        """See ``Coach``."""
        found = {}
        for name in names:
            reps = self.reps.setdefault(name, BAND[MOVEMENTS[name].group][0])
            found[name] = [Written(self.loads.get(name), reps, reps, None)] * SETS
        return found

    def hear(self, exercise: str, sets: Sequence[tuple[Written, float, Outcome]]) -> None:
        """See ``Coach``."""
        low, top = BAND[MOVEMENTS[exercise].group]
        load = sets[0][1]
        self.loads[exercise] = load
        if any(outcome.effort.reps < written.reps for written, _, outcome in sets):
            self.failed[exercise] = self.failed.get(exercise, 0) + 1
            if self.failed[exercise] >= FAILED_TWICE:
                self.failed[exercise] = 0
                self.reps[exercise] = low
                lower = steps(exercise).at_most(load * STEP_DOWN)
                self.loads[exercise] = load if lower is None else lower
            return
        self.failed[exercise] = 0
        if self.reps[exercise] < top:
            self.reps[exercise] += 1
            return
        above = steps(exercise).above(load)
        if above is not None:
            self.loads[exercise] = above
            self.reps[exercise] = low

    def log(self, lines: Sequence[DoneSet]) -> None:
        """It hears of the sets as they were."""


@dataclass
class WeeklyPercentage:
    """The first load, so many percent heavier every week; repetitions at the middle of the band.

    Attributes:
        percent: of the first load, a week.
    """

    percent: float
    first: dict[str, tuple[float, int]] = field(default_factory=dict)
    day: int = 0

    def write(self, names: Sequence[str], day: int) -> dict[str, list[Written]]:
        """See ``Coach``."""
        self.day = day
        found = {}
        for name in names:
            low, top = BAND[MOVEMENTS[name].group]
            reps = (low + top) // 2
            load = None
            if name in self.first:
                start, since = self.first[name]
                target = start * (1.0 + self.percent / 100.0 * ((day - since) // 7))
                load = steps(name).at_most(target)
            found[name] = [Written(load, reps, reps, None)] * SETS
        return found

    def hear(self, exercise: str, sets: Sequence[tuple[Written, float, Outcome]]) -> None:
        """See ``Coach``."""
        self.first.setdefault(exercise, (sets[0][1], self.day))

    def log(self, lines: Sequence[DoneSet]) -> None:
        """It reads nothing."""
