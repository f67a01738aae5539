"""The growth figure behaves, and its one constant is what the trials give."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path
from types import SimpleNamespace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.exercises.comparing import parts_of
from setwright.exercises.shares import STRETCH_FROM, STRETCH_TO
from setwright.mechanics.growth import (
    HELD_WORTH,
    LENGTH_WEIGHT,
    LENGTH_WEIGHT_SD,
    growth_index,
    loaded_ratio,
    points_weight,
    worth_of_motion,
)
from setwright.response.factors import COEFFICIENTS

SCRIPTS = Path(__file__).parents[2] / "scripts"
# Spearman with each trial left out, at least: over all trials, over the imaging trials, and each
# muscle beside itself in another condition.
REACHED = {"all": 0.5, "imaging": 0.6, "same muscle": 0.7}

shares = st.floats(0.01, 1)
ratios = st.floats(0.5, 1.5)


@settings(derandomize=True)
@given(shares, shares, ratios)
def test_who_works_harder_grows_no_less(one: float, other: float, ratio: float) -> None:
    low, high = sorted((one, other))
    assert growth_index(low, ratio) <= growth_index(high, ratio)


@settings(derandomize=True)
@given(shares, ratios, ratios)
def test_who_works_longer_grows_no_less(share: float, one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert growth_index(share, low) <= growth_index(share, high)


@settings(derandomize=True)
@given(shares, ratios)
def test_growth_stays_within_bounds(share: float, ratio: float) -> None:
    grown = growth_index(share, ratio)
    assert 0 <= grown <= share * (1 + 0.5 * LENGTH_WEIGHT)
    assert growth_index(0.0, ratio) == 0
    assert growth_index(share, 1.0) == pytest.approx(share)


def test_length_is_worth_something_on_either_side() -> None:
    assert growth_index(1.0, 1.2) > 1 > growth_index(1.0, 0.8) > 0


def test_a_held_part_counts_for_less_than_a_moved_one() -> None:
    held, moved = np.full(5, 1.0), np.linspace(0.8, 1.2, 5)
    assert worth_of_motion(held) == pytest.approx(HELD_WORTH)
    assert worth_of_motion(moved) == pytest.approx(1.0)
    between = worth_of_motion(np.linspace(0.98, 1.02, 5))
    assert HELD_WORTH < between < 1
    still = parts_of("leg-extension-held-at-90")["vastus-lateralis"].share
    assert still < parts_of("leg-extension-90-to-0")["vastus-lateralis"].share


def test_hard_points_of_the_range_decide_the_length() -> None:
    weight = points_weight(np.array([0.2, 0.4, 1.0]))
    assert weight.sum() == pytest.approx(1)
    assert weight[2] > weight[1] > weight[0]
    ratio = np.array([0.7, 1.0, 1.3])
    assert loaded_ratio(np.array([0.1, 0.1, 0.9]), ratio, weight) > 1.25
    assert loaded_ratio(np.array([0.9, 0.1, 0.1]), ratio, weight) < 1.25


def test_the_response_uses_the_same_length_effect() -> None:
    slope = COEFFICIENTS["stretch slope"]
    width = STRETCH_TO - STRETCH_FROM
    assert slope.value == pytest.approx(LENGTH_WEIGHT * width, abs=0.005)
    assert slope.sd == pytest.approx(LENGTH_WEIGHT_SD * width, abs=0.005)


@pytest.fixture(scope="module")
def fit() -> Iterator[SimpleNamespace]:
    """The scripts that fit, and the fit."""
    sys.path.insert(0, str(SCRIPTS))
    try:
        import growth_at_lengths
        import growth_fitting
        import growth_trials

        fitting = growth_fitting.Fitting(growth_fitting.straight(), growth_trials.trials())
        yield SimpleNamespace(
            lengths=growth_at_lengths,
            fitting=fitting,
            left_out=growth_fitting.leave_one_out(fitting),
            rank=growth_fitting.rank,
            rank_same_muscle=growth_fitting.rank_same_muscle,
            constants=growth_fitting.Constants,
            pool=growth_at_lengths.pool,
        )
    finally:
        sys.path.remove(str(SCRIPTS))


def test_the_shipped_weight_is_what_the_trials_give(fit: SimpleNamespace) -> None:
    assert fit.fitting.best().weight == pytest.approx(LENGTH_WEIGHT, abs=0.15)
    assert fit.fitting.spread().std() == pytest.approx(LENGTH_WEIGHT_SD, abs=0.1)


def test_the_fitted_figure_is_the_shipped_one(fit: SimpleNamespace) -> None:
    figure = fit.constants(LENGTH_WEIGHT).figure
    for share, ratio in ((1.0, 1.3), (0.5, 0.6), (0.0, 1.0)):
        grown = figure(np.array([share]), np.array([ratio - 1]))
        assert grown[0] == pytest.approx(growth_index(share, ratio))


def test_trials_are_predicted_without_themselves(fit: SimpleNamespace) -> None:
    assert fit.rank(fit.left_out) >= REACHED["all"]
    imaging = [one for one in fit.left_out if one.trial.kind == "imaging"]
    assert len(imaging) >= 10
    assert fit.rank(imaging) >= REACHED["imaging"]
    assert fit.rank_same_muscle(fit.left_out) >= REACHED["same muscle"]


def test_a_left_out_trial_has_no_say(fit: SimpleNamespace) -> None:
    name = fit.left_out[0].trial.name
    rows = [row for row, other in enumerate(fit.fitting.names) if other != name]
    assert len(rows) < len(fit.fitting.names)
    assert fit.fitting.without(name) == fit.fitting.best(rows)


def test_length_predicts_better_than_none(fit: SimpleNamespace) -> None:
    none = fit.fitting.losses[:, 0].sum()
    assert fit.fitting.losses.sum(axis=0).min() < none


def test_sites_are_pooled_by_their_precision(fit: SimpleNamespace) -> None:
    site = {"study_number": "1", "muscle": "VL", "muscle_length": "Long", "n": "10"}
    precise = {**site, "m_pre": "10", "m_post": "11", "sd_pre": "1"}
    vague = {**site, "m_pre": "10", "m_post": "13", "sd_pre": "2"}
    (found,) = fit.pool([precise, vague])
    # 10 % at four times the weight of 30 %.
    assert found.percent == pytest.approx(14.0)
    assert (found.sites, found.people) == (2, 10)


def test_the_pooled_figures_are_those_of_the_open_data(fit: SimpleNamespace) -> None:
    committed = fit.lengths.pooled()
    assert len(committed) >= 20
    fresh = fit.lengths.read_sites()
    if fresh is None:
        print(f"{fit.lengths.SITES.name} is not here; the committed figures were not recomputed")
    else:
        assert committed == fresh
