"""Rotation vectors: logarithm, exponential and their derivatives."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.mechanics.rotation import (
    inverse_left_jacobian,
    left_jacobian,
    rotation_matrix,
    rotation_vector,
)

COMPONENT = st.floats(-1.75, 1.75, allow_nan=False)
VECTOR = st.tuples(COMPONENT, COMPONENT, COMPONENT).map(np.array)
SETTINGS = settings(derandomize=True, max_examples=80, deadline=None)


@SETTINGS
@given(VECTOR)
def test_a_vector_survives_the_way_through_the_matrix(vector):
    matrix = rotation_matrix(vector)
    assert np.allclose(matrix @ matrix.T, np.eye(3), atol=1e-12)
    assert np.linalg.det(matrix) == pytest.approx(1.0)
    assert np.allclose(rotation_vector(matrix), vector, atol=1e-9)


@SETTINGS
@given(VECTOR, VECTOR)
def test_a_small_turn_in_front_changes_the_vector_as_the_jacobian_says(vector, turn):
    h = 1e-5
    ahead = rotation_vector(rotation_matrix(h * turn) @ rotation_matrix(vector))
    behind = rotation_vector(rotation_matrix(-h * turn) @ rotation_matrix(vector))
    change = (ahead - behind) / (2 * h)
    assert np.allclose(change, inverse_left_jacobian(vector) @ turn, atol=1e-6)


@SETTINGS
@given(VECTOR, st.sampled_from([1.0, 1e-2, 1e-4, 1e-6, 0.0]))
def test_the_two_jacobians_undo_each_other_down_to_no_rotation(vector, size):
    both = left_jacobian(size * vector) @ inverse_left_jacobian(size * vector)
    assert np.allclose(both, np.eye(3), atol=1e-9)


def test_a_quarter_turn_about_the_upward_axis():
    matrix = rotation_matrix(np.array([0.0, np.pi / 2, 0.0]))
    assert np.allclose(matrix @ [0, 0, 1], [1, 0, 0], atol=1e-12)


def test_many_at_once_are_what_one_at_a_time_is():
    vectors = np.random.default_rng(3).uniform(-1.5, 1.5, (4, 5, 3))
    matrices = rotation_matrix(vectors)
    assert matrices.shape == (4, 5, 3, 3)
    assert np.allclose(matrices[2, 3], rotation_matrix(vectors[2, 3]))
    assert np.allclose(rotation_vector(matrices), vectors)


def test_a_half_turn_is_refused():
    with pytest.raises(ValueError, match="half turn"):
        rotation_vector(np.diag([1.0, -1.0, -1.0]))
