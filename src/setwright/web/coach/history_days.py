"""The log by day, newest first, as the coach's page shows it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from setwright.documents.units import Unit
from setwright.handout.log_text import (
    exercise_words,
    load_text,
    record_text,
    remarks_of,
    reps_text,
)
from setwright.plan.log import Log, Record, SetRecord


@dataclass(frozen=True)
class Done:
    """One exercise of a day.

    Attributes:
        exercise: its name.
        sets: each in short, `80 kg × 8, RIR 2`.
        remarks: pain, symptoms, technique and notes, each once.
    """

    exercise: str
    sets: tuple[str, ...]
    remarks: tuple[str, ...]


@dataclass(frozen=True)
class Day:
    """One day of the log: exercises in the order they were done, and what else was said."""

    day: date
    done: tuple[Done, ...]
    others: tuple[str, ...]


def history(log: Log, unit: Unit, until: date) -> list[Day]:
    """Every day with a record, newest first."""
    days: dict[date, list[Record]] = {}
    for record in log.standing():
        if record.at.date() <= until:
            days.setdefault(record.at.date(), []).append(record)
    return [_day(day, days[day], unit) for day in sorted(days, reverse=True)]


def _day(day: date, records: list[Record], unit: Unit) -> Day:
    groups: dict[str, list[SetRecord]] = {}
    others = []
    for record in records:
        if isinstance(record, SetRecord):
            groups.setdefault(record.exercise, []).append(record)
        else:
            others.append(record_text(record, unit))
    return Day(day, tuple(_done(rows, unit) for rows in groups.values()), tuple(others))


def _done(rows: list[SetRecord], unit: Unit) -> Done:
    remarks = dict.fromkeys(words for one in rows for words in remarks_of(one))
    return Done(
        exercise_words(rows[0].exercise), tuple(_set(one, unit) for one in rows), tuple(remarks)
    )


def _set(one: SetRecord, unit: Unit) -> str:
    words = f"{load_text(one, unit)} × {reps_text(one)}"
    if one.role != "working":
        return f"{one.role} {words}"
    if one.to_failure:
        return f"{words}, to failure"
    return words if one.rir is None else f"{words}, RIR {one.rir:g}"
