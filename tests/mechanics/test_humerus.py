"""Where the upper arm points and the forearm with it."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.mechanics.humerus import arm_angles, arm_words, humerus_orientation

FORWARD, UP, RIGHT = np.eye(3)


def held(plane, elevation, axial):
    return humerus_orientation(*np.radians([plane, elevation, axial]))


def upper_arm(*deg):
    return held(*deg) @ [0, -1, 0]


def forearm(*deg):
    """The forearm with the elbow bent to a right angle."""
    return held(*deg) @ [1, 0, 0]


@pytest.mark.parametrize(
    ("posture", "arm", "fore"),
    [
        ((0, 0, 0), -UP, FORWARD),
        ((60, 0, 0), -UP, FORWARD),
        ((0, 0, 90), -UP, -RIGHT),
        ((0, 90, 0), RIGHT, FORWARD),
        ((0, 90, -90), RIGHT, UP),
        ((0, 90, 90), RIGHT, -UP),
        ((90, 90, 0), FORWARD, UP),
        ((90, 90, 90), FORWARD, -RIGHT),
        ((90, 180, 0), UP, -FORWARD),
        ((-90, 45, 0), (-FORWARD - UP) / np.sqrt(2), (FORWARD - UP) / np.sqrt(2)),
    ],
)
def test_directions_of_upper_arm_and_forearm(posture, arm, fore):
    assert np.allclose(upper_arm(*posture), arm, atol=1e-12)
    assert np.allclose(forearm(*posture), fore, atol=1e-12)


@settings(derandomize=True, max_examples=60, deadline=None)
@given(st.floats(-1.6, 2.3), st.floats(0.05, 3.0), st.floats(-2.0, 2.0))
def test_the_angles_come_back(plane, elevation, axial):
    found = arm_angles(humerus_orientation(plane, elevation, axial))
    assert np.allclose(found, [plane, elevation, axial], atol=1e-6)


def test_the_plane_says_nothing_about_a_hanging_arm():
    planes = humerus_orientation(np.radians([-90, 0, 45, 130]), 0.0, 0.4)
    assert np.allclose(planes, planes[0])


def test_words_for_messages():
    words = arm_words(held(30, 75, -10))
    assert "75 degrees up in plane 30" in words
    assert "turned in by -10" in words
