"""The profile of an exercise: what it trains, at what length, at what cost."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Share:
    """How much of a working set counts for one part.

    Attributes:
        part: part id.
        value: 0 to 1. Below 0.1 is reported as 0: the rule cannot tell it from nothing.
        low: lower end of the 90 % interval.
        high: upper end of the 90 % interval.
        stretch: 0 to 1, how much load falls on the part where it is long.
        basis: ``anatomical rule`` or the id of the finding it comes from.
    """

    part: str
    value: float
    low: float
    high: float
    stretch: float
    basis: str


@dataclass(frozen=True)
class Profile:
    """What one exercise trains.

    Attributes:
        exercise: exercise id.
        shares: parts with a share above zero, largest first.
        limiting: parts that end the set (share within 0.1 of the largest, on the joint of
            largest demand).
        spinal_load: 0 to 1.
        loaded_stretch: 0 to 1, the share-weighted mean over the limiting parts.
    """

    exercise: str
    shares: tuple[Share, ...]
    limiting: tuple[str, ...]
    spinal_load: float
    loaded_stretch: float

    def share(self, part: str) -> float:
        """Share of ``part``, 0 when the exercise does not train it."""
        return next((s.value for s in self.shares if s.part == part), 0.0)
