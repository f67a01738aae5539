"""Plans in plain text: a message, a note, a page of a document."""

from __future__ import annotations

import re
from collections.abc import Hashable, Mapping
from dataclasses import dataclass, field
from typing import Any

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.units import Unit
from setwright.plan.foreign import headings
from setwright.plan.foreign.finish import finished
from setwright.plan.foreign.line import Found, read_line
from setwright.plan.foreign.model import BY_CUSTOM, Reading
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.reader import Reader

MAX_LINES, MAX_LINE = 2000, 1000
_NUMBERED = re.compile(r"\s*\d{1,2}\s*[.):]")
_RULE = re.compile(r"[\W_]+\Z")
_OPENS = re.compile(r"\s*[\[{](?!\w{0,2}[\]}])(?!.*[\]}]\s*\Z)|\s*[┌⎡]")
_CLOSES = re.compile(r".*[\]}]\s*\Z|\s*[└⎣]")


@dataclass
class _Open:
    """An exercise whose following lines may still belong to it."""

    place: str
    text: str
    found: Found
    indent: int
    group: Hashable | None
    more: list[tuple[str, str, str]] = field(default_factory=list)


class _Notes(Reader):
    def __init__(self, unit: Unit | None, answers: Mapping[str, str]) -> None:
        super().__init__(unit, answers)
        self.open: _Open | None = None
        self.group: Hashable | None = None
        self.by_blank = False
        # Of the line that began the superset: how far in it stood, whether it was numbered, and
        # whether its members stood further in.
        self.group_at = 0, False, False
        self.below = ""

    def take(self, place: str, raw: str, below: str) -> None:
        """Read a line; the line below it tells whether bare words are an exercise's name."""
        text = raw.strip()
        self.below = below.strip()
        if not text:
            self.flush()
            self.warm_up = False
            if self.by_blank:
                self.group, self.by_blank = None, False
            return
        if self.left_out(place, text):
            self.flush()
        elif _RULE.match(text) and place not in self.answers:
            self.flush()
            self.draft.say(place, text, "heading", "a rule")
        elif self.week is not None and self.elsewhere(text):
            self.flush()
            self.other_week(place, text)
        else:
            self._line(place, raw, text)

    def _line(self, place: str, raw: str, text: str) -> None:
        indent = len(raw.expandtabs(4)) - len(raw.expandtabs(4).lstrip())
        found = self.parsed(place, text)
        if _OPENS.match(text) and found.prescribes and self.group is None:
            self.flush()
            self.group, self.by_blank = ("bracket", place), False
        if place not in self.answers and self.beside(place, text, found):
            pass
        elif self._belongs(found, text, indent):
            self._attach(place, text, found)
        elif found.prescribes:
            self.flush()
            self._out_of_group(text, indent)
            rest = self.day_before(place, text)
            if rest:
                self.group, text = None, rest
                found = self.parsed(place, text)
            several = self.alternated(text) or self.listed(text)
            if several and place not in self.answers:
                self.exercise(place, text, found, self.current(), self.group)
            else:
                self.open = _Open(place, text, found, indent, self.group)
        else:
            self.flush()
            self._other(place, text, found, indent)
        if _CLOSES.match(text) and self.group is not None and not self.by_blank:
            self.flush()
            self.group = None

    def _belongs(self, found: Found, text: str, indent: int) -> bool:
        """Whether a line says more of the exercise above it."""
        if self.open is None or headings.SETTING.match(headings.bare(text)):
            return False
        above = self.open.found
        if not found.name and (found.fields or found.doubts):
            return not set(found.fields) & set(above.fields)
        if found.notes and not found.name and not found.fields and self.open.more:
            return True
        nothing = not found.fields and not found.doubts and not found.prescribes
        return nothing and indent > self.open.indent and above.prescribes

    def _attach(self, place: str, text: str, found: Found) -> None:
        if self.open is None:
            return
        above = self.open.found
        above.fields |= found.fields
        above.doubts += found.doubts
        above.assumed += found.assumed if found.fields else []
        above.prescribes = above.prescribes or found.prescribes
        above.confidence = min(above.confidence, found.confidence)
        note = [*([found.name] if found.name else []), *found.notes]
        above.notes += note
        kind = "a note of" if note and not found.fields else "more of"
        self.open.more.append((place, text, f"{kind} line {self.open.place}"))

    def _other(self, place: str, text: str, found: Found, indent: int) -> None:
        if self.begin_day(place, text) is not None:
            self.group = None
            return
        words = headings.bare(text)
        if headings.SUPERSET.match(headings.unlabelled(words)):
            self.group, self.by_blank = ("superset", place), True
            self.group_at = indent, _NUMBERED.match(text) is not None, False
            self.draft.say(place, text, "heading", "a superset of the lines below", BY_CUSTOM)
            return
        sure = bool(found.name) and (
            named(found.name).ident is not None or self._figures_below(text)
        )
        if sure and not headings.NOTE.match(words):
            self.open = _Open(place, text, found, indent, self.group)
            return
        self.about(place, text, found)

    def _out_of_group(self, text: str, indent: int) -> None:
        """End a superset whose members stood further in, or had no number as this line has."""
        at, numbered, further_in = self.group_at
        if self.group is None or not self.by_blank:
            return
        out = further_in and indent <= at
        if out or (numbered and _NUMBERED.match(text) is not None):
            self.group, self.by_blank = None, False
        else:
            self.group_at = at, numbered, further_in or indent > at

    def _figures_below(self, text: str) -> bool:
        """Whether the line below prescribes sets for the words of this one."""
        if not self.below or re.search(r"\d", text) or headings.SECTION.match(text):
            return False
        below = read_line(self.below)
        return below.prescribes and not below.name

    def flush(self) -> None:
        """Put the exercise above into the plan, with all that was said of it."""
        one, self.open = self.open, None
        if one is None:
            return
        if not one.found.prescribes and not one.found.fields:
            self.about(one.place, one.text, one.found)
            for place, text, meaning in one.more:
                self.draft.say(place, text, "note", meaning, BY_CUSTOM, row=one.place)
            return
        more = [
            self.draft.say(place, text, "exercise", meaning, row=one.place)
            for place, text, meaning in one.more
        ]
        piece = self.exercise(one.place, one.text, one.found, self.current(), one.group)
        waits = self.draft.pieces[piece].meaning == "not in the plan"
        for at in more:
            if waits:
                self.draft.change(at, kind="waiting", why=f"waits for {one.place}")
            elif self.draft.pieces[at].meaning.startswith("a note"):
                self.draft.change(at, kind="note")


def read_notes(text: str, name: str, unit: Unit | None, answers: Mapping[str, str]) -> Reading:
    """Read a plan from plain text, line by line.

    Args:
        text: the notes.
        name: of the file.
        unit: of bare loads, when the coach says it.
        answers: by line number, as text.

    Raises:
        DocumentError: when the text is too long.
    """
    lines = text.removeprefix("\ufeff").splitlines()
    if len(lines) > MAX_LINES or any(len(line) > MAX_LINE for line in lines):
        found = f"{len(lines)} lines, the longest of {max(map(len, lines))} characters"
        allowed = f"up to {MAX_LINES} lines of up to {MAX_LINE} characters"
        raise DocumentError(name, (Fault("", found, allowed),))
    notes = _read(lines, unit, answers, {})
    late = notes.trailing | notes.late
    if late:
        notes = _read(lines, unit, answers, late)
    contents = [(str(at), line.strip()) for at, line in enumerate(lines, 1) if line.strip()]
    return finished(notes.draft, name, contents)


def _read(
    lines: list[str], unit: Unit | None, answers: Mapping[str, str], for_all: Mapping[str, Any]
) -> _Notes:
    """Read the lines, with what is said for all further below already known."""
    notes = _Notes(unit, answers)
    notes.draft.defaults.update(for_all)
    notes.for_all = dict(for_all)
    days = [headings.day_heading(line) for line in lines if line.strip()]
    notes.named_days = any(day is not None and not day.by_split for day in days)
    for number, (line, below) in enumerate(zip(lines, [*lines, ""][1:], strict=True), 1):
        notes.take(str(number), line, below)
    notes.flush()
    return notes
