"""A client's folder: read whole, every fault a message."""

from __future__ import annotations

import shutil
from datetime import date
from pathlib import Path

import pytest

from setwright.documents.errors import DocumentError
from setwright.plan.client_folder import open_folder

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    shutil.copy(EXAMPLES / "intake.yaml", tmp_path / "intake.yaml")
    return tmp_path


def add_plan(folder: Path, name: str, title: str = "A") -> None:
    (folder / "plans").mkdir(exist_ok=True)
    text = (EXAMPLES / "plan.yaml").read_text("utf-8")
    lines = [f"title: {title}" if line.startswith("title:") else line for line in text.split("\n")]
    (folder / "plans" / name).write_text("\n".join(lines), "utf-8")


def test_a_new_client_has_an_intake_only(folder: Path) -> None:
    client = open_folder(folder)
    assert (client.plans, client.log.records, client.decisions) == ((), (), ())
    assert client.plan_on(date(2026, 9, 7)) is None


def test_the_plan_in_force(folder: Path) -> None:
    add_plan(folder, "2026-10-05.yaml", "second")
    add_plan(folder, "2026-09-07.yaml", "first")
    client = open_folder(folder)
    assert [start for start, _ in client.plans] == [date(2026, 9, 7), date(2026, 10, 5)]
    titles = {}
    for day in (date(2026, 9, 6), date(2026, 9, 7), date(2026, 10, 4), date(2027, 1, 1)):
        plan = client.plan_on(day)
        titles[day.isoformat()] = plan.title if plan else None
    assert titles == {
        "2026-09-06": None,
        "2026-09-07": "first",
        "2026-10-04": "first",
        "2027-01-01": "second",
    }


@pytest.mark.parametrize(
    "name", ["first.yaml", "2026-09-08.yaml", "2026-9-7.yaml", "2026-02-30.yaml"]
)
def test_a_plan_is_named_by_its_monday(folder: Path, name: str) -> None:
    add_plan(folder, name)
    with pytest.raises(DocumentError, match="the Monday from which the plan is in force"):
        open_folder(folder)


def test_what_is_no_client_folder(tmp_path: Path) -> None:
    with pytest.raises(DocumentError, match="no such folder"):
        open_folder(tmp_path / "nobody")
    with pytest.raises(DocumentError, match=r"no intake\.yaml"):
        open_folder(tmp_path)
    (tmp_path / "file").write_text("x")
    with pytest.raises(DocumentError, match="found a file"):
        open_folder(tmp_path / "file")


def test_faults_inside_name_their_file(folder: Path) -> None:
    add_plan(folder, "2026-09-07.yaml")
    (folder / "plans" / "2026-09-07.yaml").write_text("setwright: plan/1\ntitle: T\n")
    with pytest.raises(DocumentError, match=r"2026-09-07\.yaml"):
        open_folder(folder)
    shutil.rmtree(folder / "plans")
    (folder / "decisions.jsonl").write_text('{"id": 7}\n')
    with pytest.raises(DocumentError, match=r"decisions\.jsonl:1: id: found 7"):
        open_folder(folder)
