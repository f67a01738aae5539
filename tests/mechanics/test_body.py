"""Segments from stature, mass and sex."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.mechanics.body import (
    Build,
    landmark_names,
    landmarks,
    segment_names,
    segments,
)

builds = st.builds(
    Build,
    stature_m=st.floats(1.4, 2.1),
    mass_kg=st.floats(40, 180),
    sex=st.sampled_from(["male", "female"]),
)
steady = settings(derandomize=True, max_examples=50, deadline=None)


@steady
@given(builds)
def test_masses_of_both_sides_sum_to_the_body_mass(build):
    total = sum(s.mass_kg * (2 if s.pair else 1) for s in segments(build).values())
    assert total == pytest.approx(build.mass_kg)


@steady
@given(builds, st.floats(1.01, 1.2))
def test_lengths_follow_stature_and_masses_follow_mass(build, factor):
    taller = Build(build.stature_m * factor, build.mass_kg, build.sex)
    heavier = Build(build.stature_m, build.mass_kg * factor, build.sex)
    for name, segment in segments(build).items():
        assert segments(taller)[name].length_m == pytest.approx(segment.length_m * factor)
        assert segments(taller)[name].mass_kg == pytest.approx(segment.mass_kg)
        assert segments(heavier)[name].mass_kg == pytest.approx(segment.mass_kg * factor)
        assert segments(heavier)[name].length_m == segment.length_m
    assert landmarks(taller).ball_ahead_of_ankle_m == pytest.approx(
        landmarks(build).ball_ahead_of_ankle_m * factor
    )


@steady
@given(builds, st.sampled_from(segment_names()), st.floats(0.8, 1.25))
def test_a_factor_changes_one_length_and_nothing_else(build, name, factor):
    changed = segments(Build(build.stature_m, build.mass_kg, build.sex, {name: factor}))
    for other, segment in segments(build).items():
        assert changed[other].mass_kg == segment.mass_kg
        expected = segment.length_m * (factor if other == name else 1.0)
        assert changed[other].length_m == pytest.approx(expected)


@steady
@given(builds)
def test_the_segments_stack_up_to_about_the_stature(build):
    part = segments(build)
    stack = sum(part[n].length_m for n in ("head", "thorax", "pelvis", "thigh", "shank"))
    stack += landmarks(build).ankle_height_m
    # The joints do not lie on one straight line, so the pieces may sum to a little more.
    assert build.stature_m * 0.98 < stack < build.stature_m * 1.03


def test_widths_take_factors_too():
    wide = landmarks(Build(lengths={"hip half breadth": 1.1}))
    usual = landmarks(Build())
    assert wide.hip_half_breadth_m == pytest.approx(1.1 * usual.hip_half_breadth_m)
    assert wide.shoulder_half_breadth_m == usual.shoulder_half_breadth_m
    assert "hip half breadth" in landmark_names()


@pytest.mark.parametrize(
    ("sex", "stature_m", "segment", "length_m"),
    # Adjusted photogrammetric table, Journal of Biomechanics 2007,
    # 10.1016/j.jbiomech.2006.02.013: mean lengths at mean statures.
    [
        ("male", 1.77, "thigh", 0.432),
        ("male", 1.77, "shank", 0.433),
        ("male", 1.77, "upper arm", 0.271),
        ("male", 1.77, "forearm", 0.253),
        ("male", 1.77, "thorax", 0.477),
        ("female", 1.61, "thigh", 0.379),
        ("female", 1.61, "shank", 0.388),
        ("female", 1.61, "pelvis", 0.107),
        ("female", 1.61, "foot", 0.233),
    ],
)
def test_published_mean_lengths_return(sex, stature_m, segment, length_m):
    found = segments(Build(stature_m, 70, sex))[segment].length_m
    assert found == pytest.approx(length_m, abs=0.0006)


def test_other_published_tables_are_near():
    # Gamma-scan table, Journal of Biomechanics 1996, 10.1016/0021-9290(95)00178-6, male:
    # thigh 0.1416, shank 0.0433, upper arm 0.0271, forearm 0.0162, whole trunk 0.4346.
    part = segments(Build(1.77, 100, "male"))
    assert part["thigh"].mass_kg == pytest.approx(14.16, abs=2.0)
    assert part["shank"].mass_kg == pytest.approx(4.33, abs=0.4)
    assert part["upper arm"].mass_kg == pytest.approx(2.71, abs=0.4)
    assert part["forearm"].mass_kg == pytest.approx(1.62, abs=0.3)
    # The 2007 trunk and pelvis reach lower at the hip and higher at the neck.
    assert part["thorax"].mass_kg + part["pelvis"].mass_kg == pytest.approx(43.5, abs=5.0)


def test_what_is_no_build_is_refused():
    with pytest.raises(ValueError, match="thihg"):
        Build(lengths={"thihg": 1.1})
    with pytest.raises(ValueError, match="positive"):
        Build(mass_kg=0)
    with pytest.raises(ValueError, match="thigh"):
        Build(lengths={"thigh": 0})
