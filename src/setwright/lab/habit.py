"""What the lifters of the open loop do on their own: loads from the last time, effort by turns."""

from __future__ import annotations

from dataclasses import dataclass, field

import numpy as np

from setwright.lab.body import Body
from setwright.lab.curve import fraction_for
from setwright.lab.movements import BAND, MOVEMENTS

RESTS_S = {"legs": 180.0, "press": 150.0, "pull": 120.0, "single": 90.0}


def on_the_rack(load_kg: float, step_kg: float) -> float:
    """The nearest load the kit can make, at least one step."""
    return max(round(load_kg / step_kg) * step_kg, step_kg)


def first_load(body: Body, exercise: str, reps: float, rir: float, error: float) -> float:
    """A first load by feel: right but for a log error."""
    own = body.traits.own[exercise]
    fraction = fraction_for(reps + rir, own.floor, own.pace)
    load = fraction * body.fresh_one_rm(exercise) * float(np.exp(error))
    return on_the_rack(load, MOVEMENTS[exercise].step_kg)


@dataclass
class Habit:
    """A lifter's own way: one band, or heavy and light days by turns.

    Attributes:
        turns: heavy and light by turns.
        whim: chance of trying another load.
        loads: latest load by exercise and kind of day.
    """

    turns: bool
    whim: float
    loads: dict[tuple[str, bool], float] = field(default_factory=dict)
    visits: dict[str, int] = field(default_factory=dict)

    def begin(self, body: Body, exercise: str, error: float, luck: float) -> tuple[float, bool]:
        """Load of today, and whether the day is a light one."""
        visit = self.visits.get(exercise, 0)
        self.visits[exercise] = visit + 1
        light = self.turns and visit % 2 == 1
        low, high = self.band(exercise, light)
        key = (exercise, light)
        if key not in self.loads:
            self.loads[key] = first_load(body, exercise, (low + high) / 2, 1.5, error)
        load = self.loads[key]
        if luck < self.whim:
            step = MOVEMENTS[exercise].step_kg * (1 if luck < self.whim / 2 else -1)
            load = max(load + step, MOVEMENTS[exercise].step_kg)
        return load, light

    def band(self, exercise: str, light: bool) -> tuple[int, int]:
        """Repetitions wanted."""
        low, high = BAND[MOVEMENTS[exercise].group]
        return (low + 5, high + 5) if light else (low, high)

    def end(self, exercise: str, light: bool, load: float, first_reps: int) -> None:
        """Choose the load of the next time by the first set."""
        low, high = self.band(exercise, light)
        step = MOVEMENTS[exercise].step_kg
        if first_reps >= high:
            self.loads[exercise, light] = load + step
        elif first_reps < low:
            self.loads[exercise, light] = max(load - step, step)

    def effort(self, week: int, number: int, luck: float) -> float:
        """Reserve to stop at, for a set's place in the exercise from 0."""
        if number == 2:
            return 0.0 if week % 2 else 1.0
        return 3.0 if luck < 0.25 else (1.0 if luck > 0.75 else 2.0)
