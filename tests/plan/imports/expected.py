"""What a person reads in each plan of this folder, and whether an import reads the same."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

from setwright.exercises.catalogue import exercise
from setwright.plan.day_words import WEEKDAYS
from setwright.plan.foreign.draft import DEFAULT_REST_S
from setwright.plan.foreign.model import Piece, Reading
from setwright.plan.intake import DAYS
from setwright.plan.shorthand import parse_line
from setwright.plan.week import Entry

FOLDER = Path(__file__).parent
KINDS = {
    "title": ("title",),
    "setting": ("setting",),
    "heading": ("heading",),
    "note": ("note",),
    "aside": ("heading", "note"),
    "off": ("day",),
    "more": ("exercise", "note"),
    "wait": ("waiting",),
    "?": ("attention",),
}


@dataclass(frozen=True)
class Line:
    """One line or row as a person reads it."""

    place: str
    reading: str


def expectations(stem: str, folder: Path = FOLDER) -> tuple[Line, ...]:
    """The lines of ``STEM.expected``: place, a bar, the reading.

    A reading is ``day WEEKDAYS NAME MINUTES``, a line of shorthand with the exercise's id (RIR and
    rest left out where the plan does not say them), several joined by ``&``, ``?`` for what must
    be asked about, ``?+`` and a line for what is kept but in doubt, or one of KINDS.
    """
    rows = (folder / f"{stem}.expected").read_text(encoding="utf-8").splitlines()
    return tuple(
        Line(place.strip(), reading.strip())
        for place, _, reading in (row.partition("|") for row in rows if row.strip())
    )


def outcome(line: Line, reading: Reading) -> str:
    """How a line came out: ``right``, ``asked`` about (it is not in the plan), or ``wrong``."""
    if right(line, reading):
        return "right"
    piece = next((one for one in reading.pieces if one.place == line.place), None)
    asked = piece is not None and piece.kind in ("attention", "waiting")
    return "asked" if asked else "wrong"


def right(line: Line, reading: Reading) -> bool:
    """Whether the import reads a line as a person does."""
    piece = next((one for one in reading.pieces if one.place == line.place), None)
    if piece is None:
        return False
    if line.reading.startswith("day "):
        return piece.kind == "day" and _same_day(line.reading, piece, reading)
    if line.reading in KINDS:
        off = line.reading != "off" or "without training" in piece.meaning
        return piece.kind in KINDS[line.reading] and off
    doubtful = line.reading.startswith("?+")
    if piece.kind != ("attention" if doubtful else "exercise"):
        return False
    if not re.match(r"[\w() ,+/-]+: \d", piece.meaning):
        return False
    wanted = line.reading.removeprefix("?+").strip()
    meaning = piece.meaning.removesuffix(" (kept as a note where in doubt)")
    expected = [_entry(one.strip()) for one in wanted.split(" & ")]
    found = [parse_line(one) for one in meaning.split("; ", len(expected) - 1)]
    return len(found) == len(expected) and all(
        _same(one, other, doubtful) for one, other in zip(found, expected, strict=True)
    )


def _entry(words: str) -> Entry:
    ident = words.split(":")[0]
    if "RIR" not in words:
        words = words.replace(", ", ", RIR 2, ", 1) if ", " in words else f"{words}, RIR 2"
    if "rest " not in words:
        low, high = DEFAULT_REST_S[exercise(ident).kind]
        head, note, said = words.partition(", note ")
        words = f"{head}, rest {low}-{high} s{note}{said}"
    return parse_line(words)


def _same(found: Entry, expected: Entry, doubtful: bool) -> bool:
    """The same prescription; the note counts unless it holds what is in doubt."""
    if doubtful or _said(found.note) == _said(expected.note):
        found = found.model_copy(update={"note": expected.note})
    return found == expected


def _said(note: str) -> list[str]:
    """The words of a note, signs and case aside."""
    return re.findall(r"\w+", note.lower())


def _same_day(words: str, piece: Piece, reading: Reading) -> bool:
    pieces = words.split()[1:]
    weekdays = []
    while pieces and pieces[0] in WEEKDAYS:
        weekdays.append(DAYS[WEEKDAYS[pieces.pop(0)]])
    minutes = (
        int(pieces.pop()) if pieces and pieces[-1].isdigit() and int(pieces[-1]) > 14 else None
    )
    name = " ".join(pieces)
    sessions = reading.plan.sessions if reading.plan is not None else ()
    return all(
        any(one.day == day and one.name == name and one.minutes == minutes for one in sessions)
        for day in weekdays
    )
