"""A published figure beside the lab's, and the interval in which they agree."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import sqrt
from typing import TypeVar

import numpy as np

from setwright.lab.traits import Experience, Traits, draw_traits
from setwright.sources.library import finding

T = TypeVar("T")
Z95 = 1.959963984540054


@dataclass(frozen=True)
class Check:
    """One published figure beside the lab's.

    Attributes:
        finding: id; its citation has title, journal, year and DOI.
        what: in words.
        unit: of the figures.
        published: the figure.
        low: lower end of what agrees with it.
        high: upper end.
        interval: where the interval comes from.
        measured: the lab's figure.
    """

    finding: str
    what: str
    unit: str
    published: float
    low: float
    high: float
    interval: str
    measured: float

    @property
    def met(self) -> bool:
        """Whether the lab's figure lies in the interval."""
        return self.low <= self.measured <= self.high

    @property
    def source(self) -> str:
        """Title, journal, year and DOI of the finding, as far as they are known."""
        parts = []
        for one in finding(self.finding).citations[:1]:
            parts = [one.title, one.journal, one.year, one.doi and f"doi {one.doi}"]
        return ", ".join(str(part) for part in parts if part)


def mean_check(
    source: str, what: str, unit: str, mean: float, sd: float, n: int, got: Sequence[float]
) -> Check:
    """A mean with the 95 % interval that its SD and number of people leave."""
    half = Z95 * sd / sqrt(n)
    return Check(
        source, what, unit, mean, mean - half, mean + half,
        f"95 % of the mean of {n} people", float(np.mean(got)),
    )  # fmt: skip


def spread_check(
    source: str, what: str, unit: str, sd: float, n: int, got: Sequence[float]
) -> Check:
    """An SD between people with the 95 % interval that the number of people leaves."""
    # The cube root of a chi-square over its degrees is close to normal.
    one = 2.0 / (9.0 * (n - 1))
    top, low = (1 - one + Z95 * sqrt(one)) ** 1.5, (1 - one - Z95 * sqrt(one)) ** 1.5
    return Check(
        source, what, unit, sd, sd / top, sd / low,
        f"95 % of the SD of {n} people", float(np.std(got, ddof=1)),
    )  # fmt: skip


def range_check(
    source: str, what: str, unit: str, figure: float, ends: tuple[float, float], from_: str,
    got: float,
) -> Check:  # fmt: skip
    """A figure with the interval that was published."""
    return Check(source, what, unit, figure, ends[0], ends[1], from_, got)


class Sample:
    """Lifters for the checks, each with a generator of their own."""

    def __init__(self, people: int, seed: int) -> None:
        """Draw nobody yet; ``people`` are drawn for each protocol."""
        self._people, self._seed = people, seed

    def of(
        self,
        protocol: Callable[[Traits, np.random.Generator], T],
        experience: Experience | None = None,
        sex: str | None = None,
    ) -> list[T]:
        """What each lifter of a kind does in a protocol."""
        seeds = np.random.SeedSequence([self._seed, 2]).spawn(4 * self._people)
        found: list[T] = []
        for one in seeds:
            rng = np.random.default_rng(one)
            traits = draw_traits(rng, experience)
            if sex is None or traits.sex == sex:
                found.append(protocol(traits, rng))
            if len(found) == self._people:
                break
        return found
