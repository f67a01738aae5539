"""One exercise on one line, as the trade writes it; read and written.

``Back squat: 3 x 6-8, RIR 3-1, rest 2-3 min, tempo 3/0/1/0, superset A, 80 kg,
partials after the last set, note ...``: the sets and repetitions first, the rest in any order.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from pydantic import ValidationError

from setwright.documents.errors import DocumentError, Fault
from setwright.plan import amounts
from setwright.plan.amounts import NUMBER, TO, AmountError
from setwright.plan.naming import UnsureNameError, exercise_id, exercise_name
from setwright.plan.week import Entry

LINE_FORM = "`Exercise: sets x reps, RIR first-last, rest low-high`"
PIECES = (
    "`RIR 3-1`, `rest 2-3 min`, `tempo 3/1/1/0`, `superset A`, `80 kg`, "
    "`partials after the last set`, `note ...`"
)


class LineError(ValueError):
    """A piece of a line that cannot be read.

    Attributes:
        offset: where in the line it stands, from 0.
        field: the field it belongs to.
        found: what stands there.
        allowed: what may stand there.
    """

    def __init__(self, offset: int, field_: str, found: str, allowed: str) -> None:
        self.offset, self.field, self.found, self.allowed = offset, field_, found, allowed
        super().__init__(f"found {found}; allowed: {allowed}")


@dataclass
class Prescription:
    """What a line prescribes, as fields of an entry, and where each stands in the line."""

    fields: dict[str, Any] = field(default_factory=dict)
    offsets: dict[str, int] = field(default_factory=dict)

    def put(self, name: str, value: Any, offset: int, found: str) -> None:
        """Keep a field.

        Raises:
            LineError: when the field is there already.
        """
        if name in self.fields:
            raise LineError(offset, name, f"{found!r} as well", "each thing said once")
        self.fields[name] = value
        self.offsets[name] = offset


_TIMES = r"\s*(?:sets?\s+of|sets?\s*[x×*]|s[aä]tze?\s*(?:[x×*]|zu)|sets?\s+to|[x×*])\s*"
_SETS = re.compile(
    rf"(?P<sets>\d{{1,6}}){_TIMES}(?P<reps>\d{{1,6}}(?:{TO}\d{{1,6}}|(?:/\d{{1,6}})+)?)"
    r"(?![\d.:%])(?!\s*(?:s|secs?|seconds?|sek|min|minutes?|m|kg|lbs?)\b)"
    r"(?:\s*(?:reps?|repetitions?|wdh|wiederholungen)\b\.?)?"
    r"(?:\s*(?:(?:per|each|a)\s+(?:side|leg|arm|hand)|e/s|p/s)\b)?",
    re.IGNORECASE,
)
_AMOUNT_TIME = rf"(?:\d{{1,3}}:\d\d|{NUMBER})"
_TIME_UNIT = r"(?:seconds?|secs?|sek|s|minutes?|mins?|min|m|\"|')"
_PIECES: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (name, re.compile(pattern, re.IGNORECASE))
    for name, pattern in (
        ("note", r"(?:note|notiz)(?:\s*:\s*|\s+)(.*)\Z"),
        ("bracket", r"\(([^()]*)\)"),
        ("rir", rf"(?:@\s*)?RIR\s*:?\s*({NUMBER}(?:{TO}{NUMBER})?)(?![\d.])"),
        (
            "rir",
            rf"(?:@\s*)?({NUMBER}(?:{TO}{NUMBER})?)\s*(?:RIR\b|in reserve\b|reps? in reserve\b)",
        ),
        ("rpe", rf"(?:@\s*)?RPE\s*:?\s*({NUMBER}(?:{TO}{NUMBER})?)(?![\d.])"),
        ("rpe", rf"(?:@\s*)?({NUMBER}(?:{TO}{NUMBER})?)\s*RPE\b"),
        ("failure", r"(?:taken\s+)?(?:to|bis(?:\s+zum)?)\s+(?:failure|muskelversagen)\b"),
        ("tempo", r"tempo\s*:?\s*([\dX][\dX./,-]*[\dX]|[\dX]+)"),
        ("tempo", rf"({NUMBER}/{NUMBER}/(?:{NUMBER}|X)(?:/{NUMBER})?)(?![\d/])"),
        (
            "rest_s",
            rf"(?:rest|pause)\s*:?\s*({_AMOUNT_TIME}\s*{_TIME_UNIT}?(?:{TO}{_AMOUNT_TIME}"
            rf"\s*{_TIME_UNIT}?)?)(?![\w.])\.?",
        ),
        (
            "rest_s",
            rf"({_AMOUNT_TIME}\s*{_TIME_UNIT}?{TO}{_AMOUNT_TIME}\s*{_TIME_UNIT}|"
            rf"{_AMOUNT_TIME}\s*{_TIME_UNIT}|\d{{1,3}}:\d\d)(?!\w)\.?(?:\s*(?:of\s+)?rest\b)?",
        ),
        (
            "load_kg",
            rf"(?:@|at\b|with\b|mit\b)?\s*({NUMBER}\s*(?:kgs?|kilos?|lbs?|pounds?))\b"
            r"(?:\s*(?:per|each|a)\s+(?:hand|side|dumbbell)\b)?",
        ),
        (
            "partials",
            r"(?:lengthened\s+)?partials\s+(after\s+(?:the\s+)?last\s+set|whole\s+sets)\b",
        ),
        ("superset", r"(?:superset\s*:?\s*)([A-Z])\b"),
        ("letter", r"([A-Z])(?![\w'])"),
    )
)
_SEPARATORS = re.compile(r"[\s,;|·]*(?:and\b\s*)?[-–—]?\s*|[\s,;|·.]*", re.IGNORECASE)
_PIECE_END = re.compile(r"[,;|]")


def read_prescription(text: str, start: int = 0) -> Prescription:
    """Read what follows the exercise: sets and repetitions, then the rest in any order.

    Args:
        text: the whole line.
        start: where the prescription begins.

    Raises:
        LineError: on the first piece that cannot be read.
    """
    result = Prescription()
    sets = _SETS.match(text, start)
    if sets is None:
        found = repr(text[start:].strip()[:40]) if text[start:].strip() else "nothing"
        raise LineError(start, "sets", found, "sets x repetitions, for example `3 x 8-10`")
    result.put("sets", int(sets["sets"]), sets.start("sets"), sets["sets"])
    counts = sets["reps"].split("/")
    if len(counts) > 1:
        reps = (min(map(int, counts)), max(map(int, counts)))
        if len(counts) != int(sets["sets"]):
            raise LineError(
                sets.start("reps"), "reps", repr(sets["reps"]), "one figure a set, or a band `8-10`"
            )
    else:
        reps = amounts.read_reps(sets["reps"])
    result.put("reps", reps, sets.start("reps"), sets["reps"])
    return read_pieces(text, sets.end(), result)


def has_sets(line: str) -> bool:
    """Whether a line has sets and repetitions in it."""
    return _SETS.search(line) is not None


def read_pieces(text: str, at: int, result: Prescription | None = None) -> Prescription:
    """Read effort, rest, tempo and the like, in any order, up to the end of the line.

    Raises:
        LineError: on the first piece that cannot be read.
    """
    result = result or Prescription()
    while True:
        separators = _SEPARATORS.match(text, at)
        at = separators.end() if separators else at
        if at >= len(text):
            return result
        at = _take(text, at, result)


def _take(text: str, at: int, result: Prescription) -> int:
    """Read one piece and say where it ends."""
    for name, pattern in _PIECES:
        match = pattern.match(text, at)
        if match is None or (name == "letter" and not match[1].isupper()):
            continue
        try:
            _keep(name, match, result)
        except AmountError as error:
            raise LineError(at, name, repr(match[0]), str(error)) from None
        return match.end()
    end = _PIECE_END.search(text, at)
    piece = text[at : end.start() if end else len(text)].strip()
    raise LineError(at, "", repr(piece[:60]), PIECES)


def _keep(name: str, match: re.Match[str], result: Prescription) -> None:
    at, found = match.start(), match[0]
    if name == "failure":
        result.put("rir", (0.0, 0.0), at, found)
        return
    text = match[1]
    if name in ("note", "bracket"):
        result.put("note", text.strip() if name == "bracket" else text, at, found)
    elif name == "rir":
        result.put("rir", amounts.read_rir(text), at, found)
    elif name == "rpe":
        first, last = amounts.read_rir(text)
        if max(first, last) > 10:
            raise AmountError("an RPE up to 10")
        result.put("rir", (10 - first, 10 - last), at, found)
    elif name == "tempo":
        result.put("tempo", amounts.read_tempo(text.rstrip(",")), at, found)
    elif name == "rest_s":
        result.put("rest_s", amounts.read_rest(text), at, found)
    elif name == "load_kg":
        result.put("load_kg", amounts.read_load(text), at, found)
    elif name == "partials":
        whole = text.lower().startswith("whole")
        result.put("partials", "whole sets" if whole else "after the last set", at, found)
    else:
        result.put("superset", text.upper(), at, found)


def split_name(line: str) -> tuple[str, int]:
    """The exercise's words and where the prescription begins.

    Raises:
        LineError: when the line has no sets and repetitions, or no exercise before them.
    """
    sets = _SETS.search(line)
    if sets is None:
        raise LineError(0, "", repr(line.strip()[:60]), LINE_FORM)
    name = line[: sets.start()].strip().rstrip(":-–—,;|").strip()
    if not name:
        raise LineError(0, "exercise", "no exercise", LINE_FORM)
    return name, sets.start()


def read_fields(line: str) -> Prescription:
    """Read a whole line: the exercise, still in the author's words, and its prescription."""
    name, start = split_name(line)
    result = read_prescription(line, start)
    result.put("exercise", name, line.index(name), name)
    return result


def parse_line(line: str) -> Entry:
    """Read one line of shorthand.

    Raises:
        DocumentError: when a piece cannot be read, effort or rest is missing, or no exercise is
            surely meant; the column counts from 1.
    """
    try:
        found = read_fields(line)
        fields = {**found.fields, "exercise": exercise_id(found.fields["exercise"])}
        return Entry.model_validate(fields, strict=True)
    except LineError as error:
        fault = Fault(error.field, error.found, error.allowed, 1, error.offset + 1)
    except UnsureNameError as error:
        fault = Fault("exercise", repr(found.fields["exercise"]), str(error), 1, 1)
    except ValidationError as error:
        item = error.errors()[0]
        name = str(item["loc"][0])
        said = "nothing" if item["type"] == "missing" else repr(item["input"])
        fault = Fault(name, said, item["msg"], 1, found.offsets.get(name, 0) + 1)
    raise DocumentError("line", (fault,))


def format_prescription(entry: Entry, unit: str = "kg") -> str:
    """What an entry prescribes, without the exercise."""
    pieces = [
        f"{entry.sets} x {amounts.write_reps(entry.reps)}",
        f"RIR {amounts.write_rir(entry.rir)}",
        f"rest {amounts.write_rest(entry.rest_s)}",
    ]
    if entry.tempo is not None:
        pieces.append(f"tempo {amounts.write_tempo(entry.tempo)}")
    if entry.superset is not None:
        pieces.append(f"superset {entry.superset}")
    if entry.load_kg is not None:
        pieces.append(amounts.write_load(entry.load_kg, unit))
    if entry.partials is not None:
        pieces.append(f"partials {entry.partials}")
    if entry.note:
        pieces.append(f"note {entry.note}")
    return ", ".join(pieces)


def fits_a_line(entry: Entry) -> bool:
    """Whether the note can stand at the end of a line and read back the same."""
    note = entry.note
    return note.isprintable() and note == note.strip() and not note.startswith(":")


def format_entry(entry: Entry, unit: str = "kg") -> str:
    """One line of shorthand that ``parse_line`` reads back to the same entry."""
    return f"{exercise_name(entry.exercise)}: {format_prescription(entry, unit)}"
