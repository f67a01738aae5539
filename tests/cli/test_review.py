"""`setwright review` and `setwright decide` as a coach runs them."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from setwright.cli.main import commands
from setwright.documents.errors import DocumentError

INTAKE = """\
setwright: intake/1
name: Ilse
experience: intermediate
age_band: 18-39
body_mass_kg: 70
screening: {active_last_3_months: yes, known_disease: no, symptoms: no}
setting: with a partner or staff
days: [{day: monday, minutes: 60}]
gym: full gym
"""
PLAN = """\
setwright: plan/1
title: One day
sessions:
  - name: Only
    day: monday
    exercises:
      - Leg press: 3 x 8-12, RIR 2-1, rest 90-120 s
      - Lat pulldown: 3 x 8-12, RIR 2-1, rest 90-120 s
"""


def lines() -> Iterator[str]:
    for week, day in enumerate(("2026-09-07", "2026-09-14", "2026-09-21")):
        for number in range(6):
            exercise, load = (("leg-press", 120), ("lat-pulldown", 50))[number // 3]
            record = {
                "kind": "set",
                "id": f"00000000-0000-4000-8000-0000000000{week}{number}",
                "at": f"{day}T18:{4 * number:02d}:00",
                "exercise": exercise,
                "load_kg": load,
                "reps": 10 - 3 * (number % 3) if exercise == "lat-pulldown" else 10,
                "rir": 2,
            }
            yield json.dumps(record)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "plans").mkdir()
    (tmp_path / "intake.yaml").write_text(INTAKE, encoding="utf-8")
    (tmp_path / "plans" / "2026-09-07.yaml").write_text(PLAN, encoding="utf-8")
    (tmp_path / "log.jsonl").write_text("\n".join(lines()) + "\n", encoding="utf-8")
    return tmp_path


def run(*words: str) -> Result:
    return CliRunner().invoke(commands, list(words))


WEEK = ("--week", "2026-09-23")


def test_review_prints_the_week(folder: Path) -> None:
    result = run("review", str(folder), *WEEK)
    assert result.exit_code == 0
    assert "week of 2026-09-21" in result.output
    assert "\x1b" not in result.output
    assert result.output == run("review", str(folder), *WEEK).output


def test_review_without_a_week_takes_the_last_that_is_over(folder: Path) -> None:
    result = run("review", str(folder), "--today", "2026-09-21")
    assert "week of 2026-09-21" in result.output


def test_review_as_json_holds_the_same_proposals(folder: Path) -> None:
    data = json.loads(run("review", str(folder), *WEEK, "--json").output)
    text = run("review", str(folder), *WEEK).output
    assert data["week"] == "2026-09-21"
    assert data["proposals"]
    assert all(f"[{one['id']}]" in text for one in data["proposals"])
    assert {"sessions", "kept", "strength", "parts", "effort", "pain", "odd"} <= set(data)


def test_decide_by_number_and_by_id(folder: Path) -> None:
    data = json.loads(run("review", str(folder), *WEEK, "--json").output)
    ids = [one["id"] for one in data["proposals"]]
    kinds = [one["kind"] for one in data["proposals"]]
    number = kinds.index("rest")
    result = run(
        "decide", str(folder), str(number + 1), "edit", "--change", "rest_most_s=240",
        "--because", "she likes it slow", *WEEK, "--today", "2026-09-27",
    )  # fmt: skip
    assert result.exit_code == 0
    assert "Accepted with changes: rest" in result.output
    assert (folder / "plans" / "2026-09-28.yaml").is_file()
    kept = json.loads((folder / "decisions.jsonl").read_text(encoding="utf-8"))
    assert kept["change"]["rest_most_s"] == 240
    assert kept["because"] == "she likes it slow"
    with pytest.raises(DocumentError, match="--instead"):
        run_raising("decide", str(folder), ids[number], "accept", *WEEK)
    again = run(
        "decide", str(folder), ids[number], "decline", "--instead", *WEEK, "--json",
        "--today", "2026-09-28",
    )  # fmt: skip
    assert again.exit_code == 0
    assert json.loads(again.output)["decision"]["choice"] == "decline"


def run_raising(*words: str) -> None:
    CliRunner().invoke(commands, list(words), catch_exceptions=False)


@pytest.mark.parametrize(
    "words",
    [
        ("decide", "{folder}", "77", "accept"),
        ("decide", "{folder}", "1", "edit", "--change", "nothing"),
        ("review", "{folder}/nowhere"),
    ],
)
def test_bad_input_is_named(folder: Path, words: tuple[str, ...]) -> None:
    filled = [word.format(folder=folder) for word in words]
    with pytest.raises(DocumentError):
        run_raising(*filled, *WEEK)


@pytest.mark.parametrize("name", ["review", "decide"])
def test_help_has_examples(name: str) -> None:
    assert f"setwright {name} anna" in run(name, "--help").output
