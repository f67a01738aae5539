"""What the muscles of the shoulder do, against published moment arms."""

import numpy as np
import pytest

from setwright.mechanics.shoulder import elements, humerus_orientation, lengths_and_arms

NAMES = [element.element for element in elements()]
CUFF_AND_DELTOID = [
    n for n in NAMES if n.startswith(("Infra", "Supra", "Subsc", "TeresMin", "Delt"))
]


def arms(plane, elevation, axial, axis):
    """Arms (N, M), cm, about an axis of the thorax or LONG, the blade in its usual rhythm."""
    plane, elevation, axial = np.broadcast_arrays(
        *(np.asarray(a, dtype=float) for a in (plane, elevation, axial))
    )
    blade = np.radians(np.stack([0 * plane, 0 * plane, elevation / 3], axis=-1))
    arm = humerus_orientation(*np.radians([plane, elevation, axial]))
    _, _, humeral = lengths_and_arms(blade, arm)
    about = arm[:, :, 1] if axis is LONG else np.broadcast_to(axis, (len(blade), 3))
    return 100 * np.einsum("nmk,nk->nm", humeral, about)


ABDUCTION = np.array([-1.0, 0, 0])
FLEXION = np.array([0, 0, 1.0])
ACROSS = np.array([0, 1.0, 0])
LONG = None  # the long axis of the humerus itself


def mean(found):
    return dict(zip(NAMES, found.mean(axis=0), strict=True))


@pytest.fixture(scope="module")
def abduction():
    return arms(0, np.arange(10, 121, 10), -30, ABDUCTION)


@pytest.fixture(scope="module")
def flexion():
    return arms(90, np.arange(10, 121, 10), 20, FLEXION)


# Moment arms of the muscles crossing the anatomical shoulder, Journal of Anatomy, 2008 (abstract).


def test_middle_deltoid_abducts_at_every_angle(abduction):
    assert abduction[:, NAMES.index("DeltoideusScapula_M")].min() > 2


def test_the_best_abductors_are_middle_and_anterior_deltoid(abduction):
    found = mean(abduction)
    best = sorted(found, key=found.__getitem__)[-2:]
    assert set(best) == {"DeltoideusScapula_M", "DeltoideusClavicle_A"}


@pytest.mark.parametrize(
    "name",
    [
        "TeresMajor",
        "LatissimusDorsi_M",
        "LatissimusDorsi_I",
        "PectoralisMajorThorax_M",
        "PectoralisMajorThorax_I",
    ],
)
def test_adductors(abduction, name):
    assert mean(abduction)[name] < -0.5


@pytest.mark.parametrize(
    "name",
    ["PectoralisMajorClavicle_S", "Supraspinatus_A", "Supraspinatus_P", "DeltoideusClavicle_A"],
)
def test_flexors(name):
    assert mean(arms(90, np.arange(10, 81, 10), 20, FLEXION))[name] > 0.8


@pytest.mark.parametrize("name", ["TeresMajor", "DeltoideusScapula_P", "LatissimusDorsi_M"])
def test_extensors(flexion, name):
    assert mean(flexion)[name] < -1.5


def test_pectoralis_flexes_above_and_extends_below(flexion):
    found = mean(flexion)
    assert (
        found["PectoralisMajorClavicle_S"]
        > found["PectoralisMajorThorax_M"]
        > found["PectoralisMajorThorax_I"]
    )
    assert abs(found["PectoralisMajorThorax_M"]) < 1
    assert found["PectoralisMajorThorax_I"] < -1


# Moment arms of the shoulder muscles during axial rotation, Journal of Orthopaedic Research, 2011,
# 10.1002/jor.21269 (abstract): peaks of 24.4 and 27.0 mm inwards (lower subscapularis), 28.3 and
# 23.3 (lower infraspinatus), 26.5 and 22.1 mm outwards (teres minor) in abduction and flexion.


@pytest.mark.parametrize(
    ("name", "sense", "in_abduction", "in_flexion"),
    [
        ("Subscapularis_I", 1, 2.44, 2.70),
        ("Infraspinatus_I", -1, 2.83, 2.33),
        ("TeresMinor", -1, 2.65, 2.21),
    ],
)
def test_peak_arms_of_the_rotators(name, sense, in_abduction, in_flexion):
    row = NAMES.index(name)
    turns = [-40, -20, 0, 20, 40]
    for plane, shift, peak in ((0, -10, in_abduction), (90, 40, in_flexion)):
        angles = [(up, shift + turn) for up in (10, 30, 60, 90) for turn in turns]
        up, turn = np.array(angles).T
        highest = (sense * arms(np.full(len(up), plane), up, turn, LONG)[:, row]).max()
        assert highest == pytest.approx(peak, abs=0.8)


def test_latissimus_and_pectoralis_turn_the_hanging_arm_in():
    found = mean(arms(0, [5.0, 15.0], 0, LONG))
    for name in NAMES:
        if name.startswith(("LatissimusDorsi", "PectoralisMajor")):
            assert found[name] > -0.05
    assert found["PectoralisMajorThorax_M"] > 0.5


def test_supraspinatus_turns_out_in_abduction_and_in_in_flexion():
    for name in ("Supraspinatus_A", "Supraspinatus_P"):
        row = NAMES.index(name)
        assert arms(0, [60.0, 80.0], -10, LONG)[:, row].max() < 0.1
        assert arms(90, [60.0, 80.0], 40, LONG)[:, row].min() > 0.1


# Shoulder muscle moment arms during horizontal flexion and elevation, Journal of Shoulder and Elbow
# Surgery, 1997, 6, 429-439 (abstract).


def test_across_the_body_pectoralis_leads_and_posterior_deltoid_and_infraspinatus_oppose():
    found = mean(arms(np.arange(0, 101, 20), 85, 20, ACROSS))
    studied = [
        n for n in NAMES if n in CUFF_AND_DELTOID or n.startswith(("Pect", "Lat", "TeresMaj"))
    ]
    studied = [n for n in studied if n != "PectoralisMinor"]
    ranked = sorted(studied, key=found.__getitem__)
    assert ranked[-1] == "PectoralisMajorClavicle_S"
    assert ranked[0] == "DeltoideusScapula_P"
    assert min(found["Infraspinatus_S"], found["Infraspinatus_I"]) < -1


# Textbook actions of the muscles of the blade (common practice): +1 raises the coordinate
# (protraction, elevation, upward rotation), 0 is not asked.


@pytest.mark.parametrize(
    ("name", "actions"),
    [
        ("TrapeziusClavicle_S", (-1, 1, 1)),
        ("TrapeziusScapula_S", (-1, 1, 1)),
        ("TrapeziusScapula_M", (-1, 0, 1)),
        ("TrapeziusScapula_I", (-1, -1, 1)),
        ("Rhomboideus_S", (-1, 1, 0)),
        ("Rhomboideus_I", (-1, 1, -1)),
        ("LevatorScapulae", (0, 1, -1)),
        ("SerratusAnterior_S", (1, 0, 0)),
        ("SerratusAnterior_M", (1, 0, 1)),
        ("SerratusAnterior_I", (1, -1, 1)),
        ("PectoralisMinor", (1, -1, -1)),
        ("LatissimusDorsi_M", (-1, -1, -1)),
    ],
)
@pytest.mark.parametrize("upward", [0, 15, 30])
def test_actions_on_the_blade(name, actions, upward):
    arm = humerus_orientation(*np.radians([[30], [15 + 2 * upward], [0]]))
    _, scapular, _ = lengths_and_arms(np.radians([[0, 0, upward]]), arm)
    for arm_m, sense in zip(scapular[0, NAMES.index(name)], actions, strict=True):
        if sense:
            assert sense * arm_m > 0.01
