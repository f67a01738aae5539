"""Constants of the growth figure fitted to trials, and each trial predicted without itself."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import Final

import numpy as np
from numpy.typing import NDArray

from growth_trials import Array, Trial
from profiles_against_trials import spearman

# Differences of relative growth turn from squared to absolute here, so that no trial rules.
SOFT: Final = 0.3
WEIGHTS: Final = np.round(np.arange(0.0, 3.005, 0.01), 2)
POWERS: Final = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.25, 1.5)
LONG_SLOPES: Final = np.round(np.arange(0.0, 8.01, 0.25), 2)
SHORT_SLOPES: Final = np.round(np.arange(0.0, 2.01, 0.1), 1)
RESAMPLED: Final = 2000
SEED: Final = 1


@dataclass(frozen=True)
class Constants:
    """Constants of the growth figure.

    Attributes:
        weight: change of growth per optimal fibre length.
        power: power of the share.
        short: weight below the best length when it is another one.
    """

    weight: float
    power: float = 1.0
    short: float | None = None

    def figure(self, share: Array, beyond: Array) -> Array:
        """Growth figure of parts."""
        slope = self.weight if self.short is None else np.where(beyond < 0, self.short, self.weight)
        grown: Array = np.maximum(share**self.power * (1.0 + slope * beyond), 0.0)
        return grown


def loss(trial: Trial, constants: Constants) -> float:
    """Mean over the conditions of a soft square of predicted less measured relative growth."""
    off = (trial.predicted(constants.figure) - trial.measured) / SOFT
    return float((2 * SOFT**2 * (np.sqrt(1 + off**2) - 1)).mean())


@dataclass(frozen=True)
class Fitting:
    """A family of growth figures and the trials it is fitted to.

    Attributes:
        family: the constants to choose from.
        trials: all of them; those of one name and kind count as one together.
    """

    family: Sequence[Constants]
    trials: Sequence[Trial]

    @cached_property
    def names(self) -> tuple[str, ...]:
        """Name of every row of ``losses``."""
        return tuple(name for name, _ in self._groups)

    @cached_property
    def _groups(self) -> Mapping[tuple[str, str], list[Trial]]:
        groups: dict[tuple[str, str], list[Trial]] = {}
        for trial in self.trials:
            groups.setdefault((trial.name, trial.kind), []).append(trial)
        return groups

    @cached_property
    def losses(self) -> Array:
        """(N, C) loss of every trial with every member of the family."""
        return np.array(
            [
                [np.mean([loss(trial, one) for trial in own]) for one in self.family]
                for own in self._groups.values()
            ]
        )

    def best(self, rows: Sequence[int] | NDArray[np.int64] | None = None) -> Constants:
        """The constants that fit the chosen rows best, all by default."""
        chosen = self.losses if rows is None else self.losses[np.asarray(rows)]
        return self.family[int(chosen.sum(axis=0).argmin())]

    def without(self, name: str) -> Constants:
        """The constants fitted without a trial."""
        return self.best([row for row, other in enumerate(self.names) if other != name])

    def spread(self) -> Array:
        """Fitted weights over resampled trials."""
        draw = np.random.default_rng(SEED)
        count = len(self.names)
        return np.array(
            [self.best(draw.integers(0, count, count)).weight for _ in range(RESAMPLED)]
        )


@dataclass(frozen=True)
class LeftOut:
    """A trial predicted by the constants fitted without it.

    Attributes:
        trial: the trial.
        constants: fitted on the others.
        predicted: relative growth of its conditions.
    """

    trial: Trial
    constants: Constants
    predicted: Array

    @property
    def error(self) -> float:
        """Mean absolute error of the relative growth."""
        return float(np.abs(self.predicted - self.trial.measured).mean())


def leave_one_out(fitting: Fitting) -> tuple[LeftOut, ...]:
    """Every trial with measured growth, predicted without it."""
    found = []
    for trial in fitting.trials:
        if trial.kind != "no difference":
            constants = fitting.without(trial.name)
            found.append(LeftOut(trial, constants, trial.predicted(constants.figure)))
    return tuple(found)


def rank(of: Sequence[LeftOut]) -> float:
    """Spearman of predicted with measured relative growth over all conditions."""
    measured = np.concatenate([one.trial.measured for one in of])
    predicted = np.concatenate([one.predicted for one in of])
    return spearman(list(measured), list(predicted))


def rank_same_muscle(of: Sequence[LeftOut]) -> float:
    """The same over the mean of each muscle in its trial: which condition grows it more.

    A muscle that was measured in one condition only, or grew or works in none, is left out.
    """
    measured, predicted = [], []
    for one in of:
        rows: dict[tuple[str, ...], list[int]] = {}
        for row, condition in enumerate(one.trial.conditions):
            rows.setdefault(condition.parts, []).append(row)
        for own in rows.values():
            grew, computed = one.trial.measured[own], one.predicted[own]
            if len(own) > 1 and grew.mean() > 0 and computed.mean() > 0:
                measured += list(grew / grew.mean())
                predicted += list(computed / computed.mean())
    return spearman(measured, predicted)


def straight() -> tuple[Constants, ...]:
    """One weight, nothing else."""
    return tuple(Constants(float(weight)) for weight in WEIGHTS)


def with_power() -> tuple[Constants, ...]:
    """A weight and a power of the share."""
    return tuple(Constants(float(w), power) for power in POWERS for w in WEIGHTS[::5])


def with_short_slope() -> tuple[Constants, ...]:
    """A weight beyond the best length and another below it."""
    return tuple(Constants(float(w), 1.0, float(s)) for s in SHORT_SLOPES for w in LONG_SLOPES)
