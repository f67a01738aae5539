"""The trials the growth figure is calibrated on, with what the mechanics say of each condition."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

from growth_at_lengths import pooled
from setwright.exercises.comparing import parts_of
from setwright.exercises.comparisons import Comparison, Side, comparisons, volumes

Array = NDArray[np.float64]
# Comparisons that most likely come from a trial that is here already.
TWICE: Final = {"preacher-vs-incline-curl-2023": "lengths study 12"}


@dataclass(frozen=True)
class Condition:
    """One muscle in one condition of a trial.

    Attributes:
        words: movements and muscle.
        parts: parts or muscles.
        condition: ``long``, ``short`` or ``full`` in the site data.
        measured: growth over the trial, percent; 1 on both sides where no difference was found.
        weight: (N,) volume of each part over that of all, once for each exercise.
        share: (N,) share of each part in each exercise.
        beyond: (N,) fibre length ratio where it is loaded, less 1.
    """

    words: str
    parts: tuple[str, ...]
    condition: str
    measured: float
    weight: Array
    share: Array
    beyond: Array

    @property
    def loaded_ratio(self) -> float:
        """Fibre length ratio where it is loaded, mean by work."""
        work = self.weight * self.share
        return 1.0 + float(work @ self.beyond / work.sum())


@dataclass(frozen=True)
class Trial:
    """Conditions whose growth was measured alike.

    Attributes:
        name: finding, or study of the meta-analysis.
        kind: ``imaging``, ``lengths`` or ``no difference``.
        conditions: at least two.
    """

    name: str
    kind: str
    conditions: tuple[Condition, ...]

    @property
    def measured(self) -> Array:
        """Measured growth over the mean of the trial."""
        return _over_mean(np.array([one.measured for one in self.conditions]))

    def predicted(self, figure: Callable[[Array, Array], Array]) -> Array:
        """Computed growth over the mean of the trial; all 1 when nothing is computed to grow.

        Args:
            figure: growth of parts from share and fibre length beyond the best one.
        """
        grown = [one.weight @ figure(one.share, one.beyond) for one in self.conditions]
        return _over_mean(np.array(grown))


def _over_mean(values: Array) -> Array:
    mean = float(values.mean())
    return values / mean if mean > 0 else np.ones_like(values)


def condition(side: Side, measured: float) -> Condition:
    """What the mechanics say of one side.

    Raises:
        KeyError: for a movement or part that is not there.
        ValueError: for a posture no body can hold.
    """
    weights = volumes(side.parts)
    rows = [(0.0, 0.0, 0.0)]
    for name in side.does:
        found = parts_of(name)
        rows += [
            (weight, found[part].share, found[part].loaded_ratio - 1)
            for part, weight in weights.items()
            if part in found
        ]
    weight, share, beyond = np.array(rows).T
    words = f"{' + '.join(side.does)}: {', '.join(side.parts)}"
    weight = weight / sum(weights.values())
    return Condition(words, side.parts, side.condition, measured, weight, share, beyond)


def trials() -> tuple[Trial, ...]:
    """Every trial there is to fit to."""
    return (*imaging(), *lengths(), *no_difference())


def imaging() -> tuple[Trial, ...]:
    """Trials of the comparisons whose measured growth may calibrate."""
    sides: dict[str, dict[str, Condition]] = {}
    for one in comparisons():
        for side in one.sides if one.calibrates else ():
            if side.measured_percent is not None:
                found = condition(side, side.measured_percent)
                sides.setdefault(one.finding, {})[found.words] = found
    return _trials("imaging", ((name, own.values()) for name, own in sides.items()))


def lengths() -> tuple[Trial, ...]:
    """Studies of the meta-analysis of muscle length."""
    studies: dict[str, list[Condition]] = {}
    for one in pooled():
        side = Side(does=one.does, parts=one.parts, condition=one.length)
        studies.setdefault(f"lengths study {one.study}", []).append(condition(side, one.percent))
    return _trials("lengths", studies.items())


def no_difference() -> tuple[Trial, ...]:
    """Trials that found no difference between exercises, and whose growth was not read."""
    wanted = [one for one in comparisons() if _found_none(one)]
    pairs = [(one.finding, [condition(side, 1.0) for side in one.sides]) for one in wanted]
    return _trials("no difference", pairs)


def _found_none(one: Comparison) -> bool:
    grown = one.kind == "longitudinal" and one.quantity == "growth" and not one.left.over
    return grown and one.relation == "=" and not one.measured and one.finding not in TWICE


def _trials(kind: str, found: Iterable[tuple[str, Iterable[Condition]]]) -> tuple[Trial, ...]:
    whole = [Trial(name, kind, tuple(conditions)) for name, conditions in found]
    return tuple(trial for trial in whole if len(trial.conditions) > 1)
