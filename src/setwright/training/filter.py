"""The linear-Gaussian core: a state that moves with time and learns from one number at a time."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import log, pi

import numpy as np
from numpy.typing import NDArray

FloatArray = NDArray[np.float64]
FADED = 1e-60


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
        chosen = np.array(index)
        weight = np.array(weights)
        block = self.cov[chosen[:, None], chosen]
        return float(self.mean[chosen] @ weight), float(weight @ block @ weight)


@dataclass(frozen=True)
class Flow:
    """A share of some states that passes into others in a step of time.

    Attributes:
        to: states that gain, each at most once.
        out_of: the state that flows into each, same length; a state may feed several.
        share: of it.
    """

    to: NDArray[np.intp]
    out_of: NDArray[np.intp]
    share: float


def predict(
    state: Gaussian,
    stays: FloatArray,
    flows: Sequence[Flow],
    noise: FloatArray,
    drift: FloatArray,
) -> None:
    """Let time pass: ``mean <- F mean + drift``, ``cov <- F cov F' + diag(noise)``.

    F is ``diag(stays)`` and the flows; most states only stay, so F is never written out.

    Args:
        state: changed in place.
        stays: share of each state that stays itself, shape (N,).
        flows: what passes from one state to another.
        noise: variance added to each state, shape (N,).
        drift: known change of the mean, shape (N,).
    """
    mean = stays * state.mean + drift
    half = stays[:, None] * state.cov
    for flow in flows:
        mean[flow.to] += flow.share * state.mean[flow.out_of]
        half[flow.to] += flow.share * state.cov[flow.out_of]
    cov = half * stays
    for flow in flows:
        cov[:, flow.to] += flow.share * half[:, flow.out_of]
    cov[np.diag_indices_from(cov)] += noise
    # What has faded to nothing would be carried on as denormal numbers, a hundred times slower.
    cov[np.abs(cov) < FADED] = 0.0
    state.mean, state.cov = mean, cov


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
    chosen = np.array(index)
    weight = np.array(weights)
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
    state.cov -= (gain * (1.0 - left))[:, None] * along
