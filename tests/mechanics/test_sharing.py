"""Load sharing and the largest load: against general optimisers, and what must always hold."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog, lsq_linear, minimize

from setwright.mechanics.sharing import share
from setwright.mechanics.strongest import strongest

SEEDS = st.integers(0, 10**6)
EXPONENTS = st.sampled_from([1.5, 2.0, 2.5, 3.0, 4.0])
SOME = settings(max_examples=40, derandomize=True, deadline=None)


def limb(seed: int, problems: int = 3):
    """Random capacities, body and load moments and reserves, of any shape a movement can have."""
    rng = np.random.default_rng(seed)
    equations, elements = int(rng.integers(1, 10)), int(rng.integers(1, 51))
    crosses = rng.random((1, equations, elements)) < rng.uniform(0.2, 0.9)
    capacity = rng.normal(0, 1, (problems, equations, elements)) * crosses
    capacity *= rng.lognormal(3, 1, (problems, 1, elements))
    if rng.random() < 0.3:
        capacity[:, :, rng.integers(0, elements)] = 0.0
    if rng.random() < 0.2:
        capacity[:, rng.integers(0, equations)] = 0.0
    if equations > 1 and rng.random() < 0.2:
        capacity[:, 0] = 2 * capacity[:, 1]
    reserve = rng.choice([0.0, 0.0, 20.0, 50.0], equations)
    held = rng.uniform(0, 0.5, (problems, elements))
    wanted = rng.uniform(0, 1, (problems, elements))
    body = np.einsum("bkm,bm->bk", capacity, held)
    load = np.einsum("bkm,bm->bk", capacity, wanted) / 10
    return capacity, body, load, reserve


def at_fraction(seed: int, fraction: float):
    """A limb and the moment at a fraction of its largest load."""
    capacity, body, load, reserve = limb(seed)
    largest = strongest(capacity, body, load, reserve).load
    return (
        capacity,
        body + fraction * np.where(np.isfinite(largest), largest, 0)[:, None] * load,
        reserve,
    )


def scaled(capacity, reserve, moment):
    together = np.concatenate([capacity, np.diag(reserve)], axis=1)
    size = np.linalg.norm(together, axis=1)
    size[size == 0] = 1.0
    return together / size[:, None], moment / size


# Against general optimisers ---------------------------------------------------------------------


@pytest.mark.parametrize("seed", range(25))
def test_largest_load_is_that_of_a_linear_solver(seed):
    capacity, body, load, reserve = limb(seed)
    ours = strongest(capacity, body, load, reserve)
    assert ours.feasible.all()
    for one in range(len(body)):
        if not load[one].any():
            assert np.isinf(ours.load[one])
            continue
        equations, elements = capacity[one].shape
        table = np.concatenate([capacity[one], np.diag(reserve), -load[one][:, None]], axis=1)
        found = linprog(
            np.eye(table.shape[1])[-1] * -1,
            A_eq=table,
            b_eq=body[one],
            bounds=[(0, 1)] * elements + [(-1, 1)] * equations + [(0, None)],
            method="highs",
        )
        assert found.status == 0
        assert ours.load[one] == pytest.approx(found.x[-1], rel=1e-6, abs=1e-6)


@pytest.mark.parametrize(
    ("seed", "exponent", "fraction"),
    [
        *[(1, 3.0, 0.3), (2, 3.0, 0.9), (3, 3.0, 0.97), (9, 3.0, 0.1), (12, 3.0, 0.99)],
        *[(4, 2.0, 0.6), (5, 2.0, 0.95), (11, 2.0, 1.0), (10, 3.0, 1.0)],
        *[(6, 2.5, 0.8), (7, 1.5, 0.5), (8, 4.0, 0.7), (13, 3.6, 0.9)],
    ],
)
def test_activations_are_those_of_a_general_optimiser(seed, exponent, fraction):
    capacity, moment, reserve = at_fraction(seed, fraction)
    weights = np.random.default_rng(seed).uniform(0.5, 2.0, capacity.shape[2])
    ours = share(capacity, moment, reserve, exponent, weights)
    assert ours.feasible.all()
    elements = capacity.shape[2]
    live = (capacity != 0).any(axis=1)
    for one in range(len(moment)):
        table, wanted = scaled(capacity[one], reserve, moment[one])

        def cost(x):
            muscles = (weights * np.maximum(x[:elements], 0) ** exponent).sum()
            return muscles + 0.3 * (x[elements:] ** 2).sum()

        def gradient(x):
            muscles = exponent * weights * np.maximum(x[:elements], 0) ** (exponent - 1)
            return np.concatenate([muscles, 0.6 * x[elements:]])

        # Rows that say the same twice would make the optimiser's own linear algebra fail.
        kept, triangle = [], np.empty((0, table.shape[1]))
        for row in range(len(table)):
            if np.linalg.matrix_rank(np.vstack([triangle, table[row]]), tol=1e-9) > len(kept):
                kept.append(row)
                triangle = table[kept]
        found = minimize(
            cost,
            np.concatenate([np.full(elements, 0.5), np.zeros(len(reserve))]),
            jac=gradient,
            method="SLSQP",
            bounds=[(0, 1)] * elements + [(-1, 1)] * len(reserve),
            constraints={
                "type": "eq",
                "fun": lambda x, t=triangle, w=wanted[kept]: t @ x - w,
                "jac": lambda x, t=triangle: t,
            },
            options={"ftol": 1e-13, "maxiter": 2000},
        )
        assert np.abs(triangle @ found.x - wanted[kept]).max() < 1e-6
        mine = np.concatenate([ours.activations[one], np.zeros(len(reserve))])
        used = np.divide(ours.reserve[one], reserve, out=np.zeros(len(reserve)), where=reserve > 0)
        mine[elements:] = used
        assert cost(mine) <= cost(found.x) * (1 + 1e-6) + 1e-9
        gap = np.abs(ours.activations[one] - found.x[:elements])[live[one]]
        assert gap.max(initial=0) < 0.005


@pytest.mark.parametrize("seed", range(10))
def test_beyond_the_limit_the_answer_is_the_closest_there_is(seed):
    capacity, body, load, reserve = limb(seed)
    largest = strongest(capacity, body, load, reserve).load
    moment = body + 3 * (1 + np.where(np.isfinite(largest), largest, 0))[:, None] * load
    ours = share(capacity, moment, reserve)
    for one in np.flatnonzero(np.isfinite(largest)):
        table = np.concatenate([capacity[one], np.diag(reserve)], axis=1)
        low = np.concatenate([np.zeros(capacity.shape[2]), -np.ones(len(reserve))])
        size = np.linalg.norm(table)
        found = lsq_linear(table / size, moment[one] / size, (low, 1.0), "bvls", tol=1e-12)
        closest = np.sqrt(2 * found.cost) * size
        assert not ours.feasible[one]
        assert ours.residual[one] == pytest.approx(closest, rel=1e-4)


# What must always hold --------------------------------------------------------------------------


@given(SEEDS, EXPONENTS, st.floats(0, 1))
@SOME
def test_equilibrium_and_bounds_up_to_the_limit(seed, exponent, fraction):
    capacity, moment, reserve = at_fraction(seed, fraction)
    ours = share(capacity, moment, reserve, exponent)
    missing = np.einsum("bkm,bm->bk", capacity, ours.activations) + ours.reserve - moment
    size = np.linalg.norm(moment, axis=1)
    assert (np.linalg.norm(missing, axis=1) <= 1e-6 * size).all()
    assert ours.feasible.all()
    assert (ours.activations >= 0).all() and (ours.activations <= 1).all()
    assert (np.abs(ours.reserve) <= reserve).all()


@given(SEEDS, st.floats(0.2, 0.95), st.floats(1e-3, 1e3))
@SOME
def test_scaling_moments_and_capacities_together_changes_nothing(seed, fraction, factor):
    capacity, moment, reserve = at_fraction(seed, fraction)
    one = share(capacity, moment, reserve)
    other = share(capacity * factor, moment * factor, reserve * factor)
    np.testing.assert_allclose(other.activations, one.activations, atol=1e-6)
    np.testing.assert_allclose(other.reserve, one.reserve * factor, atol=1e-5 * factor)


@given(SEEDS, st.floats(0.2, 0.95), st.randoms(use_true_random=False))
@SOME
def test_the_order_of_elements_and_equations_is_no_matter(seed, fraction, random):
    capacity, moment, reserve = at_fraction(seed, fraction)
    elements = random.sample(range(capacity.shape[2]), capacity.shape[2])
    rows = random.sample(range(capacity.shape[1]), capacity.shape[1])
    one = share(capacity, moment, reserve)
    other = share(capacity[:, rows][:, :, elements], moment[:, rows], reserve[rows])
    np.testing.assert_allclose(other.activations, one.activations[:, elements], atol=1e-6)


@given(SEEDS, EXPONENTS, st.floats(0.2, 0.95))
@SOME
def test_a_mirrored_problem_has_the_mirrored_answer(seed, exponent, fraction):
    capacity, moment, reserve = at_fraction(seed, fraction)
    one = share(capacity, moment, reserve, exponent)
    other = share(-capacity, -moment, reserve, exponent)
    np.testing.assert_allclose(other.activations, one.activations, atol=1e-6)
    np.testing.assert_allclose(other.reserve, -one.reserve, atol=1e-5)


@given(SEEDS, EXPONENTS, st.floats(0.2, 0.95))
@SOME
def test_equal_elements_share_equally(seed, exponent, fraction):
    capacity, moment, reserve = at_fraction(seed, fraction)
    twice = np.concatenate([capacity / 2, capacity / 2], axis=2)
    ours = share(twice, moment, reserve, exponent)
    first, second = np.split(ours.activations, 2, axis=1)
    np.testing.assert_allclose(first, second, atol=1e-6)


@given(SEEDS, st.integers(0, 49), st.floats(1.0, 2.0))
@SOME
def test_a_stronger_element_never_lowers_the_largest_load(seed, element, factor):
    capacity, body, load, reserve = limb(seed)
    before = strongest(capacity, body, load, reserve)
    # More of the same element beside the old one: whatever was possible stays so.
    more = capacity[:, :, [element % capacity.shape[2]]] * (factor - 1)
    after = strongest(np.concatenate([capacity, more], axis=2), body, load, reserve)
    assert (after.load >= before.load * (1 - 1e-6) - 1e-6).all()
    roomier = strongest(capacity, body, load, reserve + 10)
    assert (roomier.load >= before.load * (1 - 1e-6) - 1e-6).all()


@given(SEEDS, EXPONENTS)
@SOME
def test_a_batch_answers_as_its_problems_do_alone(seed, exponent):
    capacity, moment, reserve = at_fraction(seed, 0.8)
    together = share(capacity, moment, reserve, exponent)
    for one in range(len(moment)):
        alone = share(capacity[[one]], moment[[one]], reserve, exponent)
        np.testing.assert_allclose(alone.activations[0], together.activations[one], atol=1e-8)


# By hand ----------------------------------------------------------------------------------------


def test_one_equation_by_hand():
    # Two elements of 10 and 20 N·m, 15 wanted: 3 a^2 is in the ratio of the capacities.
    ours = share([[[10.0, 20.0]]], [15.0])
    first = 15 / (10 + 20 * np.sqrt(2))
    np.testing.assert_allclose(ours.activations[0], [first, first * np.sqrt(2)], atol=1e-7)


def test_a_reserve_as_large_as_a_muscle_is_used_up_when_that_works_at_045():
    below, at = share([[[40.0]]] * 2, [[50.0], [40 * (1 + np.sqrt(0.2)) + 4]], 40.0).reserve[:, 0]
    assert 30 < below < 40
    assert at == 40.0


def test_an_antagonist_rests():
    ours = share([[[10.0, -10.0, 0.0]]], [5.0])
    np.testing.assert_allclose(ours.activations[0], [0.5, 0.0, 0.0], atol=1e-8)
    assert (ours.activations[0, 1:] == 0).all()


def test_no_moment_wanted_means_rest():
    ours = share(np.ones((1, 2, 3)), np.zeros((1, 2)), 5.0)
    assert not ours.activations.any() and not ours.reserve.any() and ours.feasible.all()


def test_what_nothing_moves_cannot_be_held():
    capacity = np.array([[[30.0], [0.0]]])
    ours = share(capacity, [[10.0, 4.0]])
    assert not ours.feasible[0]
    assert ours.residual[0] == pytest.approx(4.0, rel=1e-4)
    assert ours.activations[0, 0] == pytest.approx(1 / 3, abs=1e-3)
    largest = strongest(capacity, [[10.0, 4.0]], [[1.0, 0.0]])
    assert not largest.feasible[0] and largest.load[0] == 0
    assert largest.deficit[0] == pytest.approx(4.0, rel=1e-4)


def test_a_load_that_asks_nothing_is_unbounded_and_one_nothing_can_hold_is_none():
    largest = strongest([[[30.0], [0.0]]] * 2, [[10.0, 0.0]], [[0.0, 0.0], [1.0, 1.0]])
    assert np.isinf(largest.load[0]) and largest.load[1] == pytest.approx(0.0, abs=1e-9)
    assert largest.feasible.all() and not largest.deficit.any()


def test_nothing_to_share_with_and_nothing_to_solve():
    none = share(np.zeros((2, 3, 0)), np.ones((2, 3)))
    assert none.activations.shape == (2, 0) and not none.feasible.any()
    empty = share(np.zeros((0, 3, 4)), np.zeros((0, 3)))
    assert empty.activations.shape == (0, 4)
    assert strongest(np.zeros((0, 3, 4)), np.zeros((0, 3)), np.zeros((0, 3))).load.shape == (0,)


@pytest.mark.parametrize(
    ("change", "names"),
    [
        ({"moment": np.ones((1, 5))}, "moment"),
        ({"moment": np.full((1, 2), np.nan)}, "moment"),
        ({"reserve": -1.0}, "reserve"),
        ({"exponent": 1.0}, "exponent"),
        ({"weights": np.zeros(3)}, "weights"),
        ({"capacity": np.full((1, 2, 3), np.inf)}, "capacity"),
        ({"capacity": np.ones((2, 3))}, "capacity"),
    ],
)
def test_figures_that_cannot_be_are_named(change, names):
    good = {"capacity": np.ones((1, 2, 3)), "moment": np.ones((1, 2))}
    with pytest.raises(ValueError, match=names):
        share(**(good | change))
