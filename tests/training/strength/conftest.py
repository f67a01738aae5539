"""A small simulator of lifters, of another form than the estimator.

Repetitions fall in a straight line with load, noise has heavy tails, a set takes more from the
next one the closer it came to failure, strength grows in steps, and the felt reserve is off by
the lifter's own bias.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import numpy as np
import pytest

from setwright.training.done import DoneSet

LIFTS = ("barbell-bench-press", "back-squat", "leg-press", "lat-pulldown")


@dataclass
class Simulated:
    """One lifter.

    Attributes:
        bias: real less felt repetitions in reserve.
        one_rm: kg, by exercise; grows in place.
        line: repetitions lost from no load to the 1RM.
        calls: real less felt reserve of every set that stopped short, by exercise.
    """

    rng: np.random.Generator
    bias: float
    one_rm: dict[str, float]
    line: float
    calls: dict[str, list[float]] = field(default_factory=dict)

    @classmethod
    def drawn(cls, seed: int) -> Simulated:
        """A lifter at random."""
        rng = np.random.default_rng(seed)
        return cls(
            rng,
            float(rng.normal(0.9, 0.9)),
            {lift: float(rng.uniform(60, 140)) for lift in LIFTS},
            float(rng.uniform(28, 44)),
        )

    def week(self, week: int, failing: float = 0.25) -> list[DoneSet]:
        """Two sessions of three sets of every lift."""
        found = []
        for day in (7 * week, 7 * week + 3):
            today = 1 + 0.012 * self.rng.standard_t(4)
            for place, lift in enumerate(LIFTS):
                found += self._lift(day, place, lift, today, failing)
        for lift in LIFTS:
            self.one_rm[lift] *= 1 + 0.006 * (self.rng.random() < 0.7)
        return found

    def _lift(self, day: int, place: int, lift: str, today: float, failing: float) -> list[DoneSet]:
        load = round(self.one_rm[lift] * self.rng.choice([0.7, 0.75, 0.8]) / 2.5) * 2.5
        found = []
        kept = 1.0
        for number in range(3):
            strength = self.one_rm[lift] * today * (1 + 0.01 * self.rng.standard_t(4))
            most = (1 + self.line * (1 - load / strength)) * kept
            fails = number == 2 and self.rng.random() < failing
            felt = 0.0 if fails else float(self.rng.integers(1, 4))
            call = self.bias + 0.7 * self.rng.standard_t(5)
            left = 0.0 if fails else max(felt + call, 0.0)
            reps = max(int(most - left), 1)
            kept -= 0.15 * 0.75**left
            if not fails:
                self.calls.setdefault(lift, []).append(left - felt)
            at = 600.0 + 15 * place + 4 * number
            made = f"{day}-{place}-{number}"
            found.append(
                DoneSet(made, day, at, lift, number + 1, load, load, reps, felt, fails, 180.0)
            )
        return found

    def real_bias(self, lift: str) -> float:
        """Mean of the last 24 calls: real less felt reserve."""
        return float(np.mean(self.calls[lift][-24:]))


@pytest.fixture
def drawn() -> Callable[[int], Simulated]:
    """Draws a lifter by seed."""
    return Simulated.drawn
