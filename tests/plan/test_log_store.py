"""The log's file: what was acknowledged is there, whenever and however the writer ended."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys
import time
import uuid
from datetime import datetime
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from setwright.documents.errors import DocumentError
from setwright.plan.decision import Decision
from setwright.plan.log import (
    BodyMass,
    Missed,
    Pain,
    Replaced,
    SetRecord,
    Skipped,
    Withdrawn,
    log_of,
)
from setwright.plan.log_store import append_decision, append_records, read_decisions, read_log
from setwright.plan.schema import SCHEMAS

AT = datetime(2026, 9, 7, 18, 5)


def ident(number: int) -> str:
    return str(uuid.UUID(int=number))


def a_set(place: int, **more: object) -> SetRecord:
    fields = {"id": ident(place), "at": AT, "exercise": "back-squat", "load_kg": 100, "reps": 5}
    return SetRecord.model_validate(fields | more)


def test_what_is_appended_is_read_back(tmp_path: Path) -> None:
    path = tmp_path / "log.jsonl"
    records = (
        a_set(1, pain=Pain(where="Knie, rechts „vorn“", level=3), note="zäh } { \\ \n"),
        BodyMass(id=ident(2), at=AT, kg=82.5),
        Withdrawn(id=ident(3), at=AT, of=ident(1)),
    )
    assert append_records(path, records) == records
    log = read_log(path)
    assert log.records == records
    assert log.standing() == (records[1],)
    assert log.notes == ()


def test_a_log_that_is_not_there_is_empty(tmp_path: Path) -> None:
    assert read_log(tmp_path / "log.jsonl").records == ()


def test_a_record_that_is_there_is_not_appended_again(tmp_path: Path) -> None:
    path = tmp_path / "log.jsonl"
    append_records(path, [a_set(1)])
    before = path.read_bytes()
    assert append_records(path, [a_set(1), a_set(1)]) == ()
    assert path.read_bytes() == before
    assert append_records(path, [a_set(2), a_set(1), a_set(2)]) == (a_set(2),)
    assert path.read_bytes().startswith(before)


def test_cut_off_at_every_byte(tmp_path: Path) -> None:
    """A killed write leaves the beginning of a line; the rest of the log stays whole."""
    path = tmp_path / "log.jsonl"
    append_records(path, [a_set(1)])
    first = path.read_bytes()
    last = a_set(2, note='schöne "Klammern" } und ]', pain=Pain(where="Knie", level=2), rir=1.5)
    append_records(path, [last])
    line = path.read_bytes()[len(first) :]
    for cut in range(len(line)):
        path.write_bytes(first + line[:cut])
        log = read_log(path)
        # Only the line end is missing from a line cut one byte short: the record is whole.
        there = cut >= len(line) - 1
        assert [record.id for record in log.records] == [ident(1), *[ident(2)] * there]
        assert bool(log.notes) == (0 < cut < len(line) - 1)
        added = append_records(path, [last, a_set(3)])
        assert added == ((a_set(3),) if there else (last, a_set(3)))
        assert path.read_bytes().startswith(first + line[:cut])
        assert read_log(path).ids == {ident(1), ident(2), ident(3)}


def test_zeros_left_by_a_lost_power_supply(tmp_path: Path) -> None:
    path = tmp_path / "log.jsonl"
    append_records(path, [a_set(1)])
    with path.open("ab") as file:
        file.write(b"\0" * 512)
    assert read_log(path).ids == {ident(1)}
    append_records(path, [a_set(2)])
    assert read_log(path).ids == {ident(1), ident(2)}


WRITER = """
import sys, uuid
from datetime import datetime
from pathlib import Path
from setwright.plan.log import SetRecord
from setwright.plan.log_store import append_records
path, start, many, size = Path(sys.argv[1]), *map(int, sys.argv[2:])
print("ready", flush=True)
for first in range(start, start + many * size, size):
    records = [SetRecord(id=str(uuid.UUID(int=number)), at=datetime(2026, 9, 7), exercise="dip",
                         load_kg=10, reps=5, note="x" * (number % 400))
               for number in range(first, first + size)]
    append_records(path, records)
    print(first, flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="SIGKILL is of POSIX")
@pytest.mark.parametrize(("size", "turns"), [(1, 10), (4000, 6)])
def test_a_writer_killed_at_any_moment(tmp_path: Path, size: int, turns: int) -> None:
    """Writers one after the other, each killed in the midst of appending records, or batches."""
    path = tmp_path / "log.jsonl"
    acknowledged: set[str] = set()
    for turn in range(turns):
        start = 1_000_000 * (turn + 1)
        writer = subprocess.Popen(
            [sys.executable, "-c", WRITER, str(path), str(start), "100000", str(size)],
            stdout=subprocess.PIPE,
            text=True,
        )
        assert writer.stdout is not None
        assert writer.stdout.readline() == "ready\n"
        lines = [writer.stdout.readline() for _ in range(1 + 5 * turn if size == 1 else 1)]
        time.sleep(0.003 * turn)
        os.kill(writer.pid, signal.SIGKILL)
        lines += writer.stdout.read().splitlines(keepends=True)
        assert writer.wait() == -signal.SIGKILL
        firsts = [int(line) for line in lines if line.endswith("\n")]
        acknowledged |= {ident(first + more) for first in firsts for more in range(size)}
        log = read_log(path)
        assert acknowledged <= log.ids
        # At most the batch in the making is there, whole or in part, without an acknowledgement.
        assert len(log.ids - acknowledged) <= size * (turn + 1)
    assert len(acknowledged) >= size * turns


def test_two_writers_at_once_lose_nothing(tmp_path: Path) -> None:
    path = tmp_path / "log.jsonl"
    writers = [
        subprocess.Popen(
            [sys.executable, "-c", WRITER, str(path), str(start), "60", "1"],
            stdout=subprocess.DEVNULL,
        )
        for start in (1000, 2000)
    ]
    assert [writer.wait(60) for writer in writers] == [0, 0]
    log = read_log(path)
    assert log.ids == {ident(start + number) for start in (1000, 2000) for number in range(60)}
    assert log.notes == ()


@pytest.mark.parametrize(
    ("line", "found"),
    [
        ('{"kind":"nap"}', "kind: found 'nap'"),
        ('{"at":"2026-09-07T18:00:00"}', "kind: found nothing"),
        ("hello", "found 'hello'"),
        ("[]", "found"),
        ('{"kind":"body_mass","id":"7","at":"2026-09-07T18:00:00","kg":80}', "id: found '7'"),
        (
            f'{{"kind":"body_mass","id":"{ident(1)}","at":"yesterday","kg":80}}',
            "at: found 'yesterday'",
        ),
        (
            f'{{"kind":"body_mass","id":"{ident(1)}","at":"2026-09-07T18:00:00","kg":8e9}}',
            "kg: found 8000000000.0; allowed: at most 300",
        ),
    ],
)
def test_a_whole_line_that_is_no_record_is_named(tmp_path: Path, line: str, found: str) -> None:
    path = tmp_path / "log.jsonl"
    append_records(path, [a_set(1)])
    with path.open("a") as file:
        file.write(line + "\n")
    with pytest.raises(DocumentError) as caught:
        read_log(path)
    assert f"log.jsonl:2: {found}" in str(caught.value)


def test_a_log_that_cannot_be_written_is_a_message(tmp_path: Path) -> None:
    with pytest.raises(DocumentError, match="no such file or directory"):
        append_records(tmp_path / "nowhere" / "log.jsonl", [a_set(1)])
    with pytest.raises(DocumentError, match="directory"):
        read_log(tmp_path)


def test_two_different_records_of_one_id(tmp_path: Path) -> None:
    path = tmp_path / "log.jsonl"
    append_records(path, [a_set(1)])
    other = tmp_path / "other.jsonl"
    append_records(other, [a_set(1, reps=6)])
    path.write_bytes(path.read_bytes() + other.read_bytes())
    log = read_log(path)
    assert log.records == (a_set(1),)
    assert "two records carry the id" in log.notes[0]


def test_sets_of_one_time_keep_their_number() -> None:
    log = log_of([a_set(1, number=3), a_set(2, number=1), a_set(3, number=2)])
    assert [record.id for record in log.sets()] == [ident(2), ident(3), ident(1)]


def test_decisions(tmp_path: Path) -> None:
    path = tmp_path / "decisions.jsonl"
    decision = Decision.model_validate(
        {
            "id": ident(1),
            "at": AT,
            "week": AT.date(),
            "proposal": "sets:quadriceps:+1",
            "choice": "edit",
            "change": {"sets": 4},
            "because": "she asked for it",
        }
    )
    assert append_decision(path, decision)
    assert not append_decision(path, decision)
    assert read_decisions(path) == (decision,)


def test_a_log_holds_against_its_schema(tmp_path: Path) -> None:
    validator = Draft202012Validator(SCHEMAS["log-record-1.schema.json"]())
    path = tmp_path / "log.jsonl"
    append_records(path, [a_set(1, pain={"where": "knee", "level": 3}), *OTHERS])
    lines = [json.loads(line) for line in path.read_text("utf-8").splitlines()]
    assert len(lines) == 6
    for line in lines:
        validator.validate(line)
    wrong = [
        {**lines[0], "reps": 500},
        {**lines[0], "repz": 5},
        {**lines[0], "symptoms": ["itch"]},
        {**lines[1], "reason": "bored"},
        {**lines[3], "kg": "82"},
        {key: value for key, value in lines[0].items() if key != "kind"},
    ]
    for line in wrong:
        assert not validator.is_valid(line)
        path.write_text(json.dumps(line) + "\n")
        with pytest.raises(DocumentError):
            read_log(path)


OTHERS = (
    Skipped(id=ident(2), at=AT, exercise="dip", reason="no time"),
    Missed(id=ident(3), at=AT, session="Upper A"),
    BodyMass(id=ident(4), at=AT, kg=82.5),
    Replaced(id=ident(5), at=AT, exercise="dip", by="push-up", reason="pain"),
    Withdrawn(id=ident(6), at=AT, of=ident(1)),
)
