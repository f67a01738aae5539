"""What every coach knows of exercises must come out of the mechanics (common practice)."""

from functools import cache

import pytest

from setwright.exercises.movements import movement
from setwright.mechanics.body import Build
from setwright.mechanics.effort import effort
from setwright.mechanics.growth import share_of

# A part that works less than this beside the hardest one comes out short.
SHORT = 0.6
FULL = 0.8


@cache
def work(exercise):
    return share_of(effort(movement(exercise), Build()))


def share(exercise, part):
    found = work(exercise).get(part)
    return found.share if found else 0.0


@pytest.mark.parametrize("squat", ["back-squat", "front-squat", "goblet-squat", "smith-squat"])
def test_a_squat_leaves_parts_short(squat):
    assert share(squat, "vastus-lateralis") > FULL
    for part in ("gluteus-medius-anterior", "gluteus-medius-posterior", "gluteus-minimus"):
        assert share(squat, part) < 0.3, part
    for part in ("rectus-femoris", "adductor-longus", "adductor-brevis"):
        assert share(squat, part) < SHORT, part


@pytest.mark.parametrize("hinge", ["romanian-deadlift", "stiff-leg-deadlift", "good-morning"])
def test_a_hinge_leaves_parts_short(hinge):
    assert share(hinge, "semitendinosus") > FULL
    for part in ("gluteus-medius-anterior", "gluteus-medius-posterior", "gluteus-minimus",
                 "adductor-longus", "adductor-brevis", "biceps-femoris-short-head"):  # fmt: skip
        assert share(hinge, part) < SHORT, part
        assert share(hinge, part) < 0.65 * share(hinge, "semitendinosus"), part


@pytest.mark.parametrize("part", ["adductor-longus", "adductor-brevis"])
@pytest.mark.parametrize("exercise", ["hip-adduction-machine", "cable-hip-adduction"])
def test_adduction_work_fills_the_short_adductors(exercise, part):
    assert share(exercise, part) > FULL


@pytest.mark.parametrize(
    "part", ["gluteus-medius-anterior", "gluteus-medius-posterior", "gluteus-minimus"]
)
@pytest.mark.parametrize("exercise", ["cable-hip-abduction", "side-lying-hip-abduction"])
def test_abduction_work_fills_the_small_glutes(exercise, part):
    assert share(exercise, part) > FULL


@pytest.mark.parametrize("curl", ["seated-leg-curl", "lying-leg-curl"])
def test_a_leg_curl_fills_the_short_head(curl):
    assert share(curl, "biceps-femoris-short-head") > 0.75


def test_a_reverse_nordic_loads_rectus_femoris_longer_than_a_seated_extension():
    long, short = work("reverse-nordic")["rectus-femoris"], work("leg-extension")["rectus-femoris"]
    assert long.share > FULL
    assert long.loaded_ratio > short.loaded_ratio + 0.3


def test_a_straight_knee_favours_gastrocnemius():
    standing, seated = work("standing-calf-raise"), work("seated-calf-raise")
    for head in ("gastrocnemius-medial", "gastrocnemius-lateral"):
        assert standing[head].share > standing["soleus"].share
        assert seated[head].share < seated["soleus"].share
        assert standing[head].loaded_ratio > seated[head].loaded_ratio + 0.15


def test_a_roll_out_loads_the_abdominals_hardest_where_they_are_long():
    along = work("ab-wheel-roll-out")["rectus-abdominis"]
    assert along.share > FULL
    assert along.activation.argmax() == 0
    assert along.ratio.argmax() == 0


def test_a_hip_thrust_loads_the_glutes_short_where_a_squat_loads_them_long():
    thrust, squat = work("hip-thrust"), work("back-squat")
    for part in ("gluteus-maximus-upper", "gluteus-maximus-middle", "gluteus-maximus-lower"):
        assert thrust[part].share > FULL
        assert squat[part].share > FULL
        assert thrust[part].loaded_ratio < squat[part].loaded_ratio
