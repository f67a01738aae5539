"""The evaluator of path figures, on a small invented file."""

import numpy as np
import pytest
from pydantic import ValidationError

from setwright.mechanics.path_figures import PathsFile
from setwright.mechanics.paths import compile_paths


def invented(**changes):
    """Two elements over elbow flexion (0 to 180) and forearm pronation (-90 to 90)."""
    common = {"f0_N": 100, "l0_m": 0.1, "slack_m": 0.1, "pennation_rad": 0.0}
    file = {
        "setwright": "paths/1",
        "model": {"from": "invented"},
        "coordinates": [
            {"name": "elbow flexion", "low_deg": 0, "high_deg": 180},
            {"name": "forearm pronation", "low_deg": -90, "high_deg": 90},
        ],
        "elements": [
            {
                "element": "both",
                "part": "brachialis",
                **common,
                "coordinates": ["forearm pronation", "elbow flexion"],
                "powers": [[0, 0], [1, 2]],
                "coefficients_m": [0.3, 0.04],
            },
            {
                "element": "one",
                "part": None,
                **common,
                "coordinates": ["elbow flexion"],
                "powers": [[0], [1]],
                "coefficients_m": [0.2, -0.05],
            },
        ],
    }
    return PathsFile.model_validate({**file, **changes})


def test_lengths_and_arms_by_hand():
    lengths, arms = compile_paths(invented()).evaluate(np.radians([[135.0, 45.0]]))
    # u is +0.5 for both coordinates and half a range is pi/2
    assert lengths[0] == pytest.approx([0.3 + 0.04 * 0.5 * 0.25, 0.2 - 0.05 * 0.5])
    assert arms[0, 0] == pytest.approx(
        [-0.04 * 0.5 * 2 * 0.5 / (np.pi / 2), -0.04 * 0.25 / (np.pi / 2)]
    )
    assert arms[0, 1] == pytest.approx([0.05 / (np.pi / 2), 0.0])


def test_many_poses_are_each_like_one_alone():
    paths = compile_paths(invented())
    q = np.random.default_rng(3).uniform(paths.low_rad, paths.high_rad, (1300, 2))
    lengths, arms = paths.evaluate(q)
    for n in (0, 127, 128, 1299):
        one_length, one_arm = paths.evaluate(q[n : n + 1])
        assert np.allclose(lengths[n], one_length[0], rtol=0, atol=1e-15)
        assert np.allclose(arms[n], one_arm[0], rtol=0, atol=1e-15)


def test_no_poses_give_no_rows():
    lengths, arms = compile_paths(invented()).evaluate(np.empty((0, 2)))
    assert lengths.shape == (0, 2)
    assert arms.shape == (0, 2, 2)


def test_an_angle_outside_is_refused_by_name():
    paths = compile_paths(invented())
    with pytest.raises(ValueError, match=r"forearm pronation: found 100\.0 degrees, .* -90 to 90"):
        paths.evaluate(np.radians([[10.0, 0.0], [10.0, 100.0]]))
    with pytest.raises(ValueError, match="elbow flexion"):
        paths.evaluate(np.array([[np.nan, 0.0]]))
    paths.evaluate(np.array([[np.pi + 1e-10, 0.0]]))


def test_clip_goes_to_the_nearest_pose_inside():
    paths = compile_paths(invented())
    moved = paths.clip(np.radians([[190.0, -100.0], [20.0, 30.0]]))
    assert np.degrees(moved) == pytest.approx(np.array([[180.0, -90.0], [20.0, 30.0]]))


def test_a_wrong_number_of_angles_is_refused():
    with pytest.raises(ValueError, match=r"\(N, 2\)"):
        compile_paths(invented()).evaluate(np.zeros((4, 3)))


def test_files_that_contradict_themselves_are_refused():
    only_elbow = [{"name": "elbow flexion", "low_deg": 0, "high_deg": 180}]
    with pytest.raises(ValueError, match="both: no range is given for forearm pronation"):
        compile_paths(invented(coordinates=only_elbow))
    broken = invented().model_dump(by_alias=True)["elements"]
    broken[1]["coefficients_m"] = [0.2]
    with pytest.raises(ValidationError, match="one: a coefficient for each row"):
        invented(elements=broken)
