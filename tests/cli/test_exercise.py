"""`setwright exercise` for a body, a variation and a declared movement."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from setwright.cli.commands.exercise import command
from setwright.documents.errors import DocumentError

EXAMPLE = Path(__file__).parents[2] / "examples" / "movement.yaml"


def run(*words: str | Path) -> Result:
    return CliRunner().invoke(command, [*map(str, words)])


def computed(*words: str | Path) -> dict:
    done = run(*words, "--json")
    assert done.exit_code == 0, done.exception
    return json.loads(done.stdout)["for_body"]


def refused(*words: str | Path) -> str:
    done = run(*words)
    assert isinstance(done.exception, DocumentError)
    return str(done.exception)


def test_an_exercise_is_shown_with_figures_kit_cues_and_findings() -> None:
    shown = run("back", "squat").stdout
    for expected in (
        "vastus lateralis", "90 % interval", "load of the set", "the set ends with", "lower back",
        "knee extension", "barbell and rack", "asks for", "has to be balanced",
        "Set safeties just below", "full-vs-half-squat-mri",
    ):  # fmt: skip
        assert expected in shown


def test_json_holds_what_the_text_tells() -> None:
    found = computed("back-squat")
    first = found["parts"][0]
    assert {"share", "low", "high", "activation", "loaded_ratio"} <= set(first)
    assert first["low"] <= first["share"] <= first["high"]
    assert len(found["range"]) == len(found["largest_load"]) == len(found["spine"]["compression"])


def test_the_body_counts() -> None:
    usual = computed("back-squat")
    other = computed("back-squat", "--stature", 192, "--mass", 90, "--femur", "+6%")
    assert other["build"]["stature_m"] == 1.92
    assert other["build"]["lengths"] == {"thigh": 1.06}
    assert other["joints"][0]["moment"] != usual["joints"][0]["moment"]


def test_the_text_says_whose_body_and_which_way() -> None:
    shown = run("back-squat", "--mass", 90, "--torso", "-3%", "--bar", "low").stdout
    assert "90 kg, male, thorax -3 %; bar low" in " ".join(shown.split())


def test_lengths_by_their_words_and_any_segment() -> None:
    found = computed("back-squat", "--arm", "-4", "--length", "foot=+3%", "--sex", "female")
    assert found["build"]["lengths"] == {"upper arm": 0.96, "forearm": 0.96, "foot": 1.03}
    assert found["build"]["sex"] == "female"


def test_a_shallower_squat_starts_shallower() -> None:
    whole, half = computed("back-squat"), computed("back-squat", "--depth", "half")
    deep = [one["movement"]["stretched"]["knee flexion"] for one in (whole, half)]
    assert deep[1] == pytest.approx(90, abs=0.5)
    assert deep[0] > deep[1]


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("back-squat", "--stature", "1.92"), "120 to 230 cm"),
        (("back-squat", "--femur", "long"), "-30% to +30%"),
        (("back-squat", "--length", "nose=+3%"), "thigh"),
        (("leg-extension", "--bar", "low"), "it can vary depth"),
        (("leg-extension", "--stance", "wide"), "it can vary depth"),
        (("squaat", "deep"), "near:"),
        ((), "--new"),
        (("back-squat", "--new", EXAMPLE), "--new"),
        (("back-squat", "--picture", "squat.gif"), ".svg or .png"),
    ],
)
def test_what_cannot_be_is_said_in_words(words: tuple[str | Path, ...], told: str) -> None:
    assert told in refused(*words)


def test_a_declared_movement_is_computed_and_drawn(tmp_path: Path) -> None:
    picture = tmp_path / "mine.svg"
    done = run("--new", EXAMPLE, "--picture", picture)
    assert done.exit_code == 0, done.exception
    assert "vastus lateralis" in done.stdout
    assert picture.read_text("utf-8").startswith("<?xml")


def test_a_declared_movement_may_be_like_another_and_varied(tmp_path: Path) -> None:
    file = tmp_path / "mine.yaml"
    file.write_text("setwright: movement/1\nname: Mine\nlike: back-squat\n", "utf-8")
    assert computed("--new", file)["parts"] == computed("back-squat")["parts"]
    assert computed("--new", file, "--bar", "front")["movement"]["load"][0]["at"].startswith(
        "front"
    )


def test_an_impossible_posture_names_file_line_field_found_and_allowed(tmp_path: Path) -> None:
    file = tmp_path / "mine.yaml"
    text = "setwright: movement/1\nname: Mine\nlike: back-squat\nstretched:\n  knee flexion: 175\n"
    file.write_text(text, "utf-8")
    told = refused("--new", file)
    assert f"{file}:5" in told
    assert "stretched" in told
    assert "allowed: 0 to 140 degrees" in told
