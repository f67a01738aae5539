from __future__ import annotations

import dataclasses
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from setwright.documents.errors import DocumentError
from setwright.documents.whole_file import write_bytes
from setwright.handout.export import Wishes, export
from setwright.handout.names import safe_name, safe_names
from setwright.plan.intake import Intake
from setwright.plan.week import Plan


def test_files_replace_earlier_ones_and_leave_nothing_else(
    plan: Plan, intake: Intake, wishes: Wishes, tmp_path: Path
) -> None:
    (tmp_path / "week.pdf").write_bytes(b"old")
    written = export(plan, intake, tmp_path, "week", wishes).paths
    assert [path.name for path in written] == ["week.pdf", "week.ics", "week.html", "week.xlsx"]
    assert sorted(path.name for path in tmp_path.iterdir()) == sorted(one.name for one in written)
    assert (tmp_path / "week.pdf").read_bytes().startswith(b"%PDF")


def test_a_fault_in_one_format_replaces_nothing(
    plan: Plan, wishes: Wishes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "week.pdf").write_bytes(b"old")

    def broken(*_: object) -> bytes:
        raise RuntimeError("no paper")

    monkeypatch.setattr("setwright.handout.workbook.build.workbook", broken)
    with pytest.raises(RuntimeError):
        export(plan, None, tmp_path, "week", wishes)
    assert [path.read_bytes() for path in tmp_path.iterdir()] == [b"old"]


def test_only_what_is_asked_for_is_made(plan: Plan, wishes: Wishes, tmp_path: Path) -> None:
    asked = dataclasses.replace(wishes, formats=("ics",))
    assert [path.name for path in export(plan, None, tmp_path, "a", asked).paths] == ["a.ics"]


def test_a_failed_write_keeps_the_old_file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    target = tmp_path / "a.pdf"
    write_bytes(target, b"old")

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(DocumentError, match="no space left"):
        write_bytes(target, b"new")
    assert target.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [target]


@settings(derandomize=True, max_examples=200)
@given(words=st.text(max_size=90))
def test_no_name_leaves_its_folder(words: str) -> None:
    name = safe_name(words)
    assert name and set(name) <= set("abcdefghijklmnopqrstuvwxyz0123456789-")
    assert len(name) <= 65 and not name.startswith("-")


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("../../x", "x"),
        ("..\\..\\x", "x"),
        ("/etc/passwd", "etc-passwd"),
        ("CON", "plan-con"),
        ("nul.txt", "nul-txt"),
        ("NUL", "plan-nul"),
        ("x\x00.pdf", "x-pdf"),
        ("", "plan"),
        ("......", "plan"),
        ("王", "plan"),
        ("-rf", "rf"),
        ("a" * 4000, "a" * 60),
    ],
)
def test_known_tricks(words: str, name: str) -> None:
    assert safe_name(words) == name


def test_a_hundred_clients_of_one_name_have_files_of_their_own() -> None:
    names = safe_names(["Ann Lee", "ann-lee", "Ann  Lee!", "ann-lee-2"] * 25)
    assert len(set(names)) == 100
    assert names[0] == "ann-lee"


def test_a_kill_in_the_middle_leaves_the_old_file(tmp_path: Path) -> None:
    """The process is killed when the new content is on disk and not yet in its place."""
    (tmp_path / "week.pdf").write_bytes(b"old")
    script = (
        "import os, signal, sys\n"
        "from pathlib import Path\n"
        "from setwright.documents.whole_file import write_bytes\n"
        "os.fsync = lambda _: os.kill(os.getpid(), signal.SIGKILL)\n"
        "write_bytes(Path(sys.argv[1]), b'new' * 100000)\n"
    )
    done = subprocess.run([sys.executable, "-c", script, tmp_path / "week.pdf"], check=False)
    assert done.returncode == -signal.SIGKILL
    assert (tmp_path / "week.pdf").read_bytes() == b"old"
    # What is left is hidden and no handout by its name; the next run writes over the old file.
    left = [path.name for path in tmp_path.iterdir() if path.name != "week.pdf"]
    assert all(name.startswith(".") and not name.endswith(".pdf") for name in left)
    write_bytes(tmp_path / "week.pdf", b"new")
    assert (tmp_path / "week.pdf").read_bytes() == b"new"


def test_a_link_in_the_folder_is_replaced_not_followed(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").write_bytes(b"mine")
    (tmp_path / "week.pdf").symlink_to(tmp_path / "elsewhere")
    write_bytes(tmp_path / "week.pdf", b"new")
    assert (tmp_path / "elsewhere").read_bytes() == b"mine"
    assert not (tmp_path / "week.pdf").is_symlink()


@given(words=st.lists(st.sampled_from(["a", "A", "a!", "a-2", "b"]), max_size=8))
@settings(derandomize=True, max_examples=60)
def test_names_differ(words: list[str]) -> None:
    names = safe_names(words)
    assert len(set(names)) == len(words)
