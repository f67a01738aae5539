"""The command as a coach runs it: text, JSON, exit status, messages."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
PLAN = ROOT / "examples" / "plan.yaml"
COMMANDS = (
    "design", "rehearse", "audit", "swap", "explain", "exercise", "muscle", "sources", "demo",
)  # fmt: skip


def run(*words: str | Path, stdin: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "setwright", *map(str, words)],
        input=stdin,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )


@pytest.mark.parametrize("command", COMMANDS)
def test_help_shows_an_example(command: str) -> None:
    done = run(command, "--help")
    assert done.returncode == 0
    assert "Example" in done.stdout
    assert f"setwright {command}" in done.stdout


@pytest.mark.parametrize(
    ("words", "shown"),
    [
        (("exercise", "back-squat"), "squat"),
        (("muscle", "hamstrings"), "semitendinosus"),
        (("sources",), "session-volume-puos-2025"),
    ],
)
def test_reference_as_text_and_json(words: tuple[str, ...], shown: str) -> None:
    text = run(*words)
    assert text.returncode == 0, text.stderr
    assert shown in text.stdout.lower()
    machine = run(*words, "--json")
    assert machine.returncode == 0
    assert shown in json.dumps(json.loads(machine.stdout)).lower()


def test_audit_status_says_whether_something_misses() -> None:
    machine = run("audit", PLAN, "--json")
    remarks = json.loads(machine.stdout)["remarks"]
    misses = [r for r in remarks if r["verdict"] == "misses" and not r.get("unavoidable")]
    assert remarks
    assert machine.returncode == (1 if misses else 0)
    text = run("audit", PLAN)
    assert text.returncode == machine.returncode
    assert text.stdout.strip()


def test_plan_from_standard_input_is_the_same_plan() -> None:
    piped = run("audit", "-", "--json", stdin=PLAN.read_text("utf-8"))
    assert (
        json.loads(piped.stdout)["remarks"]
        == json.loads(run("audit", PLAN, "--json").stdout)["remarks"]
    )


@pytest.mark.parametrize("command", ["rehearse", "explain"])
def test_plan_commands(command: str) -> None:
    text = run(command, PLAN)
    assert text.returncode == 0, text.stderr
    assert "Romanian deadlift" in text.stdout
    assert json.loads(run(command, PLAN, "--json").stdout)


def test_swap_ranks_substitutes() -> None:
    text = run("swap", PLAN, "lat pulldown")
    assert text.returncode == 0, text.stderr
    found = json.loads(run("swap", PLAN, "lat pulldown", "--most", "3", "--json").stdout)
    assert len(found) == 3
    changes = [one["growth_change"] for one in found]
    assert changes == sorted(changes, reverse=True)


@pytest.mark.parametrize(
    ("words", "stdin", "named"),
    [
        (("audit", "no-such-file.yaml"), "", "no-such-file.yaml"),
        (("audit", "-"), "setwright: plan/1\nsessions: [\n", "standard input"),
        (
            ("audit", "-"),
            PLAN.read_text("utf-8").replace("Lat pulldown:", "Qqqqq xyzzy:"),
            "Qqqqq xyzzy",
        ),
        (("swap", str(PLAN), "qqqqq xyzzy"), "", "qqqqq xyzzy"),
        (("swap", str(PLAN), "back-squat"), "", "back-squat"),
        (("design", "-"), "setwright: intake/1\nname: x\n", "standard input"),
        (("exercise", "qqqqq xyzzy"), "", "qqqqq xyzzy"),
        (("muscle", "qqqqq xyzzy"), "", "qqqqq xyzzy"),
        (("sources", "no-such-finding"), "", "no-such-finding"),
    ],
)
def test_bad_input_is_one_clear_message(words: tuple[str, ...], stdin: str, named: str) -> None:
    done = run(*words, stdin=stdin)
    assert done.returncode == 2
    assert named in done.stderr
    assert "Traceback" not in done.stdout + done.stderr
    assert not done.stdout


def test_designed_plan_can_be_audited(tmp_path: Path) -> None:
    intake = (ROOT / "examples" / "intakes" / "01-two-short-days-one-pair.yaml").read_text("utf-8")
    written = tmp_path / "plan.yaml"
    done = run("design", "-", "--seconds", "2", "-o", written, stdin=intake)
    assert done.returncode == 0, done.stderr
    assert str(written) in done.stdout
    audited = run("audit", written, "--json")
    assert audited.returncode in (0, 1), audited.stderr
    assert json.loads(audited.stdout)["remarks"]
