"""Trunk and neck lumps: published arms, both sides alike, forces by measured torques."""

import json
import runpy
from pathlib import Path

import numpy as np
import pytest

from setwright.anatomy.atlas import parts
from setwright.mechanics.fibre import fibre_state, fibres
from setwright.mechanics.paths import load

SCRIPT = Path(__file__).parents[2] / "scripts" / "declare_lump_paths.py"
FILES = Path(__file__).parents[2] / "src" / "setwright" / "mechanics" / "paths"
REGIONS = ("trunk", "neck")


def pose(region, **deg):
    """One pose of a region; flexion=30 means trunk (or neck) flexion of 30 degrees."""
    last = [name.split(maxsplit=1)[1].replace(" ", "_") for name in load(region).coordinates]
    return np.radians([[deg.get(word, 0.0) for word in last]])


def state(region, **deg):
    """Element names, arms (M, C) in cm, fibre ratios (M,) and full pulls (M,) in N."""
    paths = load(region)
    lengths, arms = paths.evaluate(pose(region, **deg))
    found = fibre_state(lengths, fibres(paths))
    names = [e.element for e in paths.elements]
    return names, 100 * arms[0], found.ratio[0], found.force[0] * [e.f0_n for e in paths.elements]


def moment(region, coordinate, sense, **deg):
    _, arms, _, pull = state(region, **deg)
    column = load(region).coordinates.index(coordinate)
    return float((pull * np.maximum(sense * arms[:, column], 0)).sum()) / 100


def test_every_part_of_trunk_and_neck_is_there_on_both_sides():
    wanted = {
        "trunk": {
            "iliocostalis-lumborum",
            "longissimus-thoracis",
            "spinalis-thoracis",
            "multifidus",
            "quadratus-lumborum",
            "rectus-abdominis",
            "external-oblique",
            "internal-oblique",
            "transversus-abdominis",
        },
        "neck": {
            "sternocleidomastoid",
            "scalenes",
            "splenius",
            "semispinalis",
            "trapezius-upper",
            "levator-scapulae",
            "deep-neck-flexors",
        },
    }
    known = {p.id for p in parts()}
    for region in REGIONS:
        found = [e.part for e in load(region).elements]
        assert set(found) == wanted[region] <= known
        assert all(found.count(p) == 2 for p in wanted[region])


@pytest.mark.parametrize("region", REGIONS)
def test_left_is_right_in_a_mirror(region):
    paths = load(region)
    rng = np.random.default_rng(5)
    q = rng.uniform(paths.low_rad, paths.high_rad, (40, len(paths.coordinates)))
    mirror = np.array([1.0, -1.0, -1.0])
    lengths, arms = paths.evaluate(q)
    seen_lengths, seen_arms = paths.evaluate(q * mirror)
    names = [e.element for e in paths.elements]
    for name in names:
        if name.endswith("_r"):
            r, left = names.index(name), names.index(name[:-1] + "l")
            assert np.allclose(lengths[:, r], seen_lengths[:, left], atol=1e-8)
            assert np.allclose(arms[:, r], seen_arms[:, left] * mirror, atol=1e-7)


@pytest.mark.parametrize("region", REGIONS)
def test_arms_are_minus_the_slope_of_length_everywhere(region):
    paths = load(region)
    rng = np.random.default_rng(7)
    q = rng.uniform(paths.low_rad + 1e-3, paths.high_rad - 1e-3, (40, len(paths.coordinates)))
    arms = paths.evaluate(q)[1]
    for c in range(len(paths.coordinates)):
        step = np.eye(len(paths.coordinates))[c] * 1e-5
        slope = (paths.evaluate(q + step)[0] - paths.evaluate(q - step)[0]) / 2e-5
        assert np.abs(-slope - arms[:, :, c]).max() < 1e-8


@pytest.mark.parametrize(
    ("element", "low_cm", "high_cm"),
    [
        # Clinical Biomechanics 2005, rectus abdominis, women standing: 8.5 to 9.8 cm.
        ("rectus_abdominis_r", 8.5, 9.8),
        # Clinical Biomechanics 2001, erector spinae at L4-L5: about 5 to 6 cm (from memory).
        ("iliocostalis_lumborum_r", -6.0, -5.0),
        ("longissimus_thoracis_r", -6.0, -5.0),
    ],
)
def test_sagittal_arms_upright_are_as_published(element, low_cm, high_cm):
    names, arms, _, _ = state("trunk")
    assert low_cm <= arms[names.index(element), 0] <= high_cm


def test_obliques_turn_the_trunk_the_way_they_should():
    names, arms, _, _ = state("trunk")
    rotation = load("trunk").coordinates.index("trunk rotation")
    # The right external oblique turns to the left, the right internal oblique to the right.
    assert arms[names.index("external_oblique_r"), rotation] < -4
    assert arms[names.index("internal_oblique_r"), rotation] > 4
    names, arms, _, _ = state("neck")
    # The sternocleidomastoid turns the face to the other side, splenius to its own.
    assert arms[names.index("sternocleidomastoid_r"), 2] < 0 < arms[names.index("splenius_r"), 2]


@pytest.mark.parametrize(
    ("region", "coordinate", "sense", "torque_nm", "sd_nm"),
    [
        # Middle East Journal of Rehabilitation and Health 2019, article 91039.
        ("trunk", "trunk flexion", -1, 423, 178),
        ("trunk", "trunk flexion", 1, 325, 64),
        # Annals of Biomedical Engineering 2014, 10.1007/s10439-014-1046-0, nine men.
        ("neck", "neck flexion", -1, 51, 11),
        ("neck", "neck flexion", 1, 30, 6),
        ("neck", "neck side bend", 1, 32, 9),
    ],
)
def test_upright_torque_is_near_the_measured(region, coordinate, sense, torque_nm, sd_nm):
    assert moment(region, coordinate, sense) == pytest.approx(torque_nm, abs=2 * sd_nm)


def test_rotation_is_stronger_than_measured_by_a_known_amount():
    # Measured 74 (23) N m for the trunk and 13 (5) for the neck (sources above): every muscle that
    # could help at full activation gives half as much again, and twice as much, which nobody
    # reaches because the same muscles also bend.
    assert moment("trunk", "trunk rotation", 1) / 74 == pytest.approx(1.58, abs=0.1)
    assert moment("neck", "neck rotation", 1) / 13 == pytest.approx(1.93, abs=0.1)


def test_back_extension_is_strongest_somewhat_bent():
    # Strongest at 50 degrees of flexion (Journal of Spinal Disorders and Techniques 2002), or alike
    # from 0 to 92 (African Journal for Physical, Health Education, Recreation and Dance 2012).
    angles = list(range(-20, 61, 5))
    extension = [moment("trunk", "trunk flexion", -1, flexion=a) for a in angles]
    flexion = [moment("trunk", "trunk flexion", 1, flexion=a) for a in angles]
    best = angles[int(np.argmax(extension))]
    assert 20 <= best <= 50
    at = dict(zip(angles, extension, strict=True))
    assert min(at[0], at[45]) > 0.75 * max(extension)
    # Extension gains on flexion all the way; measured it more than doubled against it (the same
    # study), here it falls short of that.
    ratio = [e / f for e, f in zip(extension, flexion, strict=True)]
    assert (np.diff(ratio) > 0).all() and ratio[-1] > 1.7 * ratio[0]


def test_fibres_lengthen_the_way_they_should():
    names, _, upright, _ = state("trunk")
    _, _, bent, _ = state("trunk", flexion=40)
    _, _, arched, _ = state("trunk", flexion=-20)
    for name in ("iliocostalis_lumborum_r", "longissimus_thoracis_r", "multifidus_r"):
        i = names.index(name)
        assert arched[i] < upright[i] < bent[i] < 1.3
    i = names.index("rectus_abdominis_r")
    assert arched[i] > upright[i] > bent[i]
    # Relaxed multifidus sarcomeres are 2.27 um over 2.7 (Journal of Bone and Joint Surgery 2009,
    # 10.2106/JBJS.G.01311); working, they are shorter.
    relaxed = fibre_state(
        load("trunk").evaluate(pose("trunk"))[0], fibres(load("trunk")), "rigid"
    ).ratio[0]
    assert relaxed[names.index("multifidus_r")] == pytest.approx(2.27 / 2.7, abs=0.005)


def test_the_files_are_what_the_declarations_give():
    made = runpy.run_path(str(SCRIPT))
    for name in made["NAMES"]:
        assert (FILES / f"{name}.json").read_text() == made["text_of"](made["compose"](name))
        assert json.loads((FILES / f"{name}.json").read_text())["setwright"] == "paths/1"
