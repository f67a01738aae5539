"""Plans as coaches write them in a message or a note: day headings, then one exercise a line."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from pydantic import ValidationError

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.yaml_io import MAX_CHARACTERS
from setwright.plan.checking import plan_clashes
from setwright.plan.day_words import HEADING, MINUTES, SPREAD, WEEKDAYS
from setwright.plan.intake import DAYS
from setwright.plan.naming import UnsureNameError, exercise_id
from setwright.plan.shorthand import LINE_FORM, LineError, has_sets, read_fields, read_pieces
from setwright.plan.week import Plan

MAX_LINES = 1000
MAX_LINE = 500
_LABEL = re.compile(
    r"(?:[-*•–—+>]\s+|\d{1,2}\s*[.)]\s*)?(?:(?P<letter>[A-Z])(?P<place>[1-9])\s*[.):]?\s+)?"
)
_MARKUP = re.compile(r"^[#=*_\s]+|[#=*_:\s]+$")
_TITLE = re.compile(r"(?:title|plan|programme|program)\s*:\s*(.+)\Z", re.IGNORECASE)
_PERSON = re.compile(r"(?:person|client|for|athlete)\s*:\s*(.+)\Z", re.IGNORECASE)
_UNIT = re.compile(r"(?:unit|loads?)\s*:\s*(kg|lb)s?\Z", re.IGNORECASE)
_NOTE = re.compile(r"(?:note|notes|notiz|comment|//|>)\s*:?\s*\S", re.IGNORECASE)
_DEFAULT = re.compile(
    r"(?:all|all sets|throughout|default|alle sätze)\s*:?\s+(?=\S)", re.IGNORECASE
)
_ALTERNATED = re.compile(r"\s+/\s+(?=[A-Z][1-9]\b)")
MISSING = {
    "rir": "effort, on the line (`RIR 2`) or for all (`All: RIR 2, rest 2 min`)",
    "rest_s": "rest, on the line (`rest 2 min`) or for all (`All: RIR 2, rest 2 min`)",
}


@dataclass
class _Day:
    line: int
    weekday: int | None
    name: str
    minutes: int | None
    entries: list[dict[str, Any]] = field(default_factory=list)
    lines: list[int] = field(default_factory=list)


class _Reader:
    def __init__(self) -> None:
        self.faults: list[Fault] = []
        self.days: list[_Day] = []
        self.head: dict[str, str] = {}
        self.defaults: dict[str, Any] = {}

    def fault(self, line: int, column: int, field_: str, found: str, allowed: str) -> None:
        self.faults.append(Fault(field_, found, allowed, line, column))

    def take(self, line: int, raw: str) -> None:
        text = raw.strip()
        bare = _MARKUP.sub("", text)
        if not bare or set(bare) <= set("-=_*#~"):
            return
        at = len(raw) - len(raw.lstrip())
        if has_sets(text):
            self.exercises(line, text, at)
            return
        heading = HEADING.match(bare)
        if heading is not None:
            self.heading(line, heading)
        elif not self._about(line, bare, at):
            self.fault(
                line,
                at + 1,
                "",
                repr(text[:60]),
                f"a day (`Monday - Upper`), {LINE_FORM}, or `Note: ...`",
            )

    def _about(self, line: int, text: str, at: int) -> bool:
        """A line about the whole plan or a note; False when it is neither."""
        for key, pattern in (("title", _TITLE), ("person", _PERSON), ("unit", _UNIT)):
            match = pattern.match(text)
            if match is not None:
                self.head[key] = match[1].strip().lower() if key == "unit" else match[1].strip()
                return True
        default = _DEFAULT.match(text)
        if default is not None:
            try:
                pieces = read_pieces(text, default.end()).fields
            except LineError as error:
                self.fault(line, at + error.offset + 1, error.field, error.found, error.allowed)
                return True
            if not set(pieces) <= {"rir", "rest_s", "tempo"}:
                self.fault(line, at + 1, "", repr(text), "`RIR`, `rest` and `tempo` for all")
            self.defaults |= pieces
            return True
        if _NOTE.match(text):
            return True
        if not self.days and "title" not in self.head:
            self.head["title"] = text
            return True
        return False

    def heading(self, line: int, match: re.Match[str]) -> None:
        rest = match["name"]
        minutes = MINUTES.search(rest)
        if minutes is not None:
            rest = rest[: minutes.start()] + rest[minutes.end() :]
        word = match["weekday"]
        name = (
            rest.strip(" -–—:,.()[]*_#") or (word or f"day {match['number']}").strip().capitalize()
        )
        weekday = WEEKDAYS[word.lower()] if word else None
        self.days.append(_Day(line, weekday, name, int(minutes[1]) if minutes else None))

    def exercises(self, line: int, text: str, at: int) -> None:
        """One line: an exercise, or several alternated, set apart by a stroke."""
        if not self.days:
            self.fault(
                line, at + 1, "", repr(text[:60]), "a day first, for example `Monday - Upper`"
            )
            return
        start = 0
        for cut in [*_ALTERNATED.finditer(text), None]:
            end = cut.start() if cut is not None else len(text)
            self._exercise(line, text[start:end], at + start)
            start = cut.end() if cut is not None else end

    def _exercise(self, line: int, text: str, at: int) -> None:
        label = _LABEL.match(text)
        skip = label.end() if label else 0
        try:
            read = read_fields(text[skip:])
        except LineError as error:
            self.fault(line, at + skip + error.offset + 1, error.field, error.found, error.allowed)
            return
        fields = {**self.defaults, **read.fields}
        if label and label["letter"]:
            fields.setdefault("superset", label["letter"])
        column = at + skip + read.offsets["exercise"] + 1
        try:
            fields["exercise"] = exercise_id(fields["exercise"])
        except UnsureNameError as error:
            self.fault(line, column, "exercise", repr(fields["exercise"]), str(error))
        for name, allowed in MISSING.items():
            if name not in fields:
                self.fault(line, column, name, "nothing", allowed)
        self.days[-1].entries.append(fields)
        self.days[-1].lines.append(line)

    def weekdays(self) -> list[int]:
        """The weekday of each session: the one named, or days spread over the week."""
        named = [day.weekday for day in self.days if day.weekday is not None]
        if not named:
            return list(SPREAD[len(self.days)]) if len(self.days) in SPREAD else []
        return named if len(named) == len(self.days) else []


def read_plain_text(text: str, name: str) -> Plan:
    """Read a plan from plain text.

    Days begin with a weekday or ``Day 1`` (numbered days are spread over the week); exercises have
    sets and repetitions; effort and rest stand on the line or on a line ``All: RIR 2, rest 2 min``.

    Raises:
        DocumentError: listing every line that cannot be read and every name that is not surely an
            exercise, with the candidates.
    """
    lines = text.removeprefix("\ufeff").splitlines()
    if len(text) > MAX_CHARACTERS or len(lines) > MAX_LINES:
        raise DocumentError(name, (Fault("", f"{len(lines)} lines", f"up to {MAX_LINES} lines"),))
    reader = _Reader()
    for number, raw in enumerate(lines, 1):
        if len(raw) > MAX_LINE:
            reader.fault(
                number, MAX_LINE + 1, "", "a longer line", f"up to {MAX_LINE} characters a line"
            )
        else:
            reader.take(number, raw)
    for day in reader.days:
        if not day.entries and not reader.faults:
            reader.fault(day.line, 1, "", f"the day {day.name!r} without exercises", LINE_FORM)
    weekdays = reader.weekdays()
    if not reader.days:
        reader.fault(1, 1, "", "no day", "a day, for example `Monday - Upper`, and its exercises")
    elif not weekdays:
        reader.fault(
            reader.days[0].line,
            1,
            "day",
            f"{len(reader.days)} days, some or all only numbered",
            "weekdays for all, or up to seven numbered days",
        )
    if reader.faults:
        raise DocumentError(name, tuple(reader.faults))
    return _plan(reader, weekdays, name)


def _plan(reader: _Reader, weekdays: list[int], name: str) -> Plan:
    sessions = tuple(
        {
            "name": day.name,
            "day": DAYS[weekday],
            "minutes": day.minutes,
            "exercises": tuple(day.entries),
        }
        for day, weekday in zip(reader.days, weekdays, strict=True)
    )
    data = {"setwright": "plan/1", "title": "Plan", **reader.head, "sessions": sessions}
    try:
        plan = Plan.model_validate(data, strict=True)
    except ValidationError as error:
        faults = tuple(
            _fault(reader, item["loc"], repr(item["input"])[:80], item["msg"])
            for item in error.errors()
        )
        raise DocumentError(name, faults) from None
    clashes = tuple(
        _fault(reader, path, found, allowed) for path, found, allowed in plan_clashes(plan)
    )
    if clashes:
        raise DocumentError(name, clashes)
    return plan


def _fault(reader: _Reader, path: tuple[int | str, ...], found: str, allowed: str) -> Fault:
    line: int | None = 1
    if len(path) > 1 and path[0] == "sessions":
        day = reader.days[int(path[1])]
        inside = len(path) > 3 and path[2] == "exercises"
        line = day.lines[int(path[3])] if inside else day.line
    return Fault(".".join(map(str, path)), found, allowed, line)
