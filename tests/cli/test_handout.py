"""`setwright handout` as a coach runs it."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest
from click.testing import CliRunner

from setwright.cli.commands.handout import command

ROOT = Path(__file__).parents[2]
PLAN = ROOT / "examples" / "plan.yaml"
INTAKE = ROOT / "examples" / "intake.yaml"
FILES = {"plan.html", "plan.ics", "plan.pdf", "plan.xlsx"}


def run(*words: str | Path, stdin: str = "", epoch: str = "") -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "setwright", "handout", *map(str, words)],
        input=stdin,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
        env=os.environ | {"SOURCE_DATE_EPOCH": epoch},
    )


def test_help_shows_an_example() -> None:
    done = run("--help")
    assert done.returncode == 0
    assert "setwright handout plan.yaml -o handouts" in done.stdout


@pytest.mark.parametrize("reader", ["client", "coach"])
def test_one_plan_gives_four_files(reader: str, tmp_path: Path) -> None:
    folder = tmp_path / "not" / "there"
    done = run(PLAN, "--intake", INTAKE, "--for", reader, "-o", folder)
    assert done.returncode == 0, done.stderr
    assert {path.name for path in folder.iterdir()} == FILES
    assert [Path(line).parent for line in done.stdout.split()] == [folder] * 4
    assert ("For the coach" in (folder / "plan.html").read_text()) == (reader == "coach")


def test_one_that_fails_leaves_the_others_done(tmp_path: Path) -> None:
    bad = tmp_path / "bad.yaml"
    bad.write_text("setwright: plan/1\ntitle: x\nsessions: nonsense\n")
    other = tmp_path / "plan.yaml"
    other.write_text(PLAN.read_text())
    folder = tmp_path / "out"
    done = run(PLAN, bad, other, tmp_path / "absent.yaml", "-o", folder, "--formats", "ics")
    assert done.returncode == 2
    assert {path.name for path in folder.iterdir()} == {"plan.ics", "plan-2.ics"}
    assert f"{bad} failed" in done.stderr and "sessions" in done.stderr
    assert "absent.yaml failed" in done.stderr
    assert "2 of 4 plans done" in done.stderr
    assert "Traceback" not in done.stderr


def test_several_plans_show_a_bar_on_a_terminal(tmp_path: Path) -> None:
    ours, theirs = pty.openpty()
    with subprocess.Popen(
        [
            *(sys.executable, "-m", "setwright", "handout", PLAN, PLAN),
            *("-o", tmp_path, "--formats", "ics"),
        ],
        stdout=subprocess.PIPE,
        stderr=theirs,
        env=os.environ | {"TERM": "xterm"},
    ) as process:
        os.close(theirs)
        said = _all_of(ours)
        written = process.stdout.read().decode() if process.stdout else ""
    assert process.returncode == 0
    assert "handouts" in said and "100%" in said
    assert written.count(".ics") == 2


def _all_of(terminal: int) -> str:
    """What is written to a terminal until its writer ends; it holds a few kilobytes at a time."""
    said = b""
    try:
        while piece := os.read(terminal, 4096):
            said += piece
    except OSError:
        # How a terminal without a writer reads.
        pass
    finally:
        os.close(terminal)
    return said.decode()


def test_a_plan_from_standard_input(tmp_path: Path) -> None:
    done = run("-", "-o", tmp_path, "--formats", "pdf", stdin=PLAN.read_text())
    assert done.returncode == 0, done.stderr
    assert (tmp_path / "plan.pdf").read_bytes().startswith(b"%PDF")


def test_a_fixed_moment_makes_the_same_files_again(tmp_path: Path) -> None:
    for name in ("one", "two"):
        done = run(PLAN, "-o", tmp_path / name, "--formats", "pdf,ics,html", epoch="1772355600")
        assert done.returncode == 0, done.stderr
    for file in ("plan.pdf", "plan.ics", "plan.html"):
        assert (tmp_path / "one" / file).read_bytes() == (tmp_path / "two" / file).read_bytes()
    assert "20260302T180000" in (tmp_path / "one" / "plan.ics").read_text()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--formats", "pdf,doc"), "doc"),
        (("--zone", "Europe/Atlantis"), "Europe/Atlantis"),
        (("--zone", "../../etc/passwd"), "no time zone"),
        (("--time", "25:00"), "25:00"),
        (("--start", "tomorrow"), "tomorrow"),
        (("--weeks", "0"), "0"),
        (("--intake", "a", "--intake", "b"), "intake"),
    ],
)
def test_a_wrong_option_is_said(words: tuple[str, ...], said: str, tmp_path: Path) -> None:
    done = run(PLAN, "-o", tmp_path / "out", *words)
    assert done.returncode == 2
    assert said in done.stderr and "Traceback" not in done.stderr
    assert not (tmp_path / "out").exists()


def test_a_folder_that_cannot_be_made_is_said(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    done = run(PLAN, "-o", tmp_path / "file" / "inside")
    assert done.returncode == 2
    assert "a folder that can be made" in done.stderr and "Traceback" not in done.stderr


def test_letters_that_no_font_has_are_said(tmp_path: Path) -> None:
    words = PLAN.read_text().replace("person: Marit", 'person: "Li \U0010fffd"')
    done = run("-", "-o", tmp_path, "--formats", "pdf,html", stdin=words)
    assert done.returncode == 0, done.stderr
    assert "no font on this machine has \U0010fffd" in done.stderr
    assert "Li \U0010fffd" in (tmp_path / "plan.html").read_text(encoding="utf-8")


def test_names_of_plans_stay_in_the_folder(tmp_path: Path) -> None:
    """Files that a careless coach or somebody else has named."""
    odd = tmp_path / "odd"
    odd.mkdir()
    names = ["CON.yaml", "...yaml", "-x.yaml", "a\nb.yaml", "=1+1.yaml", f"{'l' * 200}.yaml"]
    for name in names:
        (odd / name).write_text(PLAN.read_text())
    folder = tmp_path / "out"
    done = run("-o", folder, "--formats", "ics", "--", *(odd / name for name in names))
    assert done.returncode == 0, done.stderr
    made = {path.name for path in folder.iterdir()}
    assert made == {
        "plan-con.ics", "plan.ics", "x.ics", "a-b.ics", "1-1.ics", f"{'l' * 60}.ics",
    }  # fmt: skip
    assert {path.name for path in tmp_path.iterdir()} == {"odd", "out"}


def test_a_fault_of_ours_in_one_plan_leaves_the_others_done(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from setwright.handout import export as room

    true, seen = room.export, []

    def broken_once(*words: object) -> object:
        seen.append(words)
        if len(seen) == 2:
            raise RuntimeError("no ink")
        return true(*words)  # type: ignore[arg-type]

    monkeypatch.setattr(room, "export", broken_once)
    done = CliRunner().invoke(
        command, [*[str(PLAN)] * 3, "-o", str(tmp_path), "--formats", "ics"], standalone_mode=False
    )
    assert done.return_value == 2
    assert {path.name for path in tmp_path.iterdir()} == {"plan.ics", "plan-3.ics"}
    assert "a fault of ours: RuntimeError: no ink" in done.output
    assert "2 of 3 plans done" in done.output
