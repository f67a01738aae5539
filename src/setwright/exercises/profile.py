"""The profile of an exercise: what it trains, at what length, at what cost."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Share:
    """How much of a working set counts for one part.

    Attributes:
        part: part id.
        value: 0 to 1, what a plan counts. Below 0.1 it is 0: it cannot be told from nothing.
        low: lower end of the 90 % interval.
        high: upper end of the 90 % interval.
        stretch: 0 to 1, how long the part is under load.
        basis: ``mechanics`` or the id of the finding it comes from.
        computed: the share by mechanics before a plan counts it, also where a finding is used.
        loaded_ratio: fibre length over optimal length under load, or None without a computed one.
    """

    part: str
    value: float
    low: float
    high: float
    stretch: float
    basis: str
    computed: float
    loaded_ratio: float | None


@dataclass(frozen=True)
class Profile:
    """What one exercise trains.

    Attributes:
        exercise: exercise id.
        shares: parts with a share above zero, largest first.
        limiting: parts that end the set.
        spinal_load: 0 to 1.
        loaded_stretch: 0 to 1, the share-weighted mean over the limiting parts.
        hardest: where in the range the least load can be held, 0 stretched to 1 shortened.
    """

    exercise: str
    shares: tuple[Share, ...]
    limiting: tuple[str, ...]
    spinal_load: float
    loaded_stretch: float
    hardest: float

    def share(self, part: str) -> float:
        """Share of ``part``, 0 when the exercise does not train it."""
        return next((s.value for s in self.shares if s.part == part), 0.0)
