"""The linear-Gaussian core against an independent implementation."""

import numpy as np
import pytest

from setwright.training.filter import Flow, Gaussian, predict, update

statespace = pytest.importorskip("statsmodels.tsa.statespace.kalman_filter")

# Shared gain, two levels, each with a gain of its own, and a strength of the day for both.
GAIN, LEVEL, OWN, DAY = 0, np.array([1, 2]), np.array([3, 4]), 5
SIZE, STEPS = 6, 80


def motion(gap):
    stays = np.array([0.97, 1.0, 1.0, 0.8, 0.8, 0.0])
    flows = (Flow(LEVEL, OWN, gap), Flow(LEVEL, np.full(2, GAIN), gap))
    noise = np.array([1e-5, 4e-4 * gap, 4e-4 * gap, 0.0, 0.0, 1e-4])
    drift = np.array([1e-4, 0.0, 0.0, 0.0, 0.0, 0.0])
    return stays, flows, noise, drift


def written_out(stays, flows):
    matrix = np.diag(stays)
    for flow in flows:
        matrix[flow.to, flow.out_of] += flow.share
    return matrix


def test_the_filter_is_that_of_statsmodels():
    rng = np.random.default_rng(3)
    gaps = rng.uniform(0.1, 2.0, STEPS)
    designs = np.zeros((STEPS, SIZE))
    for step in range(STEPS):
        level = 1 + step % 2
        designs[step, [level, DAY]] = 1.0
        designs[step, level + 2] = gaps[step] * (step % 3 == 0)
    variances = rng.uniform(1e-4, 9e-4, STEPS)
    seen = rng.normal(4.5, 0.2, STEPS)
    mean = np.array([0.004, 4.4, 4.6, 0.01, 0.01, 0.0])
    cov = np.diag([1e-5, 0.09, 0.09, 1e-4, 1e-4, 1e-4])

    ours = Gaussian(mean.copy(), cov.copy())
    likely, means, covs = 0.0, [], []
    for step in range(STEPS):
        index = np.flatnonzero(designs[step])
        weights = designs[step, index]
        expected, _ = ours.of(index.tolist(), weights.tolist())
        residual = seen[step] - expected
        likely += update(ours, index.tolist(), weights.tolist(), residual, variances[step])
        means.append(ours.mean.copy())
        covs.append(ours.cov.copy())
        predict(ours, *motion(gaps[step]))

    theirs = statespace.KalmanFilter(k_endog=1, k_states=SIZE, k_posdef=SIZE)
    theirs.bind(seen.reshape(-1, 1))
    moves = [motion(gap) for gap in gaps]
    theirs["design"] = designs.T[None]
    theirs["obs_cov"] = variances[None, None]
    theirs["transition"] = np.stack([written_out(*m[:2]) for m in moves], axis=-1)
    theirs["state_cov"] = np.stack([np.diag(m[2]) for m in moves], axis=-1)
    theirs["state_intercept"] = np.stack([m[3] for m in moves], axis=-1)
    theirs["selection"] = np.eye(SIZE)
    theirs.initialize_known(mean, cov)
    result = theirs.filter()

    assert np.allclose(np.array(means), result.filtered_state.T, rtol=0, atol=1e-6)
    assert np.allclose(np.array(covs), np.moveaxis(result.filtered_state_cov, -1, 0), atol=1e-6)
    assert likely == pytest.approx(result.llf, abs=1e-6)
    assert abs(means[-1][1] - mean[1]) > 1e-3


def test_a_sum_of_states_has_its_mean_and_variance():
    rng = np.random.default_rng(5)
    root = rng.normal(size=(4, 4))
    state = Gaussian(rng.normal(size=4), root @ root.T)
    weights = np.array([0.0, 2.0, 0.0, -1.0])
    mean, variance = state.of([1, 3], [2.0, -1.0])
    assert mean == pytest.approx(weights @ state.mean)
    assert variance == pytest.approx(weights @ state.cov @ weights)


def test_a_number_without_noise_is_known_afterwards():
    state = Gaussian(np.zeros(2), np.array([[1.0, 0.5], [0.5, 2.0]]))
    update(state, [0], [1.0], 3.0, 0.0)
    assert state.mean == pytest.approx([3.0, 1.5])
    assert state.cov[0, 0] == pytest.approx(0.0)
    assert state.cov[1, 1] == pytest.approx(1.75)
