"""Thousands of bad logs and tables: a message or a question, never an exception, nothing lost.

Tables are mutated and imported: every line must end as a record, a question, a heading or a line
left out, and importing the same table again must add nothing. Workbooks are damaged byte by byte.
Log files are cut, spoiled and appended to: what was whole stays. Run:
``python benchmarks/fuzz_logs.py [how many] [seed]``.
"""

from __future__ import annotations

import io
import random
import sys
import tempfile
import time
import traceback
import uuid
import zipfile
from collections import Counter
from datetime import date, datetime
from pathlib import Path

from setwright.documents.errors import DocumentError
from setwright.plan.importing.columns import find_columns
from setwright.plan.importing.held import line_ids
from setwright.plan.importing.importer import Imported, import_table
from setwright.plan.importing.settings import Settings
from setwright.plan.importing.table import Table, read_table
from setwright.plan.log import Log, SetRecord, log_of
from setwright.plan.log_store import append_records, read_log
from setwright.training.from_log import done_sets, left_out

TODAY = date(2026, 11, 25)
TABLE = """\
Date;Time;Exercise;Set;Weight (kg);Reps;RPE;Rest;Side;Set type;Pain;Bodyweight;Notes
07.09.2026;18:05;Back Squat;1;60;8;6;2:00;;W;;82,5;easy
07.09.2026;18:09;Back Squat;2;100;5;8;3:00;;;;82,5;
07.09.2026;18:14;Back Squat;3;102,5;5;8,5;3:00;;;knee 3;82,5;
07.09.2026;18:20;Pull-up;1;BW+10;6;9;2 min;;;;;
07.09.2026;18:24;Assisted pull-up;1;-20;8,8,7;;90;;;;;
09.09.2026;18:05;Split squat;1;20/h;10;8;60;L;;;;
09.09.2026;18:07;Split squat;1;20/h;10;8;60;R;;;;
09.09.2026;18:10;Leg press;1;400 lb;12+4p;10;3:00;;;;;
09.09.2026;18:20;Leg press;2;300 lb;3x8;;2:00;;D;;;

14.09.2026;18:05;Back Squat;1;225;5;8;3:00;;;;;
"""
NASTY = (
    "", ";", '"', "\n", "\r", "\0", "\ufeff", "=1+1", "#REF!", "1e9", "-1", "99999999999999999999",
    "0", "-0", "٣", "½", "nan", "inf", "12:99", "31.02.2026", "00.00.0000", "9999-12-31",
    "0001-01-01", "07/08/2026", "45907", "1,5", "1.000,5", "BW", "+", "x", "8x8x8", "8+3p",
    "8,8,8,8,8,8,8,8,8,8,8,8,8,8,8,8,8,8,8,8", "3x99", "lb", "@", "RPE 12", "left", "chest pain",
    "Total", "Back Squat", "\U0001f3cb" * 30, "a" * 3000, "-999", "400", "1" * 400, "Date",
)  # fmt: skip


def mutated(rng: random.Random, text: str) -> str:
    """A table with something wrong in it."""
    for _ in range(rng.choice((1, 1, 2, 3, 6))):
        choice = rng.randrange(6)
        lines = text.split("\n")
        at = rng.randrange(len(lines))
        if choice == 0:
            lines.insert(rng.randrange(len(lines)), lines[at])
        elif choice == 1:
            rng.shuffle(lines)
        elif choice == 2:
            cells = lines[at].split(";")
            cells[rng.randrange(len(cells))] = rng.choice(NASTY)
            lines[at] = ";".join(cells)
        elif choice == 3:
            delimiter = rng.choice(",\t|;")
            lines = [line.replace(";", delimiter) for line in lines]
        elif choice == 4:
            del lines[at]
        else:
            cut = rng.randrange(len(lines[at]) + 1)
            lines[at] = lines[at][:cut] + rng.choice(NASTY) + lines[at][cut:]
        text = "\n".join(lines) or ";"
    return text


def workbook() -> bytes:
    """The table as a workbook."""
    from openpyxl import Workbook

    book = Workbook()
    for line in TABLE.splitlines():
        book.active.append(line.split(";"))
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def damaged(rng: random.Random, book: bytes) -> bytes:
    """A workbook with bytes changed, in the packed file or in the XML inside."""
    if rng.random() < 0.3:
        raw = bytearray(book[: rng.choice((len(book), rng.randrange(len(book))))])
        for _ in range(rng.randrange(1, 8)):
            raw[rng.randrange(len(raw))] = rng.randrange(256)
        return bytes(raw)
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(book)) as old, zipfile.ZipFile(out, "w") as new:
        hit = rng.choice(old.namelist())
        for name in old.namelist():
            content = bytearray(old.read(name))
            for _ in range(rng.randrange(1, 4) if name == hit else 0):
                content[rng.randrange(len(content))] = rng.choice(b'0123456789<>/"ABsnt \0\xff')
            if name != hit or rng.random() < 0.9:
                new.writestr(name, bytes(content))
    return out.getvalue()


def check_import(raw: bytes) -> str:
    """Import bytes; hold the result against what an import promises."""
    table = read_table(raw, "diary")
    columns = find_columns(table, {})
    settings = Settings("kg", TODAY)
    result = import_table(table, columns, settings, Log())
    _nothing_dropped(table, result)
    assert len(line_ids(table, columns)) == len(table.rows)
    log = log_of(result.records)
    assert import_table(table, columns, settings, log).fresh == ()
    done_sets(log)
    left_out(log)
    return "asked" if result.questions else "accepted"


def _nothing_dropped(table: Table, result: Imported) -> None:
    held = {line for one in result.questions for line in one.lines}
    told = {*result.record_lines, *held, *result.headings, *result.left_out}
    assert told == {row.line for row in table.rows}
    assert not held & set(result.record_lines)


def a_set(rng: random.Random) -> SetRecord:
    """Any record."""
    return SetRecord(
        id=str(uuid.UUID(int=rng.getrandbits(128))),
        at=datetime(2026, 9, 7, rng.randrange(24)),
        exercise="dip",
        load_kg=rng.randrange(50),
        reps=rng.randrange(20),
        note="".join(chr(rng.choice((34, 92, 123, 125, 10, 228, 0x1F3CB))) for _ in range(9)),
    )


def check_file(rng: random.Random, folder: Path) -> str:
    """Spoil the end, or the midst, of a log file; what was whole before must stay."""
    path = folder / f"{rng.getrandbits(64)}.jsonl"
    records = [a_set(rng) for _ in range(rng.randrange(1, 6))]
    append_records(path, records)
    raw = path.read_bytes()
    more = append_records(path, [a_set(rng)])
    whole = path.read_bytes()
    if rng.random() < 0.6:
        path.write_bytes(whole[: rng.randrange(len(raw), len(whole))] + b"\0" * rng.choice((0, 9)))
    else:
        at = rng.randrange(len(whole))
        junk = rng.choice((b"", b"\n", b"\xff", b"}", b'"', bytes([rng.randrange(256)])))
        path.write_bytes(whole[:at] + junk + whole[at + rng.randrange(3) :])
        read_log(path)
        return "accepted"
    assert {one.id for one in records} <= read_log(path).ids
    append_records(path, more)
    assert read_log(path).ids == {one.id for one in (*records, *more)}
    return "accepted"


def attempt(rng: random.Random, kind: str, book: bytes, folder: Path) -> str:
    """Make one and try it."""
    try:
        if kind == "table":
            return check_import(mutated(rng, TABLE).encode("utf-8", "surrogatepass"))
        if kind == "workbook":
            return check_import(damaged(rng, book))
        return check_file(rng, folder)
    except DocumentError as error:
        assert all(fault.found and fault.allowed for fault in error.faults)
        return "refused"


def main() -> int:
    """Run and print the counts."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 5000
    rng = random.Random(int(sys.argv[2]) if len(sys.argv) > 2 else 1)
    started = time.perf_counter()
    counts: Counter[tuple[str, str]] = Counter()
    book = workbook()
    failures = []
    with tempfile.TemporaryDirectory() as folder:
        for _ in range(count):
            kind = rng.choice(("table", "table", "file", "file", "workbook"))
            try:
                result = attempt(rng, kind, book, Path(folder))
            except Exception as error:
                result = "failed"
                where = traceback.extract_tb(error.__traceback__)[-1]
                place = f"{Path(where.filename).name}:{where.lineno}"
                failures.append(f"{kind}: {place}: {type(error).__name__}: {error}"[:300])
            counts[kind, result] += 1
    print(f"{count} bad logs, {time.perf_counter() - started:.0f} s")
    for (kind, result), number in sorted(counts.items()):
        print(f"{kind:10}{result:10}{number:>7}")
    for failure in failures[:20]:
        print(failure)
    return 1 if failures else 0


if __name__ == "__main__":
    sys.exit(main())
