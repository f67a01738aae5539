"""Movements a coach declares: read whole or like another, every fault in its line."""

from __future__ import annotations

from pathlib import Path

import pytest

from setwright.documents.errors import DocumentError
from setwright.exercises.movement_file import placed, read_movement
from setwright.exercises.movements import movement
from setwright.mechanics.body import Build
from setwright.mechanics.effort import effort
from setwright.mechanics.posture import postures

EXAMPLE = Path(__file__).parents[2] / "examples" / "movement.yaml"
WHOLE = """\
setwright: movement/1
name: Held squat
ends: [leg]
support: [feet]
stretched: {knee flexion: 90, ankle dorsiflexion: 20, hip flexion: 80}
shortened: {knee flexion: 5, ankle dorsiflexion: 0, hip flexion: 5}
balance: hip flexion
load: [{kind: weight, at: chest}]
"""
LIKE = "setwright: movement/1\nname: Mine\nlike: back-squat\n"


def faults(text: str) -> list[tuple[str, int | None, str, str]]:
    with pytest.raises(DocumentError) as refused:
        read_movement(text, "mine.yaml")
    return [(one.field, one.line, one.found, one.allowed) for one in refused.value.faults]


def test_the_example_is_read_whole() -> None:
    found = read_movement(EXAMPLE.read_text("utf-8"), "movement.yaml")
    assert found.like is None
    assert found.movement.stretched == {"knee flexion": 110}
    assert found.movement.load[0].kind == "pull"


def test_a_movement_like_another_changes_what_it_names() -> None:
    text = LIKE + "stretched: {knee flexion: 95}\nload: [{kind: weight, at: chest}]\n"
    found, squat = read_movement(text, "mine.yaml"), movement("back-squat")
    assert found.like == "back-squat"
    assert found.movement.stretched == {**squat.stretched, "knee flexion": 95}
    assert found.movement.shortened == squat.shortened
    assert [one.at for one in found.movement.load] == ["chest"]


def test_like_takes_an_exercise_by_its_name_and_null_drops_an_angle() -> None:
    text = LIKE.replace("back-squat", "Back squats") + "stretched: {hip abduction: null}\n"
    found = read_movement(text, "mine.yaml")
    assert found.like == "back-squat"
    assert "hip abduction" not in found.movement.stretched


@pytest.mark.parametrize(
    ("old", "new", "field", "line"),
    [
        ("knee flexion: 90", "knee flexion: 290", "stretched.knee flexion", 5),
        ("knee flexion: 90", "kneee flexion: 90", "stretched.kneee flexion", 5),
        ("[feet]", "[floor]", "support.0", 4),
        ("name: Held squat\n", "", "name", 1),
        ("at: chest", "at: belly", "load.0.at", 8),
        (", at: chest", "", "load.0", 8),
        ("ends: [leg]", "ends: []", "ends", 3),
        ("balance", "ballance", "ballance", 7),
        ("movement/1", "movement/2", "setwright", 1),
    ],
)
def test_a_fault_names_its_field_and_line(old: str, new: str, field: str, line: int) -> None:
    assert old in WHOLE
    found = faults(WHOLE.replace(old, new, 1))
    assert found[0][:2] == (field, line)


def test_several_faults_come_at_once() -> None:
    assert len(faults(WHOLE.replace("[feet]", "[floor]").replace("90", "290"))) == 2


def test_an_unknown_like_offers_what_is_near() -> None:
    ((field, line, found, allowed),) = faults(LIKE.replace("back-squat", "back squatt deep"))
    assert (field, line) == ("like", 3)
    assert "back squatt deep" in found
    assert "back-squat" in allowed


def test_a_posture_that_falls_over_is_a_fault_of_its_line() -> None:
    text = WHOLE.replace("90, ankle dorsiflexion: 20", "120, ankle dorsiflexion: -40")
    found = read_movement(text, "mine.yaml")
    with pytest.raises(DocumentError) as refused:
        placed(found, lambda: postures(found.movement, Build()))
    fault = refused.value.faults[0]
    assert (fault.field, fault.line) == ("stretched.hip flexion", 5)
    assert "behind" in fault.allowed


def test_angles_no_joint_has_are_faults_of_their_lines() -> None:
    text = WHOLE.replace("knee flexion: 90", "knee flexion: 170").replace(
        "flexion: 5}", "flexion: 5, hip abduction: 80}"
    )
    assert faults(text) == [
        ("stretched.knee flexion", 5, "170", "0 to 140 degrees"),
        ("shortened.hip abduction", 6, "80", "-25 to 45 degrees"),
    ]


def test_an_arm_out_of_reach_is_refused_in_words() -> None:
    text = WHOLE.replace("ends: [leg]", "ends: [arm]").replace(
        "balance: hip flexion", "hold: {arm plane: -150, arm elevation: 120}"
    )
    found = read_movement(text, "mine.yaml")
    with pytest.raises(DocumentError) as refused:
        placed(found, lambda: effort(found.movement, Build()))
    fault = refused.value.faults[0]
    assert (fault.field, fault.line) == ("hold.arm elevation", 7)
    assert "behind" in fault.allowed


def test_a_movement_that_can_be_done_is_done() -> None:
    found = read_movement(WHOLE, "mine.yaml")
    angles, _ = placed(found, lambda: postures(found.movement, Build(), 5))
    assert len(angles["lean"]) == 5


def test_the_movements_of_the_manual_can_be_read_and_done() -> None:
    manual = (EXAMPLE.parents[1] / "docs" / "documents.md").read_text("utf-8")
    blocks = [block.split("```")[0] for block in manual.split("```yaml\n")[1:]]
    declared = [block for block in blocks if block.startswith("setwright: movement/1")]
    assert len(declared) == 2
    for text in declared:
        found = read_movement(text, "documents.md")
        assert placed(found, lambda found=found: effort(found.movement, Build())).load > 20
