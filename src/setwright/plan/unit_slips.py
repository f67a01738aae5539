"""Loads that stand a factor of 2.2 from a person's own: kilograms and pounds mixed up."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date
from statistics import median

from setwright.documents.units import KG_PER_LB
from setwright.exercises import catalogue
from setwright.plan.log import Log, Record, SetRecord

# A day's best set differs from the days before by a few per cent; 12 % around the factor leaves
# room for that and is still far from what a person gains between two sessions.
FACTOR = 1 / KG_PER_LB
LOW, HIGH = FACTOR * 0.88, FACTOR * 1.12
REFERENCE_DAYS = 5
ENOUGH_DAYS = 2


def strength_index(record: SetRecord) -> float:
    """Load times what its repetitions add to it (the Epley equation): for comparison only."""
    return record.load_kg * (1 + record.reps / 30)


def comparable(record: SetRecord) -> bool:
    """Whether loads of this set can be compared: the load is all, or most, of what is moved."""
    if record.role != "working" or record.load_kg <= 0 or record.exercise not in catalogue.ids():
        return False
    return catalogue.exercise(record.exercise).loading not in ("bodyweight", "band")


def best_by_day(records: Iterable[SetRecord]) -> dict[str, dict[date, float]]:
    """The best strength index of each day, by exercise."""
    best: dict[str, dict[date, float]] = {}
    for record in records:
        if comparable(record):
            days = best.setdefault(record.exercise, {})
            day = record.at.date()
            days[day] = max(days.get(day, 0.0), strength_index(record))
    return best


def slipped(index: float, reference: float) -> str | None:
    """Which way a figure is off by the factor: "too heavy", "too light", or None."""
    if reference <= 0 or index <= 0:
        return None
    ratio = index / reference
    if LOW <= ratio <= HIGH:
        return "too heavy"
    return "too light" if LOW <= 1 / ratio <= HIGH else None


def reference(days: Sequence[float]) -> float | None:
    """What a day is held against: the median of the last days before it; None when too few."""
    last = list(days)[-REFERENCE_DAYS:]
    return median(last) if len(last) >= ENOUGH_DAYS else None


def slip_words(log: Log, records: Sequence[Record]) -> tuple[str, ...]:
    """Questions about sets just entered, against the log before them."""
    known = best_by_day(log.sets())
    words = []
    for record in records:
        if not isinstance(record, SetRecord) or not comparable(record):
            continue
        day = record.at.date()
        past = [index for on, index in sorted(known.get(record.exercise, {}).items()) if on < day]
        usual = reference(past)
        way = slipped(strength_index(record), usual) if usual is not None else None
        hard = record.to_failure or record.rir is not None
        if way == "too heavy" or (way == "too light" and hard):
            unit = "lb" if way == "too heavy" else "kg"
            words.append(
                f"Is {record.load_kg:g} kg right? It stands a factor of 2.2 from the log's "
                f"{catalogue.exercise(record.exercise).name}; were {unit} meant, take it back "
                f"(`withdraw {record.id[:8]}`) and enter it with its unit."
            )
    return tuple(words)
