"""`setwright log` as a coach runs it."""

from __future__ import annotations

import io
import json
import shutil
import subprocess
import sys
import zipfile
from datetime import date, datetime, time
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).parents[2]


@pytest.fixture
def client(tmp_path: Path) -> Path:
    folder = tmp_path / "anna"
    folder.mkdir()
    shutil.copy(ROOT / "examples" / "intake.yaml", folder)
    return folder


def run(*words: str | Path, stdin: str | None = "") -> subprocess.CompletedProcess[str]:
    if words[0] == "import":
        words = (*words, "--today", "2026-11-25")
    return subprocess.run(
        [sys.executable, "-m", "setwright", "log", *map(str, words)],
        input=stdin,
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=60,
        check=False,
    )


def shown(client: Path, *words: str) -> list[dict[str, Any]]:
    done = run("show", client, "--json", *words)
    assert done.returncode == 0, done.stderr
    records: list[dict[str, Any]] = json.loads(done.stdout)["records"]
    return records


@pytest.mark.parametrize("command", ["add", "import", "show", "questions"])
def test_help_shows_an_example(command: str) -> None:
    done = run(command, "--help")
    assert done.returncode == 0
    assert f"setwright log {command}" in done.stdout


def test_add_and_show(client: Path) -> None:
    done = run(
        "add", client, "back squat 100 x 5,4 @2,1", "--at", "2026-09-07T18:05", "--rest", "3 min"
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert done.stdout.count("added: Back squat 100 kg x") == 2
    assert run("add", client, "pull-up +10 x 6", "--at", "2026-09-09").returncode == 0
    text = run("show", client)
    assert "Monday 7 September 2026, 18:05" in text.stdout
    assert "BW+10 kg" in text.stdout
    assert [one["rest_s"] for one in shown(client, "--exercise", "back squat")] == [180, 180]
    assert [one["exercise"] for one in shown(client, "--since", "2026-09-08")] == ["pull-up"]


def test_lines_from_standard_input_all_or_none(client: Path) -> None:
    bad = run("add", client, "-", stdin="back squat 100 x 5\n\nbanana 3\ndip x 5 @99\n")
    assert (bad.returncode, bad.stdout) == (2, "")
    assert "standard input:3:" in bad.stderr
    assert "standard input:4:" in bad.stderr
    assert shown(client) == []
    good = run("add", client, "-", stdin="back squat 100 x 5\nskip dip because ill\n")
    assert good.returncode == 0, good.stderr
    assert len(shown(client)) == 2


@pytest.mark.parametrize(
    "words",
    [
        ("bak sqat 100 x 5",),
        ("back squat 100 x 5", "--at", "yesterday"),
        ("back squat 100 x 5", "--rest", "ages"),
        ("back squat 100 x 5", "--pain", "much"),
        ("back squat 100 x 5", "--symptom", "itch"),
        ("withdraw last",),
    ],
)
def test_bad_input_is_one_message_and_nothing_is_written(
    client: Path, words: tuple[str, ...]
) -> None:
    done = run("add", client, *words)
    assert done.returncode == 2
    assert done.stderr.strip()
    assert "Traceback" not in done.stderr
    assert not (client / "log.jsonl").exists()


def test_a_symptom_prints_what_to_do(client: Path) -> None:
    done = run("add", client, "back squat 100 x 5", "--symptom", "chest pain")
    assert done.returncode == 0
    assert "STOP" in done.stdout
    assert "call the emergency services" in done.stdout
    machine = run("add", client, "back squat 100 x 5 symptom fainting", "--json")
    assert "STOP" in json.loads(machine.stdout)["stop"]
    hurt = run("add", client, "dip x 5 pain left elbow 4")
    assert "left elbow 4/10 (lighter, other range)" in hurt.stdout


def test_a_correction_is_withdrawn_and_entered_again(client: Path) -> None:
    run("add", client, "back squat 100 x 5")
    run("add", client, "withdraw last")
    run("add", client, "back squat 105 x 5")
    assert [one["load_kg"] for one in shown(client)] == [105]
    assert len((client / "log.jsonl").read_text("utf-8").splitlines()) == 3


def test_a_slip_of_the_unit_is_asked_about(client: Path) -> None:
    for day in ("2026-09-01", "2026-09-04", "2026-09-07"):
        run("add", client, "back squat 100 x 5", "--at", day)
    done = run("add", client, "back squat 225 x 5")
    assert done.returncode == 0
    assert "Is 225 kg right?" in done.stdout


CSV = """\
Date;Exercise;Set;Weight (kg);Reps;RPE;Notes
07.09.2026;Back Squat;1;100;5;8;good
07.09.2026;Back Squat;2;102,5;5;8,5;
07.09.2026;curl thing;1;40;10+3p;9;
07.09.2026;Back Squat;3;9999;5;9;
"""


def test_import_twice_and_answer(client: Path, tmp_path: Path) -> None:
    file = tmp_path / "diary.csv"
    file.write_text(CSV, "utf-8-sig")
    preview = run("import", client, file, "--preview")
    assert "2 records would be added" in preview.stdout
    assert not (client / "log.jsonl").exists()
    first = run("import", client, file)
    assert first.returncode == 0, first.stderr
    assert "2 records added; 2 lines held back" in first.stdout
    assert "line 4, column 'Exercise': 'curl thing'" in first.stdout
    before = {name: (client / name).read_bytes() for name in ("log.jsonl", "log-questions.jsonl")}
    again = json.loads(run("import", client, file, "--json").stdout)
    assert (again["added"], again["already_there"], again["lines_held"]) == (0, 2, 2)
    assert {name: (client / name).read_bytes() for name in before} == before
    assert "curl thing" in run("questions", client).stdout
    answers = tmp_path / "answers.yaml"
    answers.write_text("curl thing: lying leg curl\n")
    last = run("import", client, file, "--answers", answers, "--answer", "5=leave out")
    assert "1 record added" in last.stdout
    assert run("questions", client).stdout == "no line waits for an answer\n"
    assert [one["exercise"] for one in shown(client)] == [
        "back-squat",
        "lying-leg-curl",
        "back-squat",
    ]
    # What was answered once is not asked again.
    assert "question" not in run("import", client, file).stdout


def test_a_table_of_one_day(client: Path) -> None:
    table = "Exercise,Weight,Reps\nBack squat,100,5\n"
    assert run("import", client, "-", stdin=table).returncode == 2
    assert run("import", client, "-", "--day", "2026-09-07", stdin=table).returncode == 0
    assert shown(client)[0]["at"] == "2026-09-07T00:00:00"


def workbook(rows: list[list[object]]) -> bytes:
    from openpyxl import Workbook

    book = Workbook()
    book.active.title = "2026"
    for row in rows:
        book.active.append(row)
    book.create_sheet("empty")
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


SHEET: list[list[object]] = [
    ["Date", "Time", "Exercise", "Weight (lb)", "Reps", "RIR", "Rest"],
    [date(2026, 9, 7), time(18, 5), "Back squat", 225, 5, 2, time(2, 30)],
    [datetime(2026, 9, 9), "6:05 pm", "Pull-up", "BW", 8, None, 120],
]


def test_import_of_a_workbook(client: Path, tmp_path: Path) -> None:
    file = tmp_path / "diary.xlsx"
    file.write_bytes(workbook(SHEET))
    done = run("import", client, file)
    assert done.returncode == 0, done.stderr
    first, second = shown(client)
    assert (first["at"], first["load_kg"], first["rest_s"]) == (
        "2026-09-07T18:05:00",
        102.0583,
        150,
    )
    assert (second["at"], second["load_kg"]) == ("2026-09-09T18:05:00", 0)


def bomb() -> bytes:
    out = io.BytesIO(workbook(SHEET))
    with zipfile.ZipFile(out, "a", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/media/zeros.xml", b"\0" * 300_000_000)
    return out.getvalue()


def entities() -> bytes:
    plain, out = io.BytesIO(workbook(SHEET)), io.BytesIO()
    with zipfile.ZipFile(plain) as archive, zipfile.ZipFile(out, "w") as changed:
        for item in archive.namelist():
            text = archive.read(item)
            if item == "xl/worksheets/sheet1.xml":
                text = b'<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">]>' + text
            changed.writestr(item, text)
    return out.getvalue()


@pytest.mark.parametrize("make", [bomb, entities, lambda: workbook(SHEET)[:2000], lambda: b""])
def test_a_file_that_cannot_be_read_at_all(client: Path, tmp_path: Path, make: Any) -> None:
    file = tmp_path / "bad.xlsx"
    file.write_bytes(make())
    done = run("import", client, file)
    assert done.returncode == 2
    assert done.stderr.startswith(str(file))
    assert "Traceback" not in done.stderr
    assert not (client / "log.jsonl").exists()


def test_a_missing_file_or_folder(client: Path, tmp_path: Path) -> None:
    assert run("import", client, tmp_path / "none.csv").returncode == 2
    assert run("show", tmp_path / "nobody").returncode == 2
    empty = run("show", client)
    assert (empty.returncode, empty.stdout) == (0, "nothing in the log\n")


def test_a_torn_line_is_told_and_nothing_is_lost(client: Path) -> None:
    run("add", client, "back squat 100 x 5")
    with (client / "log.jsonl").open("ab") as file:
        file.write(b'{"kind":"set","id":"0000')
    done = run("show", client)
    assert done.returncode == 0
    assert "log.jsonl:2: a record was cut off" in done.stderr
    run("add", client, "back squat 105 x 5")
    assert len(shown(client)) == 2
