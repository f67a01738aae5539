"""The linkage and its outer moments: laws that hold for every body and posture."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.mechanics.body import Build, landmarks, segments
from setwright.mechanics.movement import ANGLES, Load, Movement
from setwright.mechanics.outer_moments import asked
from setwright.mechanics.points import places
from setwright.mechanics.skeleton import skeleton
from setwright.mechanics.statics import GRAVITY, Force, contact_forces, moments, weights, wrench

BODY = Build(1.77, 75.0, "male")
TURNING = [name for name in ANGLES if not name.startswith("other ")]


def posture(frames=1, **degrees):
    angles = {name: np.zeros(frames) for name in TURNING}
    for name, value in degrees.items():
        angles[name.replace("_", " ")] = np.full(frames, np.radians(value))
    return angles


def leg_machine(**fields):
    return Movement.model_validate(
        {
            "ends": ["leg"],
            "support": ["pelvis", "trunk"],
            "stretched": {"knee flexion": 100},
            "shortened": {"knee flexion": 10},
            "load": [{"kind": "torque", "about": "knee flexion", "sense": -1}],
            **fields,
        }
    )


def test_a_standing_body_is_as_tall_as_its_segments():
    body = skeleton(posture(), BODY)
    table = segments(BODY)
    ankle = body.placed["foot right"].joint[0]
    top = body.placed["head"].at(0.0, table["head"].length_m)[0]
    legs = table["thigh"].length_m + table["shank"].length_m
    trunk = sum(table[name].length_m for name in ("pelvis", "thorax", "head"))
    assert top[1] - ankle[1] == pytest.approx(legs + trunk)
    # The table's lengths and the ankle's height add up to the stature within three per cent.
    assert legs + trunk + landmarks(BODY).ankle_height_m == pytest.approx(BODY.stature_m, rel=0.03)


def test_the_weights_sum_to_the_body_mass():
    body = skeleton(posture(hip_flexion=40, arm_elevation=70, arm_plane=20), BODY)
    total = wrench(weights(body), 1)
    assert total[0, 1] == pytest.approx(-75.0 * GRAVITY)


@pytest.mark.parametrize(
    ("name", "degrees", "where"),
    [
        ("hip flexion", 90, (1, 0, 0)),  # the knee comes forward
        ("hip abduction", 90, (0, 0, 1)),  # the leg goes out to the right
        ("lean", 90, (0, 1, 0)),  # face down the leg of a straight body points back
    ],
)
def test_the_right_thigh_points_where_the_words_say(name, degrees, where):
    body = skeleton(posture(**{name.replace(" ", "_"): degrees}), BODY)
    thigh = body.placed["thigh right"]
    direction = (thigh.far - thigh.joint)[0] / thigh.length_m
    if name == "lean":
        assert direction == pytest.approx((-1, 0, 0), abs=1e-12)
    else:
        assert direction == pytest.approx(where, abs=1e-12)


def test_left_mirrors_right():
    body = skeleton(posture(hip_flexion=50, hip_abduction=20, hip_internal_rotation=-15,
                            knee_flexion=70, arm_elevation=80, arm_plane=35, arm_rotation=20,
                            elbow_flexion=60, forearm_pronation=40), BODY)  # fmt: skip
    for segment in ("thigh", "shank", "foot", "upper arm", "forearm", "hand"):
        right, left = body.placed[f"{segment} right"], body.placed[f"{segment} left"]
        assert left.centre == pytest.approx(right.centre * [1, 1, -1], abs=1e-12)


angle = st.floats(-60, 60)


@settings(derandomize=True, max_examples=40, deadline=None)
@given(
    hip=angle,
    out=st.floats(-20, 40),
    turn=st.floats(-30, 30),
    knee=st.floats(0, 120),
    lean=angle,
    trunk=st.floats(-20, 60),
    bend=st.floats(-30, 30),
    spin=st.floats(-40, 40),
)
def test_moments_are_the_work_of_a_small_turn(hip, out, turn, knee, lean, trunk, bend, spin):
    """Virtual work: the moment on a coordinate is the work of all forces in a small turn of it."""
    degrees = {
        "hip flexion": hip, "hip abduction": out, "hip internal rotation": turn,
        "knee flexion": knee, "lean": lean, "trunk flexion": trunk, "trunk side bend": bend,
        "trunk rotation": spin, "ankle dorsiflexion": 10.0,
    }  # fmt: skip
    angles = {n: np.radians([degrees.get(n, 0.0)]) for n in TURNING}
    push = np.array([[30.0, -200.0, 15.0]])

    def outer(turned):
        body = skeleton(turned, BODY)
        foot = places(body, "balls of the feet", BODY.stature_m)[0]
        hand = places(body, "hands", BODY.stature_m)[0]
        extra = [Force(p.segment, p.position, push) for p in (foot, hand)]
        return body, [*weights(body), *extra]

    body, forces = outer(angles)
    found = moments(body, angles, forces, np.zeros((1, 3, 3)))
    step = 1e-6
    for name in (
        "hip flexion",
        "hip abduction",
        "hip internal rotation",
        "knee flexion",
        "ankle dorsiflexion",
        "trunk flexion",
        "trunk side bend",
        "trunk rotation",
    ):
        work = 0.0
        for sign in (1, -1):
            moved = {**angles, name: angles[name] + sign * step}
            _, there = outer(moved)
            work += sign * sum(float((f.force * f.position).sum()) for f in there)
        # Only the right leg turns with its coordinates' own sign; the left one is its mirror.
        if name.startswith("trunk"):
            assert found[name][0] == pytest.approx(work / (2 * step), abs=1e-3)
        else:
            right = _work_of_right_leg(outer, angles, name, step)
            assert found[name][0] == pytest.approx(right, abs=1e-3)


def _work_of_right_leg(outer, angles, name, step):
    work = 0.0
    for sign in (1, -1):
        _, there = outer({**angles, name: angles[name] + sign * step})
        work += sign * sum(
            float((f.force * f.position).sum())
            for f in there
            if f.segment in ("thigh right", "shank right", "foot right")
        )
    return work / (2 * step)


def test_two_contacts_carry_a_weight_as_a_beam_does():
    body = skeleton(posture(), BODY)
    heels = places(body, "heels", BODY.stature_m)
    balls = places(body, "balls of the feet", BODY.stature_m)
    forces, left = contact_forces([*heels, *balls], wrench(weights(body), 1))
    assert np.abs(left).max() < 1e-6
    upward = [f.force[0, 1] for f in forces]
    assert sum(upward) == pytest.approx(75 * GRAVITY)
    assert upward[0] == pytest.approx(upward[1])
    # Lever rule about the heels: the balls carry what lies ahead of the heels.
    centre = sum(o.mass_kg * o.centre[0, 0] for o in body.placed.values()) / 75.0
    heel, ball = heels[0].position[0, 0], balls[0].position[0, 0]
    assert 2 * upward[2] == pytest.approx(75 * GRAVITY * (centre - heel) / (ball - heel))


def test_a_torque_machine_asks_for_its_torque_and_nothing_else():
    found = asked(leg_machine(), BODY, 5)
    assert found.unit == "N·m"
    # Each of two legs takes half; the machine pushes the knee towards bending.
    assert found.load["knee flexion"] == pytest.approx(np.full(5, 0.5))
    assert all(np.abs(v).max() == 0 for k, v in found.load.items() if k != "knee flexion")


@settings(derandomize=True, max_examples=20, deadline=None)
@given(size=st.floats(0.85, 1.2), mass=st.floats(0.6, 1.6))
def test_scaling_a_body_scales_its_moments(size, mass):
    """Moments of the own weight grow with mass times length, those of a load with length."""
    hinge = Movement(
        ends=("leg",),
        support=("pelvis",),
        hold={"lean": 60, "arm elevation": 60, "arm plane": 90},
        stretched={"hip flexion": 80, "knee flexion": 20},
        shortened={"hip flexion": 10},
        load=(Load(kind="weight", at="hands"),),
    )
    one = asked(hinge, Build(1.7, 70.0), 4)
    other = asked(hinge, Build(1.7 * size, 70.0 * mass), 4)
    for name in ("hip flexion", "knee flexion", "trunk flexion", "elbow flexion"):
        assert other.own[name] == pytest.approx(one.own[name] * size * mass, rel=1e-9, abs=1e-9)
        assert other.load[name] == pytest.approx(one.load[name] * size, rel=1e-9, abs=1e-9)
