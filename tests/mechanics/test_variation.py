"""Depth, stance and bar place: what they change, and what they refuse."""

from __future__ import annotations

import numpy as np
import pytest

from setwright.mechanics.body import Build
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.movement import Movement
from setwright.mechanics.outer import size_along
from setwright.mechanics.outer_moments import asked
from setwright.mechanics.points import places
from setwright.mechanics.posture import along, postures
from setwright.mechanics.stance import STANCES
from setwright.mechanics.variation import choices, varied

BUILD = Build(1.8, 80.0)
SQUAT = Movement.model_validate(
    {
        "ends": ["leg"],
        "holds": ["trunk"],
        "support": ["feet"],
        "stretched": {"knee flexion": 132, "ankle dorsiflexion": 34, "hip flexion": 118,
                      "hip abduction": 20},
        "shortened": {"knee flexion": 5, "ankle dorsiflexion": 2, "hip flexion": 5,
                      "hip abduction": 6},
        "balance": "hip flexion",
        "load": [{"kind": "weight", "at": "upper back"}],
    }
)  # fmt: skip
KNEE_MACHINE = Movement.model_validate(
    {
        "ends": ["leg"],
        "support": ["pelvis", "trunk"],
        "hold": {"hip flexion": 85},
        "stretched": {"knee flexion": 110},
        "shortened": {"knee flexion": 10},
        "load": [
            {"kind": "torque", "about": "knee flexion", "sense": -1, "curve": [0.5, 1.0, 0.7]}
        ],
    }
)
CURL = Movement.model_validate(
    {
        "ends": ["arm"],
        "support": ["feet"],
        "stretched": {"elbow flexion": 5},
        "shortened": {"elbow flexion": 130},
        "load": [{"kind": "weight", "at": "hands"}],
    }
)


def level_of_thigh(movement: Movement) -> float:
    """Degrees the thigh rises above level from the hip down to the knee, at the start."""
    _, body = postures(movement, BUILD)
    return float(np.degrees(np.arcsin(body.placed["thigh right"].rotation[0, 1, 1])))


def test_nothing_asked_changes_nothing() -> None:
    assert varied(SQUAT, build=BUILD) == SQUAT
    assert varied(SQUAT, depth="full", stance="medium", build=BUILD).stretched == SQUAT.stretched


def test_a_parallel_squat_starts_with_the_thigh_level() -> None:
    assert level_of_thigh(SQUAT) < -5
    assert level_of_thigh(varied(SQUAT, depth="parallel", build=BUILD)) == pytest.approx(0, abs=1)


def test_a_half_squat_starts_with_the_knee_at_ninety() -> None:
    half = varied(SQUAT, depth="half", build=BUILD)
    assert half.stretched["knee flexion"] == pytest.approx(90, abs=0.5)
    assert half.shortened == SQUAT.shortened


@pytest.mark.parametrize("depth", ["parallel", "half"])
def test_a_shorter_range_is_the_end_of_the_longer_one(depth: str) -> None:
    whole, _ = postures(SQUAT, BUILD, 200)
    part, _ = postures(varied(SQUAT, depth=depth, build=BUILD), BUILD, 20)
    for name in ("hip flexion", "ankle dorsiflexion", "hip abduction", "lean"):
        by_knee = np.interp(part["knee flexion"], whole["knee flexion"][::-1], whole[name][::-1])
        assert np.degrees(part[name] - by_knee) == pytest.approx(0, abs=0.3)


def test_the_load_of_a_shorter_range_is_that_of_its_part_of_the_curve() -> None:
    half = varied(KNEE_MACHINE, depth="half", build=BUILD)
    cut = (110 - 90) / (110 - 10)
    kept = size_along(KNEE_MACHINE.load[0], cut + (1 - cut) * along(40))
    assert size_along(half.load[0], along(40)) == pytest.approx(kept, abs=0.02)


def test_key_postures_before_the_cut_go_and_later_ones_move_along() -> None:
    keyed = SQUAT.model_copy(
        update={
            "between": Movement.model_validate(
                {
                    **SQUAT.model_dump(),
                    "between": [
                        {"at": 0.1, "posture": {"trunk flexion": 10}},
                        {"at": 0.8, "posture": {"trunk flexion": 4}},
                    ],
                }
            ).between
        }
    )
    half = varied(keyed, depth="half", build=BUILD)
    assert [one.posture for one in half.between] == [{"trunk flexion": 4}]
    assert 0 < half.between[0].at < 0.8


def test_a_stance_sets_the_ankles_apart_and_turns_the_toes_all_along() -> None:
    def feet(movement: Movement) -> tuple[np.ndarray, np.ndarray]:
        _, body = postures(movement, BUILD)
        toes = np.degrees(np.arcsin(body.placed["foot right"].rotation[:, 2, 0]))
        return body.placed["shank right"].far[:, 2], toes

    ankles, toes = feet(SQUAT)
    for stance, (apart, outward, _) in STANCES.items():
        moved, turned = feet(varied(SQUAT, stance=stance, build=BUILD))  # type: ignore[arg-type]
        assert moved == pytest.approx(apart * ankles, abs=0.02)
        assert turned == pytest.approx(toes + outward, abs=3)


def test_a_lower_bar_leans_the_trunk_further_and_moves_work_from_knee_to_hip() -> None:
    found = [asked(varied(SQUAT, bar=bar, build=BUILD), BUILD) for bar in ("front", "high", "low")]
    load = SQUAT.load_guess * BUILD.mass_kg
    leans = [one.angles["lean"][0] for one in found]
    hips, knees = (
        [abs(one.own[joint][0] + load * one.load[joint][0]) for one in found]
        for joint in ("hip flexion", "knee flexion")
    )
    assert leans == sorted(leans)
    assert hips == sorted(hips)
    assert knees == sorted(knees, reverse=True)


def test_the_bar_moved_and_moved_back_is_where_it_was() -> None:
    low = varied(SQUAT, bar="low", build=BUILD)
    back = varied(low, bar="high", build=BUILD)
    assert back.load == SQUAT.load
    assert back.stretched == SQUAT.stretched


@pytest.mark.parametrize("bar", ["high", "low", "front"])
def test_hands_stay_at_the_bar(bar: str) -> None:
    moved = varied(SQUAT, bar=bar, build=BUILD)  # type: ignore[arg-type]
    _, body = postures(moved, BUILD, 3)
    hand = places(body, "hands", BUILD.stature_m)[0].position
    held = places(body, str(moved.load[0].at), BUILD.stature_m)[0].position
    away = np.einsum("fji,fj->fi", body.placed["thorax"].rotation, hand - held)
    assert np.abs(away[:, :2]).max() < 0.1  # m, a hand


@pytest.mark.parametrize(
    ("movement", "change", "told"),
    [
        (KNEE_MACHINE, {"bar": "low"}, "depth full, half"),
        (KNEE_MACHINE, {"stance": "wide"}, "no stance"),
        (KNEE_MACHINE, {"depth": "parallel"}, "full, half"),
        (CURL, {"depth": "half"}, "nothing"),
        (varied(SQUAT, depth="half", build=BUILD), {"depth": "parallel"}, "full"),
    ],
)
def test_what_means_nothing_is_refused_with_what_would(
    movement: Movement, change: dict[str, str], told: str
) -> None:
    with pytest.raises(PostureError) as refused:
        varied(movement, build=BUILD, **change)  # type: ignore[arg-type]
    assert refused.value.field == next(iter(change))
    assert told in refused.value.allowed


def test_every_offered_choice_can_be_done() -> None:
    for movement in (SQUAT, KNEE_MACHINE, CURL):
        for name, values in choices(movement).items():
            for value in values:
                changed = varied(movement, build=BUILD, **{name: value})  # type: ignore[arg-type]
                postures(changed, BUILD, 4)
