"""The plan as it grows while a file is read, and what every piece of the file became."""

from __future__ import annotations

import re
from collections.abc import Hashable, Sequence
from dataclasses import dataclass, field, replace
from typing import Any

from pydantic import ValidationError

from setwright.documents.units import Unit
from setwright.documents.validation import explained
from setwright.exercises.catalogue import exercise as declared
from setwright.plan.foreign.headings import DayHeading
from setwright.plan.foreign.line import Doubt, Found
from setwright.plan.foreign.model import ASSUMED, DOUBTFUL, Kind, Piece
from setwright.plan.foreign.naming import Named, named
from setwright.plan.intake import DAYS
from setwright.plan.shorthand import format_entry
from setwright.plan.week import Entry

# What a line leaves open, common practice; an import says so where it fills them in.
DEFAULT_RIR = (2.0, 2.0)
DEFAULT_REST_S = {"compound": (120, 180), "isolation": (60, 90)}
LONGEST_NOTE = 300
# What joins exercises that are alternated, written between two of them.
JOINED = re.compile(
    r"\s+(?:/|\+|&|ss|s/s|into|(?:->|=>|→|⇒|➔|➡\ufe0f?)|w/|"
    r"(?:\(?(?:as\s+)?(?:a\s+)?super\s?-?set(?:ted)?|paired|combined|supersatz|superserie|biset|"
    r"bi-set|alternat(?:ed|ing)|im\s+wechsel|en\s+superset|en\s+superserie)"
    r"(?:\s*(?:with|w/|mit|avec|con|met|to|and|:))?|with)\s+",
    re.IGNORECASE,
)


@dataclass
class EntryDraft:
    """An exercise that can stand in the plan.

    Attributes:
        entry: without its superset.
        pieces: indices of the pieces it was read from, the exercise's own first.
        group: what it shares with the exercises it alternates with, or None.
        letter: of the superset, when one was written.
    """

    entry: Entry
    pieces: tuple[int, ...]
    group: Hashable | None = None
    letter: str | None = None


@dataclass
class DayDraft:
    """A session as it is read.

    Attributes:
        heading: as read; None when the exercises began without one.
        piece: index of the heading's piece, or None.
        entries: exercises that can stand in the plan.
        defaults: effort, rest and tempo said for this day.
        left_out: exercises that wait for an answer.
    """

    heading: DayHeading | None
    piece: int | None
    entries: list[EntryDraft] = field(default_factory=list)
    defaults: dict[str, Any] = field(default_factory=dict)
    left_out: int = 0


class Draft:
    """The growing plan.

    Attributes:
        pieces: what every piece became.
        days: sessions, in order.
        head: title, person and unit.
        defaults: effort, rest and tempo said for the whole plan.
    """

    def __init__(self) -> None:
        self.pieces: list[Piece] = []
        self.days: list[DayDraft] = []
        self.head: dict[str, str] = {}
        self.defaults: dict[str, Any] = {}

    @property
    def unit(self) -> Unit:
        """Unit of the plan."""
        return "lb" if self.head.get("unit") == "lb" else "kg"

    def say(
        self,
        place: str,
        text: str,
        kind: Kind,
        meaning: str,
        confidence: float = 1.0,
        why: str = "",
        candidates: Sequence[str] = (),
        row: str = "",
    ) -> int:
        """Account for a piece; its index."""
        self.pieces.append(
            Piece(place, text, kind, meaning, confidence, why, tuple(candidates), row or place)
        )
        return len(self.pieces) - 1

    def change(self, piece: int, **fields: Any) -> None:
        """Account for a piece anew."""
        self.pieces[piece] = replace(self.pieces[piece], **fields)

    def day(self, place: str, text: str, heading: DayHeading, row: str = "") -> DayDraft:
        """Begin a session."""
        meaning = day_words(heading)
        piece = self.say(place, text, "day", meaning, heading.confidence, row=row)
        self.days.append(DayDraft(heading, piece))
        return self.days[-1]

    def exercise(
        self,
        found: Found,
        place: str,
        text: str,
        day: DayDraft,
        *,
        row: str = "",
        cells: Sequence[int] = (),
        blocked_by: str = "",
        group: Hashable | None = None,
    ) -> int:
        """Put an exercise into a day, or say why it must wait.

        Args:
            found: what the line or row says.
            place: of the line, or of the cell with the exercise's name.
            text: as it stands there.
            day: the session.
            row: place of the row.
            cells: pieces of the row's other cells.
            blocked_by: place of another piece that must be answered first.
            group: what it shares with the exercises it alternates with.

        Returns:
            Index of its piece.
        """
        names = _names(found.name)
        doubts = [*found.doubts, *_missing(found, names, bool(blocked_by))]
        entries: list[Entry] = []
        if not blocked_by and not any(doubt.blocks for doubt in doubts):
            for one in names:
                entry = self._entry(found, one, day, doubts)
                entries += [entry] if entry is not None else []
            if len(entries) < len(names):
                entries = []
        why = [*found.assumed, *(one.assumed for one in names if one.assumed)]
        confidence = min(found.confidence, *(one.confidence for one in names))
        if entries:
            said = self._said(found, day, names)
            why += said
            confidence = min(confidence, ASSUMED) if said else confidence
        meaning = "; ".join(format_entry(entry, self.unit) for entry in entries)
        kind: Kind = "exercise"
        if doubts:
            kind, confidence = "attention", min(confidence, DOUBTFUL)
            why = [f"{doubt.text!r}: {doubt.why}" if doubt.text else doubt.why for doubt in doubts]
            meaning = f"{meaning} (kept as a note where in doubt)" if entries else "not in the plan"
        elif blocked_by:
            kind, meaning = "waiting", "not in the plan"
            why = [f"waits for {blocked_by}"]
        candidates = [one for doubt in doubts for one in doubt.candidates]
        piece = self.say(
            place, text, kind, meaning, round(confidence, 2), "; ".join(why), candidates, row
        )
        letter = found.fields.get("superset") or found.label
        shared = group if group is not None else ("letter", letter) if letter else None
        if len(entries) > 1 and shared is None:
            shared = ("line", place)
        for entry in entries:
            day.entries.append(EntryDraft(entry, (piece, *cells), shared, letter))
        if not entries:
            day.left_out += 1
            for cell in cells:
                if self.pieces[cell].kind == "exercise":
                    self.change(cell, kind="waiting", why=f"waits for {blocked_by or place}")
        return piece

    def _said(self, found: Found, day: DayDraft, names: Sequence[Named]) -> list[str]:
        """What was filled in because nothing was said."""
        said = []
        known = self._defaults(day, names[0]) | found.fields
        if "rir" not in known:
            said.append(f"no effort said: RIR {DEFAULT_RIR[0]:g}")
        if "rest_s" not in known:
            low, high = _rest_of(names[0])
            said.append(f"no rest said: {low}-{high} s")
        return said

    def _defaults(self, day: DayDraft, name: Named) -> dict[str, Any]:
        """What was said for all exercises, for those of one kind, or for this day."""
        kind = declared(name.ident).kind if name.ident else "compound"
        said = {**self.defaults, **day.defaults}
        own = {key.removeprefix(f"{kind} "): value for key, value in said.items()
               if key.startswith(f"{kind} ")}  # fmt: skip
        return {key: value for key, value in said.items() if " " not in key} | own

    def _entry(self, found: Found, name: Named, day: DayDraft, doubts: list[Doubt]) -> Entry | None:
        notes = [*found.notes, *([name.extra] if name.extra else [])]
        notes += [doubt.text for doubt in doubts if not doubt.blocks and doubt.text]
        note = "; ".join(dict.fromkeys(notes))
        if len(note) > LONGEST_NOTE:
            doubts.append(Doubt("", f"a note longer than {LONGEST_NOTE} characters: cut", False))
            note = note[:LONGEST_NOTE]
        fields = {"rir": DEFAULT_RIR, "rest_s": _rest_of(name)} | self._defaults(day, name)
        if found.last_to_failure and "rir" not in found.fields:
            fields["rir"] = (fields["rir"][0], 0.0)
        fields |= found.fields | {"exercise": name.ident, "note": note, "superset": None}
        try:
            return Entry.model_validate(fields, strict=True)
        except ValidationError as error:
            doubts += [
                Doubt(f"{field_} {said}", f"allowed: {allowed}")
                for field_, said, allowed in explained(error)
            ]
            return None


def _names(words: str) -> list[Named]:
    """The exercise meant; several when words join some by ``+``, ``/`` or ``&``."""
    one = named(words)
    if one.ident is None:
        parts = [part for part in JOINED.split(f"{words} ") if part.strip()]
        several = [named(part.strip()) for part in parts]
        if len(several) > 1 and all(other.ident is not None for other in several):
            return several
    return [one]


def _missing(found: Found, names: Sequence[Named], blocked: bool) -> list[Doubt]:
    """What must be known before the exercise can stand in a plan."""
    missing = []
    if names[0].ident is None:
        why = "no exercise surely meant" if names[0].words else "no exercise named"
        missing.append(Doubt(names[0].words, why, candidates=names[0].candidates))
    if blocked or any(doubt.blocks for doubt in found.doubts):
        return missing
    for name, words in (("sets", "no number of sets"), ("reps", "no repetitions")):
        if name not in found.fields:
            missing.append(Doubt("", words))
    return missing


def _rest_of(name: Named) -> tuple[int, int]:
    kind = declared(name.ident).kind if name.ident else "compound"
    return DEFAULT_REST_S[kind]


def day_words(heading: DayHeading) -> str:
    """A day heading in the plan's words."""
    if heading.off:
        return "a day without training"
    days = " and ".join(DAYS[day].capitalize() for day in heading.weekdays)
    minutes = f", {heading.minutes} min" if heading.minutes else ""
    return f"{days + ': ' if days else ''}{heading.name}{minutes}"
