"""What the coaching rules ask of an estimate of strength."""

from __future__ import annotations

from typing import Protocol

from setwright.rehearsal.strength import OneRm


class Predicted(Protocol):
    """Repetitions that a set will have, with an 80 % interval."""

    @property
    def mean(self) -> float:
        """Expected repetitions."""

    @property
    def low(self) -> float:
        """Lower end."""

    @property
    def high(self) -> float:
        """Upper end."""


class Honest(Protocol):
    """Real less felt repetitions in reserve, with an 80 % interval."""

    @property
    def bias(self) -> float:
        """Above 0: stops earlier than felt."""

    @property
    def low(self) -> float:
        """Lower end."""

    @property
    def high(self) -> float:
        """Upper end."""

    @property
    def calls(self) -> int:
        """Calls that say something about it."""


class Estimate(Protocol):
    """Strength of one person, exercise by exercise; ``training.lifter.Lifter`` is one."""

    def one_rm(self, exercise: str, day: int, /) -> OneRm | None:
        """1RM as system load, kg; None when nothing is known."""

    def predict(
        self,
        exercise: str,
        system_kg: float,
        day: int,
        /,
        *,
        rir: float = 0.0,
        kept: float | None = None,
    ) -> Predicted:
        """Repetitions at a system load when stopping at a felt RIR."""

    def load_for(
        self, exercise: str, reps: float, rir: float, day: int, /, *, kept: float | None = None
    ) -> float:
        """System load, kg, at which ``rir`` is felt after ``reps``."""

    def honesty(self, exercise: str, /) -> Honest:
        """How the person's calls of RIR compare with what was really left."""
