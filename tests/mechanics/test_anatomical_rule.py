"""Properties of the rule, whatever the movement."""

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.anatomy.atlas import index, parts
from setwright.anatomy.joints import ACTIONS, OPPOSITE
from setwright.mechanics.anatomical_rule import LEAST, LOAD_OVER_RANGE, Asked, Body

BODY = Body(parts())
angle = st.floats(-180, 180)
asked = st.builds(Asked, st.sampled_from(ACTIONS), st.floats(0, 1), angle, angle)
movements = st.lists(asked, min_size=1, max_size=5, unique_by=lambda one: one.action)
hardest = st.sampled_from(sorted(LOAD_OVER_RANGE))
bounded = settings(derandomize=True, max_examples=150, deadline=None)


@bounded
@given(movements, hardest, st.floats(0, 1))
def test_shares_and_stretch_stay_between_nothing_and_all(movement, where, trunk):
    worked = BODY.work(movement, {}, where, trunk)
    assert ((worked.shares == 0) | (worked.shares >= LEAST)).all()
    assert (worked.shares <= 1).all()
    assert ((worked.stretch >= 0) & (worked.stretch <= 1)).all()
    assert (worked.stretch[worked.shares == 0] == 0).all()
    assert (worked.spread > 0).all()


@bounded
@given(asked, hardest, st.floats(0, 1))
def test_more_demand_never_lowers_an_agonist(one, where, more):
    raised = Asked(one.action, one.demand + (1 - one.demand) * more, one.stretched, one.shortened)
    before = BODY.work([one], {}, where, 0).shares
    after = BODY.work([raised], {}, where, 0).shares
    assert (after >= before - 1e-12).all()


@bounded
@given(st.sampled_from(sorted(OPPOSITE)), st.floats(0, 1), hardest)
def test_an_opposing_demand_never_helps_a_part_that_only_does_the_other(action, demand, where):
    alone = [Asked(action, 1.0, 0, 0)]
    both = [*alone, Asked(OPPOSITE[action], demand, 0, 0)]
    only = np.array(
        [action in one.actions and OPPOSITE[action] not in one.actions for one in parts()]
    )
    before, after = (BODY.work(ask, {}, where, 0).shares[only] for ask in (alone, both))
    assert (after <= before + 1e-12).all()


@bounded
@given(st.floats(0, 1), st.floats(0, 1))
def test_conflict_mirrors_over_hip_and_knee(hip, knee):
    row = index()
    squat = [Asked("hip extension", hip, 0, 0), Asked("knee extension", knee, 0, 0)]
    mirror = [Asked("hip flexion", hip, 0, 0), Asked("knee flexion", knee, 0, 0)]
    up, down = (BODY.work(ask, {}, "even", 0).shares for ask in (squat, mirror))
    lone_knee = BODY.work(squat[1:], {}, "even", 0).shares
    lone_bend = BODY.work(mirror[1:], {}, "even", 0).shares
    assert up[row["rectus-femoris"]] <= lone_knee[row["rectus-femoris"]] + 1e-12
    assert down[row["semitendinosus"]] <= lone_bend[row["semitendinosus"]] + 1e-12


def test_the_bent_knee_starves_gastrocnemius_but_not_soleus():
    raise_ = [Asked("ankle plantarflexion", 1.0, 25, -35)]
    straight = BODY.work(raise_, {"knee flexion": 0}, "stretched", 0).shares
    bent = BODY.work(raise_, {"knee flexion": 90}, "stretched", 0).shares
    row = index()
    assert straight[row["gastrocnemius-medial"]] > 0.8
    assert bent[row["gastrocnemius-medial"]] < 0.4
    assert bent[row["soleus"]] == straight[row["soleus"]] > 0.8


def test_arm_overhead_stretches_the_long_head():
    press = [Asked("elbow extension", 1.0, 120, 5)]
    over = BODY.work(press, {"shoulder flexion": 170}, "even", 0).stretch
    side = BODY.work(press, {}, "even", 0).stretch
    row = index()
    assert over[row["triceps-long-head"]] > side[row["triceps-long-head"]] + 0.2
    assert over[row["triceps-lateral-head"]] == side[row["triceps-lateral-head"]]
