"""`setwright import` and `setwright compare` from the command line."""

import json
import os
import subprocess
import sys

import pytest

from setwright.plan.read import read_plan

NOTES = "Client: Bo\nMonday\nBench press 3x8\nZercher squat 3x8\nSquat 4 x AMRAP\n"


def run(folder, *arguments, stdin=""):
    return subprocess.run(
        [sys.executable, "-m", "setwright", *arguments],
        cwd=folder, input=stdin, capture_output=True, text=True, env={**os.environ}, check=False,
    )  # fmt: skip


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "notes.txt").write_text(NOTES, encoding="utf-8")
    return tmp_path


def test_a_plan_and_the_list_of_what_needs_attention(folder) -> None:
    done = run(folder, "import", "notes.txt", "-o", "plan.yaml")
    assert done.returncode == 0
    assert "2 in need of attention" in done.stdout
    plan = read_plan((folder / "plan.yaml").read_text(encoding="utf-8"), "plan.yaml")
    assert plan.person == "Bo"
    assert [entry.exercise for entry in plan.sessions[0].exercises] == ["barbell-bench-press"]
    beside = (folder / "plan.attention.txt").read_text(encoding="utf-8")
    assert "Zercher squat" in beside and "AMRAP" in beside


def test_answers_complete_the_plan_and_the_list_says_so(folder) -> None:
    run(folder, "import", "notes.txt", "-o", "plan.yaml")
    answers = ("--answer", "4=back squat", "--answer", "5=4x6-8")
    refused = run(folder, "import", "notes.txt", "-o", "plan.yaml", *answers)
    assert refused.returncode == 2 and "--yes" in refused.stderr
    done = run(folder, "import", "notes.txt", "-o", "plan.yaml", "--yes", *answers)
    assert done.returncode == 0 and "0 in need of attention" in done.stdout
    plan = read_plan((folder / "plan.yaml").read_text(encoding="utf-8"), "plan.yaml")
    assert [entry.sets for entry in plan.sessions[0].exercises] == [3, 3, 4]
    beside = (folder / "plan.attention.txt").read_text(encoding="utf-8")
    assert "nothing needs attention" in beside


def test_json_from_standard_input(folder) -> None:
    done = run(folder, "import", "-", "--json", stdin=NOTES)
    told = json.loads(done.stdout)
    assert [piece["place"] for piece in told["pieces"]] == ["1", "2", "3", "4", "5"]
    assert [piece["place"] for piece in told["needs_attention"]] == ["4", "5"]
    assert told["counts"]["attention"] == 2
    assert told["plan"]["sessions"][0]["day"] == "monday"


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("a.xlsx", b"PK\x03\x04broken"),
        ("b.xls", b"\xd0\xcf\x11\xe0"),
        ("c.txt", b"\0\0"),
        ("d", b""),
    ],
)
def test_unreadable_files_end_with_one_message(folder, name, data) -> None:
    (folder / name).write_bytes(data)
    done = run(folder, "import", name, "-o", "plan.yaml")
    assert done.returncode == 2
    assert len(done.stderr.strip().splitlines()) == 1 and "Traceback" not in done.stderr
    assert not (folder / "plan.yaml").exists()


@pytest.mark.parametrize("arguments", [("none.txt",), ("notes.txt", "--answer", "x"),
                                       ("notes.txt", "--answer", "77=skip")])  # fmt: skip
def test_bad_input_is_said_plainly(folder, arguments) -> None:
    done = run(folder, "import", *arguments)
    assert done.returncode == 2 and "Traceback" not in done.stderr


def test_an_intake_from_a_form(folder) -> None:
    form = 'Name,Age,Experience,Which days?,Gym\nTove,52,beginner,"Tue, Fri",machines\n'
    (folder / "form.csv").write_text(form, encoding="utf-8")
    done = run(folder, "import", "form.csv", "--as", "intake", "-o", "intake.yaml")
    assert done.returncode == 0
    assert "age_band" in (folder / "intake.yaml").read_text(encoding="utf-8")
    assert "does not ask about" in (folder / "intake.attention.txt").read_text(encoding="utf-8")
    assert run(folder, "audit", "notes.txt", "--intake", "intake.yaml").returncode == 2


def test_two_plans_compared(folder) -> None:
    for name, sets in (("a.txt", 2), ("b.txt", 6)):
        text = f"All: RIR 2, rest 2 min\nMonday\nBench press {sets}x8\nThursday\nRDL {sets}x8\n"
        (folder / name).write_text(text, encoding="utf-8")
    done = run(folder, "compare", "a.txt", "b.txt")
    assert done.returncode == 0
    assert "A is shorter" in done.stdout and "B gives more" in done.stdout
    told = json.loads(run(folder, "compare", "a.txt", "b.txt", "--json").stdout)
    assert told["growth"]["differs"] and told["growth"]["low"] > 0
    same = run(folder, "compare", "a.txt", "a.txt")
    assert "no difference" in same.stdout
