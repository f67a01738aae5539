"""Shoulder and scapula: figures of the model, virtual work, refusals."""

import json
from pathlib import Path

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.anatomy.atlas import parts
from setwright.mechanics.rotation import rotation_matrix, rotation_vector
from setwright.mechanics.shoulder import (
    elements,
    figures,
    glenohumeral_centre,
    glenohumeral_slope,
    humerus_orientation,
    lengths_and_arms,
    scapula_orientation,
    within,
)
from setwright.mechanics.shoulder_frame import frame_file, scapula_turn

REFERENCE = json.loads((Path(__file__).parent / "data" / "reference_shoulder.json").read_text())
NAMES = [element.element for element in elements()]
SMOOTH = settings(derandomize=True, max_examples=40, deadline=None)
POSE = st.tuples(
    st.floats(-18, 18),
    st.floats(-12, 16),
    st.floats(-12, 12),
    st.floats(-20, 110),
    st.floats(5, 120),
    st.floats(0, 1),
)


def posed(pose):
    """A pose inside the region: the blade follows the arm, rotation between everyday limits."""
    protraction, elevation, upward, plane, arm, turned = pose
    axial = -60 + 0.4 * plane + turned * 100
    blade = np.radians([[protraction, elevation, np.clip(upward + arm / 3, -12, 70)]])
    return blade, humerus_orientation(*np.radians([[plane], [arm], [axial]]))


def rows(wanted):
    return [NAMES.index(name) for name in wanted]


def test_scapular_lengths_are_the_models():
    block = REFERENCE["scapula"]
    blade = np.radians([pose["scapula_deg"] for pose in block["poses"]])
    arm = np.tile(humerus_orientation(0.5, 0.4, 0.3), (len(blade), 1, 1))
    lengths, _, _ = lengths_and_arms(blade, arm)
    wanted = np.array([pose["length_m"] for pose in block["poses"]])
    assert np.abs(lengths[:, rows(block["elements"])] - wanted).max() < 0.3e-3


def test_scapular_arms_are_the_models():
    # What was asked of the model moved all three angles, as ``went`` has it.
    block = REFERENCE["scapula"]
    _, arms, _ = lengths_and_arms(np.zeros((1, 3)), humerus_orientation(0.5, 0.4, [0.3]))
    along = arms[0, rows(block["elements"])] @ np.array(block["went"]).T
    assert np.abs(along - np.array(block["arm_m"]).T).max() < 1.5e-3


def test_glenohumeral_lengths_and_arms_are_the_models():
    """Where the arm is up to 73 degrees up: further, a blade still at rest leaves the region, and
    so does an arm turned further in. The lower infraspinatus is smoothed over its jumps."""
    block = REFERENCE["glenohumeral"]
    poses = [p for p in block["poses"] if p["humerus_deg"][1] < 73 and p["humerus_deg"][2] < 90]
    assert len(poses) == 3
    arm = humerus_orientation(*np.radians([p["humerus_deg"] for p in poses]).T)
    lengths, _, arms = lengths_and_arms(np.zeros((len(arm), 3)), arm)
    smooth = [n for n in block["elements"] if n != "Infraspinatus_I"]
    here, there = rows(smooth), [block["elements"].index(n) for n in smooth]
    wanted = np.array([p["length_m"] for p in poses])[:, there]
    assert np.abs(lengths[:, here] - wanted).max() < 1e-3
    axes = np.array([p["axes"] for p in poses])
    about = np.einsum("nmk,nck->ncm", arms[:, here], axes)
    known = np.array([p["arm_m"] for p in poses], dtype=float)[..., there]
    assert np.isfinite(known).mean() > 0.9
    assert np.nanmax(np.abs(about - known)) < 3e-3


@SMOOTH
@given(POSE)
def test_arms_are_minus_the_change_of_length(pose):
    blade, arm = posed(pose)
    _, scapular, humeral = lengths_and_arms(blade, arm)
    h = 1e-5
    for k, axis in enumerate(np.eye(3)):
        ends = [lengths_and_arms(blade + s * h * axis, arm)[0] for s in (1, -1)]
        assert np.allclose((ends[1] - ends[0]) / (2 * h), scapular[..., k], atol=1e-6)
        ends = [lengths_and_arms(blade, rotation_matrix(s * h * axis) @ arm)[0] for s in (1, -1)]
        assert np.allclose((ends[1] - ends[0]) / (2 * h), humeral[..., k], atol=1e-6)


@SMOOTH
@given(POSE)
def test_a_muscle_between_blade_and_arm_knows_no_thorax(pose):
    """Turned together, blade and arm leave its length: both arms cancel."""
    blade, arm = posed(pose)
    _, scapular, humeral = lengths_and_arms(blade, arm)
    alone = [i for i, e in enumerate(elements()) if e.coordinates[0] == "glenohumeral x"]
    together = scapular[0, alone] + humeral[0, alone] @ scapula_turn(blade)[0]
    assert len(alone) > 10
    assert np.allclose(together, 0.0, atol=1e-12)


@SMOOTH
@given(POSE)
def test_the_slope_of_the_joint_centre_and_the_turn_of_the_blade(pose):
    blade, _ = posed(pose)
    h = 1e-5
    for k, axis in enumerate(np.eye(3)):
        more, less = blade + h * axis, blade - h * axis
        moved = (glenohumeral_centre(more) - glenohumeral_centre(less)) / (2 * h)
        assert np.allclose(moved, glenohumeral_slope(blade)[..., k], atol=1e-6)
        turned = scapula_orientation(more) @ np.swapaxes(scapula_orientation(less), -1, -2)
        spun = rotation_vector(turned) / (2 * h)
        assert np.allclose(spun, scapula_turn(blade)[..., k], atol=1e-6)


def test_the_joint_sits_where_a_shoulder_is():
    centre = glenohumeral_centre(np.zeros((1, 3)))[0]
    assert centre == pytest.approx([-0.041, -0.016, 0.151], abs=2e-3)
    slope = glenohumeral_slope(np.zeros((1, 3)))[0]
    protraction, elevation, upward = slope.T
    assert protraction[0] > 0.05  # forward
    assert elevation[1] > 0.05  # up
    assert upward[1] > 0.02
    assert frame_file().landmarks_m["c7"][0] < centre[0]


def test_the_raised_arm_tips_the_blade_back_and_not_forward():
    # Motion of the shoulder complex during multiplanar humeral elevation, Journal of Bone and
    # Joint Surgery American, 2009, 10.2106/JBJS.G.01483 (from memory): posterior tilting.
    # The blade's own z, along its spine, turns up; its x, out of its surface, must not turn down.
    rest, raised = scapula_orientation(np.radians([[0, 0, 0], [0, 0, 50]]))
    assert raised[1, 2] - rest[1, 2] > 0.6
    assert raised[1, 0] - rest[1, 0] > -0.1


def test_every_element_belongs_to_a_part_and_says_how_well_it_fits():
    known = {part.id for part in parts()}
    for element in elements():
        assert element.part in known
        assert element.rms_mm is not None and element.rms_mm < 2
        assert element.arm_rms_mm is not None and element.arm_rms_mm < 4


def test_latissimus_fibres_are_best_at_the_side_and_long_overhead():
    # Architectural analysis and predicted functional capability of the human latissimus dorsi
    # muscle, Journal of Anatomy, 2013, 10.1111/joa.12074: plateau and descending limb.
    paths, fibres = figures()
    assert paths.elements == elements()
    blade = np.radians([[0, 0, 0], [0, 0, 50]])
    arm = humerus_orientation(*np.radians([[0, 60], [5, 150], [0, -10]]))
    lengths, _, _ = lengths_and_arms(blade, arm)
    ratio = (lengths - fibres.offset_m) / fibres.l0_m
    for row in rows(["LatissimusDorsi_M", "LatissimusDorsi_I"]):
        assert ratio[0, row] == pytest.approx(1.0, abs=0.02)
        assert ratio[1, row] > 1.25


def test_a_pose_beyond_the_figures_is_refused_in_words():
    arm = humerus_orientation([0.3], [0.5], [0.2])
    with pytest.raises(ValueError, match="scapula protraction: found 40"):
        lengths_and_arms(np.radians([[40, 0, 0]]), arm)
    behind = humerus_orientation(np.radians([-90]), np.radians([150]), np.radians([-90]))
    with pytest.raises(ValueError, match="150 degrees up in plane -90"):
        lengths_and_arms(np.zeros((1, 3)), behind)
    both = within(np.zeros((2, 3)), np.concatenate([arm, behind]))
    assert both.tolist() == [True, False]
