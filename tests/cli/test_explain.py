"""`setwright explain --format`, and the pictures of a rehearsal and of an audit."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path
from xml.etree import ElementTree

import pytest

ROOT = Path(__file__).parents[2]
PLAN = ROOT / "examples" / "plan.yaml"
INTAKE = ROOT / "examples" / "intake.yaml"
EPOCH = "1772355600"


def run(*words: str | Path, stdin: bytes = b"") -> subprocess.CompletedProcess[bytes]:
    return subprocess.run(
        [sys.executable, "-m", "setwright", *map(str, words)],
        input=stdin,
        capture_output=True,
        timeout=60,
        check=False,
        env=os.environ | {"SOURCE_DATE_EPOCH": EPOCH},
    )


def test_help_shows_examples() -> None:
    said = run("explain", "--help").stdout.decode()
    assert "setwright explain plan.yaml --intake intake.yaml --format pdf -o week.pdf" in said
    assert "setwright rehearse plan.yaml --day monday" in run("rehearse", "--help").stdout.decode()
    assert "--picture parts.svg" in run("audit", "--help").stdout.decode()


@pytest.mark.parametrize(
    ("kind", "depth", "opening"),
    [("pdf", "full", b"%PDF"), ("html", "full", b"<!DOC"), ("md", "short", b"# ")],
)
def test_a_document_goes_to_standard_output(kind: str, depth: str, opening: bytes) -> None:
    done = run("explain", PLAN, "--intake", INTAKE, "--format", kind, "--depth", depth)
    assert done.returncode == 0, done.stderr.decode()
    assert done.stdout.startswith(opening)
    assert done.stderr == b""


@pytest.mark.parametrize("kind", ["pdf", "html"])
def test_the_suffix_says_the_format_and_the_file_is_the_same_again(
    kind: str, tmp_path: Path
) -> None:
    paths = [tmp_path / f"{name}.{kind}" for name in ("one", "other")]
    for path in paths:
        done = run("explain", PLAN, "--depth", "short", "-o", path)
        assert done.returncode == 0, done.stderr.decode()
        assert done.stdout.decode().split() == [str(path)]
    assert paths[0].read_bytes() == paths[1].read_bytes()
    assert {path.name for path in tmp_path.iterdir()} == {f"one.{kind}", f"other.{kind}"}


def test_markdown_gets_its_pictures_beside_it(tmp_path: Path) -> None:
    path = tmp_path / "my week.md"
    done = run("explain", PLAN, "--intake", INTAKE, "-o", path)
    assert done.returncode == 0, done.stderr.decode()
    pictures = sorted(one for one in tmp_path.iterdir() if one.suffix == ".svg")
    assert len(pictures) == 8
    text = path.read_text(encoding="utf-8")
    for picture in pictures:
        assert ElementTree.parse(picture).getroot().tag.endswith("svg")
        assert f"({picture.name.replace(' ', '%20')})" in text
    assert done.stdout.decode().splitlines()[-1] == str(path)


def test_without_a_format_it_speaks_as_before() -> None:
    done = run("explain", PLAN)
    assert done.returncode == 0
    assert done.stdout.decode().startswith("Monday: Upper, presses first\n===")
    assert run("explain", PLAN, "--json").stdout.startswith(b"[")


def test_a_plan_from_standard_input() -> None:
    done = run("explain", "-", "--format", "md", "--depth", "short", stdin=PLAN.read_bytes())
    assert done.returncode == 0, done.stderr.decode()
    assert b"## What the audit says" in done.stdout


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--format", "doc"), "doc"),
        (("--format", "md", "--json"), "ask for one"),
        (("-o", "week.docx"), "week.docx"),
        (("--format", "md", "--depth", "deep"), "deep"),
        (("--format", "pdf", "-o", "not/there/week.pdf"), "not/there/week.pdf"),
    ],
)
def test_what_cannot_be_done_is_said(words: tuple[str, ...], said: str) -> None:
    done = run("explain", PLAN, *words)
    assert done.returncode == 2
    assert said in done.stderr.decode()
    assert b"Traceback" not in done.stderr


def test_a_rehearsal_is_drawn(tmp_path: Path) -> None:
    whole, day = tmp_path / "week.svg", tmp_path / "monday.png"
    done = run("rehearse", PLAN, "--picture", whole)
    assert done.returncode == 0 and b"Monday" in done.stdout
    words = whole.read_text(encoding="utf-8")
    assert "Monday: Upper, presses first" in words and "Saturday: Lower" in words
    assert run("rehearse", PLAN, "--day", "monday", "--picture", day).returncode == 0
    assert day.read_bytes().startswith(b"\x89PNG")
    for wrong, said in (
        (("--day", "monday"), "--picture"),
        (("--day", "sunday", "--picture", day), "monday, tuesday, thursday, saturday"),
        (("--picture", tmp_path / "week.gif"), ".svg or .png"),
    ):
        refused = run("rehearse", PLAN, *wrong)
        assert refused.returncode == 2
        assert said in refused.stderr.decode()


def test_the_dose_of_each_part_is_drawn(tmp_path: Path) -> None:
    path = tmp_path / "parts.svg"
    done = run("audit", PLAN, "--intake", INTAKE, "--picture", path)
    assert done.returncode == 1
    words = path.read_text(encoding="utf-8")
    assert "Four days, upper and lower: fractional sets a week" in words
    assert "gluteus minimus" in words


# For private use: no font has it.
NOWHERE = "\U0010fffd"


def test_letters_of_no_font_are_named(tmp_path: Path) -> None:
    plan = tmp_path / "plan.yaml"
    text = PLAN.read_text(encoding="utf-8")
    named = re.sub("title: .*", f"title: Week of {NOWHERE}", text, count=1)
    plan.write_text(named, encoding="utf-8")
    done = run("explain", plan, "--depth", "short", "-o", tmp_path / "why.pdf")
    assert done.returncode == 0
    assert f"no font on this machine has {NOWHERE};" in done.stderr.decode()
    assert b"no font" not in run("explain", plan, "--format", "md", "--depth", "short").stderr
