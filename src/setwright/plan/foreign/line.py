"""One free line: the exercise, what is prescribed, and what could not be told."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Any

from setwright.documents.units import Unit
from setwright.plan.amounts import AmountError
from setwright.plan.foreign import readings
from setwright.plan.foreign.model import ASSUMED
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.patterns import PATTERNS
from setwright.plan.foreign.readings import Read
from setwright.plan.foreign.spoken import in_figures

TAKEN = "\0"
# The most characters a line with one exercise has, and what is shown of a longer one.
LONGEST, SHOWN = 500, 40
_LABEL = re.compile(
    r"\s*(?:[^\w\s(\[{#@\"'.,:;~]+\s*|\[[ xX]?\]\s*|[┌├└│⎡⎢⎣]\s*)*"
    r"(?:(?:exercise|exercice|ejercicio|übung|oefening|ex|lift|movement)\.?\s*(?:#|no\.?|nr\.?)?\s*"
    r"(?:[1-9]\d?|[A-H])\s*[:.)–-]+\s*|"
    r"[\[(]?(?:(?P<letter>[A-Za-z])(?P<place>[1-9])|(?P<number>\d{1,2})(?P<sub>[a-d]))[\])]?"
    r"(?:\s*[.):–-]+\s*|\s+)|(?P<alone>[A-Z])[.):]\s*(?=\w)|(?-i:[B-H])\s+(?=[a-z]{2,}\b)|"
    r"\d{1,2}\.\d{1,2}\.?\s+(?=[^\W\d])|[#(]?\d{1,2}\s*[.):]+\s*(?!\d)|\d{1,2}\s*[–-]\s+(?=[^\W\d])|#\d{1,2}\s+)?",
    re.IGNORECASE,
)
# Another exercise's place, as in `rest after B2`.
_REFERENCE = re.compile(r"\b[A-H]\d\b")
# How a sentence comes to its exercise.
_LEAD = re.compile(
    r"\A(?:(?:ok(?:ay)?|so|also|alright|now|and)\b,?\s+)*(?:(?:then|next|after\s+(?:that|this)|afterwards|finally|lastly|first(?:ly)?|"
    r"start(?:ing)?(?:\s+off)?|begin(?:ning)?|finish(?:ing)?(?:\s+off)?|end|followed|move\s+on|"
    r"zuerst|dann|danach|anschließend|zum\s+schluss|beginne|ensuite|puis|d'abord|enfin|commence|"
    r"termine|finis|luego|después|empieza|termina|primero|por\s+último|eerst|daarna)\b[,:]?\s*"
    r"(?:(?:with|by|on\s+to|on|to|up|mit|par|con|met)\s+)?)?"
    r"(?:(?:you\s+)?(?:do|perform|hit|go\s+for)\s+)?(?:(?:the|some|your)\s+)?(?=\S)",
    re.IGNORECASE,
)
_CUTS = re.compile(r"[\0,;|()\[\]{}]+|\s[-–—:]+\s|[:]+|\s[-–—]+|[-–—]+\s|\.\s|\.\Z|\n")
# Words that hold a line together and say nothing alone.
_GLUE = re.compile(
    r"(?:\W|\b(?:of|for|at|with|w|and|then|to|x|reps?|sets?|each|a|the|per|side|set|on|all|rest|"
    r"between|in|weight|load|wdh|mit|und|je|pro|à|min|s)\b)*\Z",
    re.IGNORECASE,
)
_FIRST = ("note", "sets_reps", "reps_sets", "timed", "free", "ladder", "sets", "reps")


@dataclass(frozen=True)
class Doubt:
    """Something a line says that is not surely understood.

    Attributes:
        text: the piece.
        why: in plain words.
        blocks: whether the exercise must stay out of the plan until it is answered.
        candidates: what may have been meant.
    """

    text: str
    why: str
    blocks: bool = True
    candidates: tuple[str, ...] = ()


@dataclass
class Found:
    """What a line says.

    Attributes:
        name: the exercise's words.
        fields: of the entry, in the model's terms.
        label: letter of a superset, or None.
        notes: words kept as a note.
        assumed: what was assumed.
        doubts: what was not surely understood.
        confidence: the least of its readings.
        prescribes: whether sets or repetitions stand in it.
        last_to_failure: whether the last set goes to failure, whatever the others leave.
    """

    name: str = ""
    fields: dict[str, Any] = field(default_factory=dict)
    label: str | None = None
    notes: list[str] = field(default_factory=list)
    assumed: list[str] = field(default_factory=list)
    doubts: list[Doubt] = field(default_factory=list)
    confidence: float = 1.0
    prescribes: bool = False
    last_to_failure: bool = False

    def keep(self, name: str, read: Read, text: str) -> None:
        """Keep a field; a second value for the same is in doubt."""
        if name in self.fields:
            if self.fields[name] != read.value:
                self.doubts.append(Doubt(text.strip(), f"a second {_SAID[name]}", blocks=False))
            return
        self.fields[name] = read.value
        self.confidence = min(self.confidence, read.confidence)
        if read.assumed:
            self.assumed.append(read.assumed)

    def read(self, name: str, text: str, reader: Callable[[], Read], blocks: bool = False) -> None:
        """Read a field; one that cannot be read is in doubt."""
        try:
            self.keep(name, reader(), text)
        except AmountError as error:
            why = f"{_SAID[name]}: {error} can stand here"
            self.doubts.append(Doubt(text.strip(), why, blocks))


_SAID = {
    "sets": "number of sets", "reps": "repetitions", "rir": "effort", "rest_s": "rest",
    "tempo": "tempo", "load_kg": "load", "partials": "partials", "superset": "superset",
}  # fmt: skip


def read_line(text: str, unit: Unit = "kg", unit_said: bool = False) -> Found:
    """Read a line.

    Args:
        text: the line.
        unit: of bare loads.
        unit_said: whether that unit was said anywhere.
    """
    found = Found()
    if len(text) > LONGEST:
        why = f"a line of more than {LONGEST} characters is no exercise: break it up"
        found.name, found.prescribes = f"{text[:SHOWN]}…", True
        found.doubts.append(Doubt(found.name, why))
        return found
    text = in_figures(text)
    label = _LABEL.match(text)
    start = label.end() if label else 0
    if label is not None:
        letter = label["letter"] or (
            chr(ord("A") + int(label["number"]) - 1)
            if label["number"] and int(label["number"]) <= 26
            else None
        )
        found.label = letter.upper() if letter else None
    rest = _LEAD.sub("", text[start:])
    matches, masked = _searched(rest)
    for kind, match in matches:
        _take(found, kind, match, unit, unit_said)
    sets_at = min(
        (
            m.start()
            for kind, m in matches
            if kind in ("sets_reps", "sets", "reps_sets", "free", "timed", "ladder", "reps")
        ),
        default=len(rest),
    )
    _words(found, masked, sets_at)
    return found


@lru_cache(maxsize=4096)
def _searched(text: str) -> tuple[tuple[tuple[str, re.Match[str]], ...], str]:
    """Every pattern found, and the text with what was found blotted out."""
    masked = text
    matches = []
    for kind, pattern in PATTERNS:
        for match in list(pattern.finditer(masked)):
            if TAKEN in match[0]:
                continue
            matches.append((kind, match))
            masked = masked[: match.start()] + TAKEN * len(match[0]) + masked[match.end() :]
    order = {name: at for at, name in enumerate(_FIRST)}
    matches.sort(key=lambda item: order.get(item[0], len(order)))
    return tuple(matches), masked


def _take(found: Found, kind: str, match: re.Match[str], unit: Unit, said: bool) -> None:
    count = found.fields.get("sets")
    text = match[0]
    if kind in ("sets_reps", "reps_sets"):
        _sets_reps(found, match)
    elif kind in ("timed", "free"):
        found.prescribes = True
        why = (
            "a time or a distance; a plan has repetitions" if kind == "timed"
            else "repetitions in words; a plan has figures"
        )  # fmt: skip
        if "reps" not in found.fields:
            found.doubts.append(Doubt(text.strip(), why))
        else:
            found.notes.append(text.strip())
    elif kind == "ladder":
        if "reps" not in found.fields:
            _ladder(found, match[1], text)
        else:
            found.doubts.append(Doubt(text.strip(), "figures of unknown meaning", blocks=False))
    elif kind == "sets":
        found.prescribes = True
        found.read("sets", text, lambda: readings.sets(match[1]), blocks=True)
    elif kind == "reps":
        found.prescribes = True
        found.read("reps", text, lambda: readings.reps(match[1], count), blocks=True)
    elif kind == "rir":
        found.read("rir", text, lambda: readings.rir(match[1], count))
    elif kind == "rpe":
        found.read("rir", text, lambda: readings.rpe(match[1], count))
    elif kind == "load_first":
        found.prescribes = True
        found.read("load_kg", text, lambda: readings.load(match["load"], unit, said))
        ways = (
            f"{match['second']} sets of {match['first']}",
            f"{match['first']} sets of {match['second']}",
        )
        found.doubts.append(Doubt(text.strip(), f"{ways[0]}, or {ways[1]}?", candidates=ways))
    elif kind == "last_failure":
        found.last_to_failure = True
        found.notes.append(text.strip())
    elif kind == "failure":
        found.keep("rir", Read((0.0, 0.0)), text)
    elif kind == "tempo" and "/" in match[1] and text[0].isdigit() and not found.prescribes:
        _ladder(found, match[1], text)
    elif kind == "tempo":
        found.read("tempo", text, lambda: readings.tempo(match[1]))
    elif kind == "rest":
        found.read("rest_s", text, lambda: readings.rest(match[1]))
    elif kind == "no_rest":
        found.keep("rest_s", Read((0, 0)), text)
    elif kind in ("load", "load_times"):
        found.read("load_kg", text, lambda: readings.load(match[1], unit, said))
    elif kind == "at":
        _at(found, match[1], text, unit)
    elif kind == "percent":
        why = "a share of 1RM; a plan has a load"
        found.doubts.append(Doubt(text.strip(), why, blocks=False))
    elif kind == "partials":
        whole = not match["which"].lower().startswith(("after", "on the last", "on last"))
        found.keep("partials", Read("whole sets" if whole else "after the last set"), text)
    elif kind == "superset":
        found.keep("superset", Read(match[1].upper()), text)
    else:  # notes and cues
        found.notes.append(match[1].strip())


def _ladder(found: Found, words: str, text: str) -> None:
    """Repetitions as one figure a set."""
    found.prescribes = True
    figures = re.findall(r"\d+", words)
    found.keep("sets", Read(len(figures), 0.9, "one set a figure"), text)
    found.read("reps", text, lambda: readings.reps(words, None), blocks=True)


def _at(found: Found, figure: str, text: str, unit: Unit) -> None:
    try:
        name, read = readings.at(figure, unit)
    except AmountError as error:
        found.doubts.append(Doubt(text.strip(), f"{error}", blocks=False))
    else:
        found.keep(name, read, text)


def _sets_reps(found: Found, match: re.Match[str]) -> None:
    found.prescribes = True
    if "sets" in found.fields or any(doubt.blocks for doubt in found.doubts):
        found.doubts.append(Doubt(match[0].strip(), "a second prescription", blocks=False))
        return
    sets, reps = match["sets"], match["reps"]
    band = re.fullmatch(r"\d+\D+\d+", sets) and re.fullmatch(r"\d{1,2}", reps)
    if band and int(reps) <= 6 and int(re.findall(r"\d+", sets)[0]) >= 5:
        sets, reps = reps, sets
        found.assumed.append("a band times a number read as repetitions times sets")
        found.confidence = min(found.confidence, 0.9)
    whole = sets.isdigit() and reps.isdigit()
    if whole and int(sets) > 6 and int(reps) <= 6:
        found.doubts.append(
            Doubt(
                match[0].strip(),
                f"{sets} sets of {reps}, or {reps} sets of {sets}?",
                candidates=(f"{sets} sets of {reps}", f"{reps} sets of {sets}"),
            )
        )
        return
    found.read("sets", match[0], lambda: readings.sets(sets), blocks=True)
    count = found.fields.get("sets")
    found.read("reps", match[0], lambda: readings.reps(reps, count), blocks=True)


def _words(found: Found, masked: str, sets_at: int) -> None:
    """The exercise's name and the words left over."""
    segments = [(at, words) for at, words in _segments(masked) if not _GLUE.match(words)]
    before = [item for item in segments if item[0] < sets_at]
    pool = before or segments
    if pool:
        first, taken = _name_of([words for _, words in pool])
        own = pool[first : first + taken]
        found.name = " ".join(words for _, words in own)
        segments = [item for item in segments if item not in own]
    for _, words in segments:
        if re.search(r"partial", words, re.IGNORECASE) and "partials" not in found.fields:
            found.doubts.append(
                Doubt(
                    words,
                    "lengthened partials: after the last set, or as whole sets?",
                    blocks=False,
                    candidates=("partials after the last set", "partials whole sets"),
                )
            )
        elif re.search(r"\d", _REFERENCE.sub("", words)):
            found.doubts.append(Doubt(words, "figures of unknown meaning", blocks=False))
        else:
            found.notes.append(words)
            found.confidence = min(found.confidence, max(ASSUMED, 0.85))
            found.assumed.append(f"{words!r} kept as a note")


def _segments(masked: str) -> Iterator[tuple[int, str]]:
    at = 0
    for cut in [*_CUTS.finditer(masked), None]:
        end = cut.start() if cut is not None else len(masked)
        words = masked[at:end].strip(" \t@*_~=+&/-–—#x×\"'")
        if words:
            yield at, words
        at = cut.end() if cut is not None else end


def _name_of(segments: list[str]) -> tuple[int, int]:
    """Which segments are the name, first and how many: those that surely mean an exercise.

    Before them may stand what they train, as in ``Chest: bench press``.
    """
    for first in range(min(len(segments), 2)):
        rest = segments[first:]
        for count in range(min(len(rest), 3), 1, -1):
            whole = named(" ".join(rest[:count]))
            if whole.ident is not None and whole.confidence >= 0.95:
                return first, count
        if named(rest[0]).ident is not None:
            return first, 1
    return 0, 1
