"""The atlas is whole, and a coach's words find their parts."""

import pytest

from setwright.anatomy.atlas import index, muscles, part, parts, resolve
from setwright.anatomy.joints import ACTIONS


def test_at_least_sixty_parts_with_ids_of_their_own():
    ids = [one.id for one in parts()]
    assert len(ids) >= 60
    assert len(set(ids)) == len(ids)
    assert [index()[ident] for ident in ids] == list(range(len(ids)))


def test_every_action_has_an_agent():
    done = {action for one in parts() for action in one.actions}
    assert done == set(ACTIONS)


def test_muscles_and_parts_belong_together():
    assert {one.muscle for one in parts()} == set(muscles())


def test_leverages_are_shares_and_every_trained_part_has_a_strong_one():
    for one in parts():
        assert all(0 < value <= 1 for value in one.actions.values()), one.id
        if one.trained_directly:
            assert max(one.actions.values()) >= 0.6, one.id


def test_two_joint_parts_lengthen_in_opposite_senses():
    assert part("rectus-femoris").stretch["knee flexion"] > 0
    assert part("rectus-femoris").stretch["hip flexion"] < 0
    for head in ("biceps-femoris-long-head", "semitendinosus", "semimembranosus"):
        assert part(head).stretch["knee flexion"] < 0 < part(head).stretch["hip flexion"]
    assert part("gastrocnemius-medial").stretch["knee flexion"] < 0
    assert part("gastrocnemius-medial").stretch["ankle dorsiflexion"] > 0


@pytest.mark.parametrize(
    "word",
    (
        "chest",
        "back",
        "lats",
        "traps",
        "shoulders",
        "arms",
        "biceps",
        "triceps",
        "forearms",
        "quads",
        "hamstrings",
        "glutes",
        "adductors",
        "calves",
        "abs",
        "neck",
        "legs",
        "core",
        "upper back",
        "side delts",
        "rear delts",
        "front delts",
        "lower back",
        "upper chest",
    ),
)
def test_words_of_the_gym_are_known(word):
    found = resolve(word)
    assert found
    assert found == resolve(word.upper().replace(" ", "-"))
    assert list(found) == sorted(found, key=index().__getitem__)


def test_words_mean_what_they_say():
    assert resolve("rear delts") == ("deltoid-posterior",)
    assert set(resolve("calves")) == {"gastrocnemius-medial", "gastrocnemius-lateral", "soleus"}
    assert set(resolve("biceps")) == {"biceps-long-head", "biceps-short-head"}


def test_an_unknown_word_is_answered_with_near_ones():
    with pytest.raises(KeyError, match="hamstrings"):
        resolve("hamstirngs")
