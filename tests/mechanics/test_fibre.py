"""Fibre length and force of a fully active muscle in series with its tendon."""

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.mechanics.fibre import (
    LONGEST,
    SHORTEST,
    Fibres,
    active_force,
    fibre_state,
    fibres,
    passive_force,
    tendon_strain,
)
from setwright.mechanics.path_figures import PathsFile
from setwright.mechanics.paths import compile_paths

steady = settings(derandomize=True, max_examples=60, deadline=None)
muscles = st.builds(
    lambda l0, tendon, lean, strain: Fibres(
        np.array([l0]),
        np.array([l0 * tendon]),
        np.array([l0 * tendon]),
        np.array([l0 * np.sin(lean)]),
        np.array([strain]),
    ),
    st.floats(0.03, 0.4),
    st.floats(0.0, 9.0),  # tendon over fibre: soleus and gastrocnemius reach 6 to 9
    st.floats(0.0, 0.5),
    st.floats(0.0, 0.06),  # beyond 0.56 of the fibre the equilibrium is no longer single
)


def sweep(muscle):
    """Paths from far too short to far too long."""
    return muscle.offset_m + muscle.l0_m * np.linspace(0.0, 2.2, 300)[:, None]


def test_the_active_curve_has_its_published_shape():
    # Annals of Biomedical Engineering 2016, 10.1007/s10439-016-1591-9: full force at the optimal
    # length, little outside 0.5 to 1.5; averaged over fibres of unequal length. Human sarcomeres
    # give no force at 1.27 and 4.24 um of 2.7
    # (from memory), ratios 0.47 and 1.57.
    x = np.linspace(0.5, 1.5, 401)
    f = active_force(x)
    assert x[f.argmax()] == pytest.approx(1.0, abs=0.02)
    assert active_force(np.array([1.0]))[0] == pytest.approx(1.0, abs=0.001)
    assert f[0] < 0.2 and f[-1] < 0.3
    assert (np.diff(f[x <= 1.0]) >= 0).all() and (np.diff(f[x >= 1.02]) <= 0).all()


def test_a_slack_fibre_gives_next_to_nothing():
    assert active_force(np.array([SHORTEST]))[0] < 0.03


def test_a_fibre_pulls_by_itself_only_beyond_its_best_length():
    # Annals of Biomedical Engineering 2016, 10.1007/s10439-016-1591-9: F0 at 1.6 (from memory).
    assert (passive_force(np.linspace(0.5, 1.0, 11)) == 0).all()
    assert passive_force(np.array([1.6]))[0] == pytest.approx(1.0)
    assert (np.diff(passive_force(np.linspace(1.0, 1.5, 11))) > 0).all()


def test_the_tendon_gives_as_much_as_it_should():
    force = np.linspace(0, 1, 21)
    strain = tendon_strain(force)
    assert strain[0] == 0 and strain[-1] == pytest.approx(0.049)
    # A toe: the first tenth of the force takes more than a tenth of the strain.
    assert strain[2] > 2 * 0.0049 and (np.diff(strain) > 0).all()


@steady
@given(muscles)
def test_fibre_and_tendon_fill_the_path(muscle):
    path = sweep(muscle)
    state = fibre_state(path, muscle)
    along = np.sqrt((state.ratio * muscle.l0_m) ** 2 - muscle.height_m**2)
    pull = state.force + state.passive
    total = along + muscle.offset_m + muscle.tendon_m * tendon_strain(pull, muscle.strain)
    shortest = muscle.shortest[0]
    between = (state.ratio > shortest) & (state.ratio < LONGEST)
    assert between.any()
    assert np.abs(total - path)[between].max() < 1e-9
    # At the ends the path is shorter than the shortest, or longer than the longest.
    assert (path[state.ratio == shortest] <= total[state.ratio == shortest] + 1e-9).all()
    assert (path[state.ratio == LONGEST] >= total[state.ratio == LONGEST] - 1e-9).all()


@steady
@given(muscles)
def test_a_longer_path_means_a_longer_fibre(muscle):
    for tendon in ("elastic", "rigid"):
        ratio = fibre_state(sweep(muscle), muscle, tendon).ratio
        assert (np.diff(ratio[:, 0]) >= -1e-12).all()
        assert ratio[0, 0] == muscle.shortest[0] and ratio[-1, 0] == LONGEST


@steady
@given(muscles)
def test_a_tendon_that_gives_shortens_the_fibre(muscle):
    path = sweep(muscle)
    rigid, elastic = fibre_state(path, muscle, "rigid"), fibre_state(path, muscle)
    assert (elastic.ratio <= rigid.ratio + 1e-9).all()
    stiff = fibre_state(path, replace(muscle, strain=np.zeros(1)))
    assert np.allclose(stiff.ratio, rigid.ratio, atol=1e-6)
    assert ((elastic.force >= 0) & (elastic.force <= 1)).all()


def one_element(**changes):
    element = {
        "element": "vasti",
        "part": None,
        "f0_N": 5000.0,
        "l0_m": 0.117,
        "slack_m": 0.221,
        "pennation_rad": 0.25287,
        "coordinates": ["knee flexion"],
        # Through the model's lengths at 5, 45, 60 and 110 degrees, see below.
        "powers": [[0], [1], [2], [3]],
        "coefficients_m": list(VASTUS),
    }
    return compile_paths(
        PathsFile.model_validate(
            {
                "setwright": "paths/1",
                "model": {"file": "test"},
                "coordinates": [{"name": "knee flexion", "low_deg": 0, "high_deg": 120}],
                "elements": [{**element, **changes}],
            }
        )
    )


# Vastus lateralis of LaiUhlrich2022.osim (opencap-org/opencap-core @ e1a44f3, Apache-2.0; computed
# with OpenSim 4.6): muscle-tendon length, m, at knee flexion, degrees.
KNEE_DEG = np.array([5.0, 30.0, 45.0, 60.0, 75.0, 90.0, 105.0, 110.0])
LENGTH_M = np.array([0.29966, 0.31867, 0.32944, 0.33908, 0.34708, 0.35299, 0.35774, 0.35935])
VASTUS = np.polynomial.polynomial.polyfit((KNEE_DEG - 60) / 60, LENGTH_M, 3)


def ratio_at(paths, *knee_deg, tendon="rigid"):
    lengths, _ = paths.evaluate(np.radians(np.array(knee_deg)[:, None]))
    return fibre_state(lengths, fibres(paths), tendon).ratio[:, 0]


def test_vastus_lateralis_is_as_long_as_measured():
    # Sarcomeres 2.84 um at 50 and 3.17 um at 110 degrees of knee flexion, in vivo, relaxed
    # (Journal of Biomechanics 2016, 10.1016/j.jbiomech.2016.07.013) over an optimum of 2.7 um.
    at_50, at_110 = ratio_at(one_element(), 50, 110)
    assert at_50 == pytest.approx(2.84 / 2.7, abs=0.1)
    assert at_110 == pytest.approx(3.17 / 2.7, abs=0.1)


def test_a_measured_ratio_replaces_the_slack_length():
    anchor = {"ratio": 2.84 / 2.7, "at_deg": {"knee flexion": 50}, "source": "as above"}
    paths = one_element(ratio_anchor=anchor)
    at_50, at_110 = ratio_at(paths, 50, 110)
    assert at_50 == pytest.approx(2.84 / 2.7, abs=1e-6)
    # One anchor cannot fix the model's excursion: 0.10 too long at 110 degrees.
    assert at_110 == pytest.approx(3.17 / 2.7, abs=0.12)
    # Working, the tendon gives and the fibre is shorter than the relaxed one.
    assert ratio_at(paths, 50, tendon="elastic")[0] < at_50 - 0.03


def test_an_anchor_outside_the_range_is_refused():
    anchor = {"ratio": 1.0, "at_deg": {"knee flexion": 150}, "source": "none"}
    with pytest.raises(ValueError, match="knee flexion"):
        fibres(one_element(ratio_anchor=anchor))


def test_the_vasti_give_as_much_as_measured():
    # Vastus lateralis in maximal contractions: 15 mm at the junction of tendon and muscle, 27 mm at
    # the middle of the belly (European Journal of Applied Physiology 2005, 94, 317-322).
    of = fibres(one_element(part="vastus-lateralis"))
    assert 0.015 < float((of.tendon_m * tendon_strain(np.ones(1), of.strain))[0]) < 0.027
    other = fibres(one_element(part="soleus"))
    assert (of.strain > other.strain).all()


def test_a_tendon_that_gives_moves_the_strongest_angle_toward_flexion():
    paths = one_element(part="vastus-lateralis")
    q = np.radians(np.arange(5.0, 115.0))[:, None]
    lengths, arms = paths.evaluate(q)
    best = {
        tendon: int(np.argmax(-arms[:, 0, 0] * fibre_state(lengths, fibres(paths), tendon).force.T))
        for tendon in ("rigid", "elastic")
    }
    assert best["elastic"] > best["rigid"] + 5
