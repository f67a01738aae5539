"""How long the log takes: three years of it read, one set appended, a whole table imported."""

from __future__ import annotations

import csv
import statistics
import tempfile
import time
import tracemalloc
import uuid
from collections.abc import Callable
from datetime import date, datetime, timedelta
from pathlib import Path

from setwright.plan.importing.columns import find_columns
from setwright.plan.importing.importer import import_table
from setwright.plan.importing.settings import Settings
from setwright.plan.importing.table import read_table
from setwright.plan.log import Log, SetRecord
from setwright.plan.log_store import append_records, read_log
from setwright.training.from_log import done_sets

SETS = 15_000
A_DAY = 20
EXERCISES = ("back-squat", "barbell-bench-press", "leg-press", "barbell-curl", "leg-extension")
START = datetime(2023, 9, 4, 18)


def three_years() -> list[SetRecord]:
    """Twenty sets a training day, on as many days as it takes."""
    return [
        SetRecord(
            id=str(uuid.UUID(int=place)),
            at=START + timedelta(days=3 * (place // A_DAY) // 2, minutes=3 * (place % A_DAY)),
            exercise=EXERCISES[place % A_DAY // 4],
            load_kg=60 + 2.5 * (place % 7),
            reps=6 + place % 5,
            rir=place % 4,
            rest_s=150,
        )
        for place in range(SETS)
    ]


def table(records: list[SetRecord]) -> bytes:
    """The same sets as a table."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "diary.csv")
        with path.open("w", encoding="utf-8", newline="") as file:
            writer = csv.writer(file)
            writer.writerow(["Date", "Time", "Exercise", "Weight (kg)", "Reps", "RIR", "Rest (s)"])
            for one in records:
                day, clock = one.at.date(), f"{one.at:%H:%M}"
                writer.writerow([day, clock, one.exercise, one.load_kg, one.reps, one.rir, 150])
        return path.read_bytes()


def median_ms(work: Callable[[], object], times: int) -> float:
    """Median wall time of some work, after one run to warm up."""
    work()
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spent.append(time.perf_counter() - start)
    return 1000 * statistics.median(spent)


def main() -> None:
    """Print the figures."""
    records = three_years()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "log.jsonl")
        print(f"{SETS:,} records appended at once: ", end="")
        start = time.perf_counter()
        append_records(path, records)
        print(f"{1000 * (time.perf_counter() - start):.0f} ms, {path.stat().st_size:,} bytes")
        print(f"read: {median_ms(lambda: read_log(path), 5):.0f} ms")
        numbers = iter(range(SETS, 10 * SETS))

        def one_more() -> None:
            record = records[0].model_copy(update={"id": str(uuid.UUID(int=next(numbers)))})
            append_records(path, [record])

        print(f"one appended, on the disk: {median_ms(one_more, 50):.1f} ms")
        tracemalloc.start()
        log = read_log(path)
        print(f"a log in memory: {tracemalloc.get_traced_memory()[0] / 1e6:.0f} MB")
        tracemalloc.stop()

    def sets() -> object:
        return done_sets(Log(log.records))

    print(f"to sets for the estimate: {median_ms(sets, 5):.0f} ms ({len(done_sets(log)):,} sets)")
    raw = table(records)
    settings = Settings("kg", date(2026, 11, 25))

    def read_and_import() -> object:
        read = read_table(raw, "diary.csv")
        return import_table(read, find_columns(read, {}), settings, Log())

    print(f"{SETS:,} lines of CSV imported: {median_ms(read_and_import, 3):.0f} ms")


if __name__ == "__main__":
    main()
