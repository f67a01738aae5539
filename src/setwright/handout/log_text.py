"""The log as text: what was added, and the log by session."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import date

from setwright.documents.units import Unit, from_kg
from setwright.exercises import catalogue
from setwright.plan.log import (
    BodyMass,
    Log,
    Missed,
    Record,
    Replaced,
    SetRecord,
    Skipped,
    Withdrawn,
)
from setwright.sources.library import finding
from setwright.training.pain import answer_to
from setwright.training.stop_signs import referral

HEAD = f"  {'exercise':<34} {'set':>4} {'load':>12} {'reps':>6} {'RIR':>5} {'rest':>6}"
STOP = "STOP. This is no diagnosis; a licensed professional decides what it is."


def exercise_words(ident: str) -> str:
    """The catalogue's name of an exercise; the id itself when the catalogue does not know it."""
    return catalogue.exercise(ident).name if ident in catalogue.ids() else ident


def load_text(record: SetRecord, unit: Unit) -> str:
    """A load as people write it: ``100 kg``, ``20 kg/hand``, ``BW+10 kg``, ``BW-20 kg``."""
    # Plates come in quarters of a kilogram; pounds turned from kilograms need no more than tenths.
    digits = 2 if unit == "kg" else 1
    figure = f"{round(from_kg(abs(record.load_kg), unit), digits):g} {unit}"
    one = catalogue.exercise(record.exercise) if record.exercise in catalogue.ids() else None
    if one is None or one.loading not in ("bodyweight", "band", "dumbbell pair"):
        return figure if record.load_kg >= 0 else f"-{figure}"
    if one.loading == "dumbbell pair":
        return f"{figure}/hand"
    if one.loading == "band" and record.load_kg == 0:
        return "band"
    if record.load_kg == 0:
        return "BW"
    return f"BW{'+' if record.load_kg > 0 else '-'}{figure}"


def added_text(records: Sequence[Record], unit: Unit) -> str:
    """What was added, one line a record."""
    return "\n".join(f"added: {record_text(record, unit)}" for record in records)


def stop_text(records: Iterable[Record]) -> str:
    """What to do when a set tells of symptoms that stop training; empty when none does."""
    told = [name for one in records if isinstance(one, SetRecord) for name in one.symptoms]
    if not told:
        return ""
    named = ", ".join(dict.fromkeys(told))
    return "\n".join([STOP, f"Reported: {named}.", *(one.words for one in referral(told))])


def pain_text(records: Iterable[Record]) -> str:
    """What holds when a set hurt; empty when none did."""
    hurt = [one for one in records if isinstance(one, SetRecord) and one.pain and one.pain.level]
    if not hurt:
        return ""
    worst: dict[str, int] = {}
    for one in hurt:
        if one.pain:
            worst[one.pain.where] = max(worst.get(one.pain.where, 0), one.pain.level)
    said = [f"{where} {level}/10 ({answer_to(level)})" for where, level in worst.items()]
    return (
        f"Pain: {', '.join(said)}.\n{finding('pain-scale').finding} "
        f"{finding('pain-persist').finding}"
    )


def log_text(log: Log, unit: Unit, ids: bool = False) -> str:
    """The log by day, oldest first: one line a set."""
    days: dict[date, list[Record]] = {}
    for record in log.standing():
        days.setdefault(record.at.date(), []).append(record)
    if not days:
        return "nothing in the log"
    return "\n\n".join(_day(day, records, unit, ids) for day, records in days.items())


def _day(day: date, records: list[Record], unit: Unit, ids: bool) -> str:
    sets = [record for record in records if isinstance(record, SetRecord)]
    others = [record for record in records if not isinstance(record, SetRecord)]
    first = records[0].at
    clock = f", {first:%H:%M}" if (first.hour, first.minute) != (0, 0) else ""
    lines = [f"{day:%A} {day.day} {day:%B %Y}{clock}"]
    if sets:
        lines.append(HEAD)
    groups: dict[str, list[SetRecord]] = {}
    for record in sets:
        groups.setdefault(record.exercise, []).append(record)
    for group in groups.values():
        lines += _group(group, unit, ids)
    lines += [f"  {record_text(record, unit)}{_id(record, ids)}" for record in others]
    return "\n".join(lines)


def _group(group: list[SetRecord], unit: Unit, ids: bool) -> Iterable[str]:
    place = 0
    for row, record in enumerate(group):
        name = exercise_words(record.exercise)[:34] if row == 0 else ""
        if record.role == "working":
            place += 1
        number = {"working": str(place), "warm-up": "W", "drop": "drop"}[record.role]
        rest = "" if record.rest_s is None else _clock(record.rest_s)
        tail = "; ".join(remarks_of(record))
        yield (
            f"  {name:<34} {number:>4} {load_text(record, unit):>12} {reps_text(record):>6} "
            f"{_effort(record):>5} {rest:>6}  {tail}"
        ).rstrip() + _id(record, ids)


def reps_text(record: SetRecord) -> str:
    """Repetitions, partial ones after the full: ``8``, ``8+3p``."""
    partial = f"+{record.partial_reps}p" if record.partial_reps else ""
    return f"{record.reps}{partial}"


def _effort(record: SetRecord) -> str:
    if record.to_failure:
        return "fail"
    return "" if record.rir is None else f"{record.rir:g}"


def remarks_of(record: SetRecord) -> Iterable[str]:
    """Side, pain, symptoms, technique and note of a set."""
    if record.side:
        yield record.side
    if record.pain:
        yield f"PAIN {record.pain.where} {record.pain.level}/10"
    if record.symptoms:
        yield f"SYMPTOM {', '.join(record.symptoms)}"
    if record.technique:
        yield "technique broke down"
    if record.note:
        yield record.note


def _clock(seconds: float) -> str:
    return f"{round(seconds) // 60}:{round(seconds) % 60:02d}"


def _id(record: Record, ids: bool) -> str:
    return f"  [{record.id}]" if ids else ""


def record_text(record: Record, unit: Unit) -> str:
    """One record in one line."""
    note = f" ({record.note})" if record.note else ""
    if isinstance(record, SetRecord):
        return _set(record, unit)
    if isinstance(record, Skipped):
        return f"skipped {exercise_words(record.exercise)}: {record.reason}{note}"
    if isinstance(record, Missed):
        return f"missed {record.session}: {record.reason}{note}"
    if isinstance(record, Replaced):
        names = f"{exercise_words(record.exercise)} replaced by {exercise_words(record.by)}"
        return f"{names}: {record.reason}{note}"
    if isinstance(record, BodyMass):
        return f"body mass {round(from_kg(record.kg, unit), 1):g} {unit}{note}"
    assert isinstance(record, Withdrawn)
    return f"record {record.of} taken back{note}"


def _set(record: SetRecord, unit: Unit) -> str:
    pieces = [f"{exercise_words(record.exercise)} {load_text(record, unit)} x {reps_text(record)}"]
    if record.to_failure:
        pieces.append("to failure")
    elif record.rir is not None:
        pieces.append(f"RIR {record.rir:g}")
    if record.role != "working":
        pieces.append(f"{record.role} set")
    if record.rest_s is not None:
        pieces.append(f"rest {_clock(record.rest_s)}")
    return ", ".join([*pieces, *remarks_of(record)])
