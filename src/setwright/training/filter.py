"""The linear-Gaussian core: a state that moves with time and learns from one number at a time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import log, pi

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]


@dataclass
class Gaussian:
    """A normal belief, changed in place.

    Attributes:
        mean: shape (N,).
        cov: shape (N, N), symmetric.
    """

    mean: FloatArray
    cov: FloatArray

    def copy(self) -> Gaussian:
        """An independent copy."""
        return Gaussian(self.mean.copy(), self.cov.copy())

    def of(self, index: Sequence[int], weights: Sequence[float]) -> tuple[float, float]:
        """Mean and variance of a weighted sum of a few states.

        Args:
            index: the states, each at most once.
            weights: their weights, same length.
        """
        chosen = list(index)
        weight = np.asarray(weights, dtype=float)
        block = self.cov[np.ix_(chosen, chosen)]
        return float(self.mean[chosen] @ weight), float(weight @ block @ weight)


def predict(state: Gaussian, transition: FloatArray, noise: FloatArray, drift: FloatArray) -> None:
    """Let time pass: ``mean <- F mean + drift``, ``cov <- F cov F' + noise``.

    Args:
        state: changed in place.
        transition: F, shape (N, N).
        noise: covariance of what is added, shape (N, N).
        drift: known change of the mean, shape (N,).
    """
    state.mean = transition @ state.mean + drift
    cov = transition @ state.cov @ transition.T + noise
    state.cov = (cov + cov.T) / 2


def update(
    state: Gaussian,
    index: Sequence[int],
    weights: Sequence[float],
    residual: float,
    variance: float,
) -> float:
    """Learn from one number: ``observed = weights . mean[index] + noise``.

    Args:
        state: changed in place.
        index: the states that the number is made of, each at most once.
        weights: their weights, same length.
        residual: observed less expected.
        variance: of the noise, 0 or more.

    Returns:
        Log likelihood of the number.
    """
    chosen = list(index)
    weight = np.asarray(weights, dtype=float)
    along = state.cov[:, chosen] @ weight
    spread = float(weight @ along[chosen]) + variance
    shift(state, along, spread, residual, 0.0)
    return -0.5 * (log(2 * pi * spread) + residual**2 / spread)


def shift(state: Gaussian, along: FloatArray, spread: float, by: float, left: float) -> None:
    """Move the belief about one weighted sum, and with it everything that goes with it.

    Args:
        state: changed in place.
        along: covariance of every state with the sum, shape (N,).
        spread: variance of the sum before.
        by: change of its mean.
        left: variance of the sum afterwards, as a share of ``spread``.
    """
    gain = along / spread
    state.mean += gain * by
    state.cov -= np.outer(gain * (1.0 - left), along)
