"""A set near its limit: equilibrium, the load, and how it follows the body."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.mechanics.body import Build
from setwright.mechanics.effort import NEAR_LIMIT, effort
from setwright.mechanics.growth import share_of
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.movement import Movement
from setwright.mechanics.posture import postures
from setwright.mechanics.spine import spinal
from setwright.mechanics.task import task_of
from setwright.mechanics.uncertainty import draw

BODY = Build(1.77, 75.0, "male")


def movement(**fields):
    return Movement.model_validate(fields)


def squat(**fields):
    return movement(
        **{
            "ends": ["leg"],
            "holds": ["trunk"],
            "support": ["feet"],
            "stretched": {
                "knee flexion": 110, "ankle dorsiflexion": 28, "hip flexion": 110,
                "hip abduction": 18, "trunk flexion": 10,
            },
            "shortened": {"knee flexion": 5, "hip flexion": 5, "hip abduction": 8},
            "balance": "hip flexion",
            "load_guess": 1.0,
            "load": [{"kind": "weight", "at": "upper back"}],
            **fields,
        }
    )  # fmt: skip


def extension(**fields):
    return movement(
        **{
            "ends": ["leg"],
            "support": ["pelvis", "trunk"],
            "carried": ["hip flexion", "hip abduction", "hip internal rotation",
                        "ankle dorsiflexion"],
            "hold": {"hip flexion": 80},
            "stretched": {"knee flexion": 100},
            "shortened": {"knee flexion": 10},
            "load": [{"kind": "torque", "about": "knee flexion", "sense": -1}],
            **fields,
        }
    )  # fmt: skip


def curl(**fields):
    return movement(
        **{
            "ends": ["arm"],
            "support": ["feet"],
            "hold": {"forearm pronation": -80},
            "stretched": {"elbow flexion": 10},
            "shortened": {"elbow flexion": 120},
            "load": [{"kind": "weight", "at": "hands"}],
            **fields,
        }
    )


@pytest.mark.parametrize("one", [squat(), extension(), curl()])
def test_muscles_and_reserves_balance_the_load(one):
    found = effort(one, BODY)
    task = task_of(one, BODY)
    for name, work in found.blocks.items():
        given_ = np.einsum("fkm,fm->fk", task.blocks[name].moments, work.activations)
        missing = np.linalg.norm(given_ + work.reserve - work.moment, axis=1)
        assert (missing <= 1e-6 * np.linalg.norm(work.moment, axis=1) + 1e-9).all()
        assert (work.activations >= 0).all() and (work.activations <= 1).all()


def test_the_load_of_the_set_is_what_most_of_the_range_can_hold():
    found = effort(squat(), BODY)
    assert found.load == pytest.approx(NEAR_LIMIT * np.quantile(found.strongest, 0.15))
    assert found.sticking == found.strongest.argmin()
    # Where the load is below the largest one no muscle need be at its limit in every place.
    assert found.ended_by == "leg"


def test_the_body_balances_over_the_middle_of_its_feet():
    angles, body = postures(squat(), BODY, 8)
    feet = body.placed["foot right"]
    middle = feet.at(0.42 * feet.length_m - body.marks.heel_behind_ankle_m, 0)[:, 0]
    own = sum(one.mass_kg * one.centre[:, 0] for one in body.placed.values())
    bar = body.placed["thorax"].at(-0.045 * 1.77, body.placed["thorax"].length_m - 0.02 * 1.77)
    centre = (own + 75.0 * bar[:, 0]) / 150.0
    assert centre == pytest.approx(middle, abs=2e-3)
    assert np.degrees(angles["hip flexion"]).max() > 100


def test_long_thighs_ask_more_of_the_hips():
    usual = effort(squat(), BODY)
    long = effort(squat(), Build(1.77, 75.0, "male", {"thigh": 1.12}))
    hip = [one.asked.load["hip flexion"].max() for one in (long, usual)]
    assert hip[0] > 1.05 * hip[1]


def test_a_posture_that_cannot_balance_is_refused_in_words():
    with pytest.raises(PostureError, match="hip flexion: found about 30 degrees"):
        effort(
            squat(
                stretched={"knee flexion": 130, "hip flexion": 30, "ankle dorsiflexion": -30},
                load_guess=0.0,
            ),
            BODY,
        )


def test_a_lean_that_would_topple_is_refused():
    with pytest.raises(PostureError, match="weight far outside"):
        effort(
            movement(ends=["leg"], support=["feet"], foot_flat=False, hold={"lean": -45},
                     stretched={"knee flexion": 30}, shortened={"knee flexion": 5},
                     load=[{"kind": "weight", "at": "hands"}]), BODY,
        )  # fmt: skip


def test_an_angle_beyond_the_figures_is_refused_with_its_range():
    with pytest.raises(ValueError, match=r"knee flexion.*160.*0 to 140"):
        effort(extension(stretched={"knee flexion": 160}), BODY)


@settings(derandomize=True, max_examples=12, deadline=None)
@given(factor=st.floats(0.3, 3.0))
def test_a_load_counted_in_other_units_changes_nothing(factor):
    """A cam that doubles the torque halves the load and leaves every share as it was."""
    one, other = (
        extension(),
        extension(load=[{"kind": "torque", "about": "knee flexion", "sense": -1, "share": factor}]),
    )
    first, second = effort(one, BODY, 6), effort(other, BODY, 6)
    assert second.load * factor == pytest.approx(first.load, rel=1e-6)
    for part, work in share_of(first).items():
        assert share_of(second)[part].share == pytest.approx(work.share, abs=1e-4)


def test_an_easier_place_in_the_range_works_the_muscles_less():
    flat = share_of(effort(extension(), BODY))
    fading = share_of(
        effort(
            extension(load=[{"kind": "torque", "about": "knee flexion", "sense": -1,
                             "curve": [1.0, 0.2]}]), BODY,
        )
    )  # fmt: skip
    short = slice(-4, None)
    assert fading["vastus-lateralis"].activation[short].mean() < (
        flat["vastus-lateralis"].activation[short].mean()
    )
    assert fading["vastus-lateralis"].loaded_ratio > flat["vastus-lateralis"].loaded_ratio


def test_a_pad_that_carries_the_trunk_spares_the_spine():
    assert spinal(effort(extension(), BODY)).moment.max() == 0
    squatting = spinal(effort(squat(), BODY))
    assert squatting.moment.max() > 100
    assert squatting.compression.min() > 0


def test_palm_up_works_the_biceps_more_than_palm_down():
    up = share_of(effort(curl(), BODY))
    down = share_of(effort(curl(hold={"forearm pronation": 80}, grip="none"), BODY))
    assert up["biceps-long-head"].share >= down["biceps-long-head"].share
    assert up["brachialis"].share > 0.5


def test_draws_are_the_same_each_time_and_lie_around_the_central_share():
    first, second = (draw(extension(), BODY, 20, seed=3) for _ in range(2))
    for part, spread in first.items():
        assert np.array_equal(spread.share, second[part].share)
    central = share_of(effort(extension(), BODY))
    for part in ("vastus-lateralis", "vastus-medialis", "rectus-femoris"):
        low, high = np.quantile(first[part].share, [0.0, 1.0])
        assert low - 0.1 <= central[part].share <= high + 0.1
        assert first[part].share.std() > 0
