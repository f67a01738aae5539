"""Joint torques against angle: what was measured and what the muscles' figures give."""

import runpy
from pathlib import Path

import numpy as np
import pytest

from setwright.anatomy.joints import SENSE
from setwright.mechanics.paths import load
from setwright.mechanics.strength import capacity, capacity_curve, torques

ROOT = Path(__file__).parents[2]


def measured(action, source, sex=None):
    return next(
        m
        for m in torques().measured
        if m.action == action and m.source == source and sex in (None, m.sex)
    )


def model_peak(one, **posture_deg):
    posture = {name.replace("_", " "): deg for name, deg in posture_deg.items()}
    angles, moments = capacity_curve(one, posture or None)
    return float(angles[moments.argmax()])


def test_every_torque_has_a_source_and_a_model_to_hold_it_against():
    file = torques()
    for one in file.measured:
        assert one.source in file.sources
        angles, moments = capacity_curve(one)
        assert len(angles) == len(moments) and (moments >= 0).all() and moments.max() > 0
    assert {m.source for m in file.measured} == set(file.sources)


@pytest.mark.parametrize(
    ("action", "sex", "angle_deg", "torque_nm"),
    # Journal of Biomechanics 2007, 10.1016/j.jbiomech.2007.03.022, worked out for 75 kg and 1.77 m
    # (men), 61 kg and 1.65 m (women).
    [
        ("hip extension", "male", 60, 208),
        ("knee extension", "male", 60, 211),
        ("knee extension", "female", 90, 147),
        ("knee flexion", "male", 45, 110),
        ("ankle plantarflexion", "male", 0, 104),
        ("ankle dorsiflexion", "female", 10, 23),
    ],
)
def test_published_curves_return(action, sex, angle_deg, torque_nm):
    body = (75, 1.77) if sex == "male" else (61, 1.65)
    found = measured(action, "lower-limb-2007", sex).torque(np.array([angle_deg]), *body)[0]
    assert found == pytest.approx(torque_nm, abs=1.0)


@pytest.mark.parametrize(
    ("action", "source", "sex"),
    [
        ("hip extension", "lower-limb-2007", "male"),
        ("hip extension", "lower-limb-2007", "female"),
        ("knee extension", "lower-limb-2007", "male"),
        ("knee extension", "knee-1990", "both"),
        ("ankle plantarflexion", "lower-limb-2007", "male"),
        ("ankle plantarflexion", "lower-limb-2007", "female"),
        ("ankle dorsiflexion", "lower-limb-2007", "male"),
        ("ankle dorsiflexion", "lower-limb-2007", "female"),
        ("elbow flexion", "elbow-1993", "male"),
        ("elbow flexion", "elbow-1993", "female"),
        ("wrist flexion", "wrist-1996", "male"),
    ],
)
def test_the_strongest_angle_is_within_15_degrees(action, source, sex):
    one = measured(action, source, sex)
    assert model_peak(one) == pytest.approx(one.best_deg(), abs=15.5)


@pytest.mark.parametrize(
    ("action", "sex", "off_deg"),
    # Known misses, in degrees too bent, held so that a change is noticed: knee flexion 16 to 22
    # (the hip's posture in the study was not read), women's knee extension 18 too straight. Hip
    # flexion is left out: two studies (2007 above and Isokinetics and Exercise Science 2024,
    # 10.3233/IES-240003) put its peak at opposite ends of the range.
    [
        ("knee flexion", "male", 22),
        ("knee flexion", "female", 16),
        ("knee extension", "female", -22),
    ],
)
def test_known_misses_stay_what_they_are(action, sex, off_deg):
    one = measured(action, "lower-limb-2007", sex)
    assert model_peak(one) - one.best_deg() == pytest.approx(off_deg, abs=3)


@pytest.mark.parametrize(
    ("action", "worst"),
    [
        ("hip extension", 0.15),
        ("ankle plantarflexion", 0.11),
        ("ankle dorsiflexion", 0.11),
        ("knee flexion", 0.28),
        ("knee extension", 0.31),
    ],
)
def test_the_shape_follows_the_published_curve(action, worst):
    # Torque over its own peak at any angle of the range, men of the 2007 study.
    one = measured(action, "lower-limb-2007", "male")
    angles, moments = capacity_curve(one)
    published = one.torque(angles, 75, 1.77)
    apart = np.abs(published / published.max() - moments / moments.max())
    assert apart.max() < worst


def test_a_bent_hip_makes_the_hamstrings_stronger_and_leaves_the_quadriceps():
    # Isometric knee flexion at 45 degrees weakest at 0 and strongest at 90 degrees of hip flexion,
    # quadriceps torque alike (Journal of Athletic Training 2012, 47, 390).
    leg = load("leg")
    poses = np.zeros((4, len(leg.coordinates)))
    poses[:, leg.coordinates.index("hip flexion")] = np.radians([0, 30, 60, 90])
    poses[:, leg.coordinates.index("knee flexion")] = np.radians(45)
    flexion = capacity(leg, "knee flexion", 1, poses)
    assert flexion[0] == flexion.min() and flexion[3] == flexion.max()
    extension = capacity(leg, "knee flexion", -1, poses)
    assert extension.min() > 0.75 * extension.max()


def test_a_tendon_that_gives_brings_the_knee_nearer_to_what_was_measured():
    one = measured("knee extension", "knee-1990")
    leg = load("leg")
    coordinate, sense = SENSE[one.action]
    angles = np.arange(10, 106)
    poses = np.zeros((len(angles), len(leg.coordinates)))
    poses[:, leg.coordinates.index("hip flexion")] = np.radians(85)
    poses[:, leg.coordinates.index(coordinate)] = np.radians(angles)
    best = {
        tendon: angles[capacity(leg, coordinate, sense, poses, tendon).argmax()]
        for tendon in ("rigid", "elastic")
    }
    assert abs(best["elastic"] - 57) + 5 < abs(best["rigid"] - 57)


def test_the_page_is_what_the_script_writes():
    made = runpy.run_path(str(ROOT / "scripts" / "strength_curves.py"))
    assert (ROOT / "docs" / "strength-curves.md").read_text(encoding="utf-8") == made["text"]()
