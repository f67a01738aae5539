"""What was logged today, line by line, for the page."""

from __future__ import annotations

from typing import TypedDict

from setwright.documents.units import Unit, load_words
from setwright.exercises import catalogue
from setwright.handout.next_text import load_text
from setwright.plan.log import BodyMass, Missed, Record, Replaced, SetRecord, Skipped
from setwright.training.facts.twice import written_twice
from setwright.web.phone.day import Day

TWICE = "Two sets carry this number, from two devices. Both are kept; take one back if it was one."


class Line(TypedDict):
    """One record.

    Attributes:
        exercise: id, of a swap that of the stand-in; or empty.
        text: in a line.
        twice: a word on a set whose number was given twice; else empty.
    """

    id: str
    exercise: str
    text: str
    twice: str


def lines(records: tuple[Record, ...], unit: Unit) -> list[Line]:
    """One line a record, in order."""
    twice = {one.id for one in written_twice(records)}
    return [
        Line(
            id=one.id,
            exercise=getattr(one, "by", getattr(one, "exercise", "")),
            text=_text(one, unit),
            twice=TWICE if one.id in twice else "",
        )
        for one in records
    ]


def besides(day: Day, logged: list[Line]) -> list[Line]:
    """Lines that stand under no exercise of today's session."""
    places = () if day.now is None else day.now.places
    shown = {place.entry.exercise for place in places}
    shown |= {place.other[0].exercise for place in places if place.other is not None}
    return [one for one in logged if one["exercise"] not in shown]


def _text(record: Record, unit: Unit) -> str:
    match record:
        case SetRecord():
            return _set(record, unit)
        case Skipped():
            return f"Left out: {record.reason}"
        case Replaced():
            return f"Done as {_name(record.by)}: {record.reason}"
        case Missed():
            return f"{record.session} left out: {record.reason}"
        case BodyMass():
            return f"Body mass {load_words(record.kg, unit)}"
        case _:
            return "Taken back"


def _set(record: SetRecord, unit: Unit) -> str:
    known = record.exercise in catalogue.ids()
    load = load_text(record.load_kg, record.exercise, unit) if known else f"{record.load_kg:g} kg"
    head = {"working": "Set", "warm-up": "Warm-up", "drop": "Drop set"}[record.role]
    number = f" {record.number}" if record.number and record.role == "working" else ""
    pieces = [f"{head}{number}: {load} × {record.reps}"]
    if record.partial_reps:
        pieces[0] += f" + {record.partial_reps} partial"
    if record.side:
        pieces.append(record.side)
    if record.to_failure:
        pieces.append("to failure")
    elif record.rir is not None:
        pieces.append(f"{record.rir:g} left")
    if record.pain:
        pieces.append(f"pain {record.pain.level} of 10, {record.pain.where}")
    if record.technique:
        pieces.append("technique broke down")
    pieces += record.symptoms
    if record.note:
        pieces.append(f"“{record.note}”")
    return ", ".join(pieces)


def _name(ident: str) -> str:
    return catalogue.exercise(ident).name if ident in catalogue.ids() else ident
