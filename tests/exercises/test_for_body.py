"""What is shown of a movement computed for a body hangs together, and scales as bodies do."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from setwright.exercises.for_body import ForBody, for_body
from setwright.exercises.movements import movement
from setwright.mechanics.body import Build
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.spine import spinal

BUILD = Build(1.8, 80.0)


@pytest.fixture(scope="module", params=["back-squat", "romanian-deadlift", "leg-extension"])
def found(request: pytest.FixtureRequest) -> ForBody:
    return for_body(movement(request.param), BUILD)


@pytest.fixture(scope="module")
def squat() -> ForBody:
    return for_body(movement("back-squat"), BUILD)


def test_parts_come_largest_share_first_with_figures_in_their_bounds(found: ForBody) -> None:
    shares = [row.share for row in found.parts]
    assert shares == sorted(shares, reverse=True)
    assert shares[0] > 0.5
    for row in found.parts:
        assert 0 <= row.share <= 1
        assert (row.along >= 0).all()
        assert (row.along <= 1 + 1e-9).all()
        assert row.ratio.min() - 1e-9 <= row.loaded_ratio <= row.ratio.max() + 1e-9


def test_the_parts_that_end_a_set_are_those_of_the_joint_it_tires() -> None:
    # Common practice: a knee extension ends with the quadriceps, a hinge with the hip extensors
    # or the muscles along the spine.
    extension = for_body(movement("leg-extension"), BUILD).ends
    assert {part.split("-")[0] for part in extension} <= {"vastus", "rectus"}
    hinge = for_body(movement("romanian-deadlift"), BUILD).ends
    behind = ("gluteus-maximus", "biceps-femoris", "semi", "longissimus", "iliocostalis")
    assert any(part.startswith(behind) for part in hinge)
    assert not any(part.startswith("vastus") for part in hinge)


def test_the_hardest_point_has_the_least_strength(found: ForBody) -> None:
    at = int(np.argmin(np.abs(found.effort.asked.range_ - found.hardest)))
    assert found.effort.strongest[at] == found.effort.strongest.min()


def test_joints_are_those_of_the_movement(found: ForBody) -> None:
    first = {"back-squat": "trunk extension", "romanian-deadlift": "trunk extension",
             "leg-extension": "knee extension"}  # fmt: skip
    expected = next(action for name, action in first.items() if movement(name) == found.movement)
    assert found.joints[0].action == expected
    for joint in found.joints:
        assert joint.moment == pytest.approx(joint.along.max())
        assert joint.per_kg == pytest.approx(joint.moment / BUILD.mass_kg)


def test_a_leg_extension_spares_the_spine_and_a_hinge_does_not() -> None:
    seated = for_body(movement("leg-extension"), BUILD).spine
    hinge = for_body(movement("romanian-deadlift"), BUILD).spine
    assert seated.moment.max() == 0
    assert hinge.moment.max() > 100
    assert hinge.compression.max() > 3 * seated.compression.max()


def test_compression_is_more_than_what_lies_above(squat: ForBody) -> None:
    asked, spine = squat.effort.asked, squat.spine
    above = asked.pressed + squat.effort.held * asked.pressed_by_load
    # The extensors' arm is shorter than 8 cm, so they press more than moment over 8 cm.
    assert (spine.compression > above + spine.moment / 0.08 - 1e-6).all()


def test_more_load_is_more_moment_and_compression(squat: ForBody) -> None:
    lighter = replace(squat.effort, load=0.5 * squat.load)
    assert (spinal(lighter).moment < squat.spine.moment).all()
    assert (spinal(lighter).compression < squat.spine.compression).all()


def test_long_thighs_take_the_hip_further_from_the_bar(squat: ForBody) -> None:
    long = for_body(movement("back-squat"), replace(BUILD, lengths={"thigh": 1.1}))
    hips = [
        {joint.action: joint.per_load for joint in one.joints}["hip extension"]
        for one in (squat, long)
    ]
    assert hips[1] > 1.02 * hips[0]


def test_a_body_that_cannot_hold_itself_is_refused() -> None:
    with pytest.raises(PostureError, match="without any load"):
        for_body(movement("back-squat"), Build(2.2, 900.0, "female"))
