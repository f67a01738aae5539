"""What may follow ``100 x 5`` on a typed line: effort, rest, side, pain and more."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from setwright.plan.amounts import NUMBER, AmountError, read_rest
from setwright.plan.done_words import read_effort
from setwright.plan.symptoms import SYMPTOMS

TAIL_FORMS = (
    "`@2`, `RPE 8`, `rest 120`, `left`, `right`, `to failure`, `warm-up`, `drop`, `pain knee 3`, "
    "`technique`, `symptom dizziness`, `note ...`"
)
_EFFORT = re.compile(
    rf"(?P<mark>@\s*(?:rir|rpe)?|rir|rpe)\s*(?P<list>{NUMBER}(?:\s*,\s*{NUMBER})*)", re.IGNORECASE
)
_REST = re.compile(
    r"rest\s*:?\s*(\d{1,4}:\d\d|\d{1,5}(?:[.,]\d+)?\s*(?:min(?:ute)?s?|sec(?:ond)?s?|s|m)?)\b",
    re.IGNORECASE,
)
_PAIN = re.compile(
    r"pain\s*:?\s+(?P<where>[^\W\d][^\d,;]*?)\s+(?P<level>\d{1,3})(?:\s*/\s*10)?\b", re.IGNORECASE
)
_SYMPTOM = re.compile(rf"(?:symptom\s*:?\s*)(?P<name>{'|'.join(SYMPTOMS)})\b", re.IGNORECASE)
_NOTE = re.compile(r"(?:notes?\b\s*:?|#)\s*(?P<note>.+)", re.IGNORECASE)
_WORDS: tuple[tuple[str, dict[str, Any]], ...] = (
    (r"(?:to\s+)?failure|failed|fail", {"to_failure": True}),
    (r"warm[\s-]?up|wu", {"role": "warm-up"}),
    (r"drop(?:[\s-]?set)?", {"role": "drop"}),
    (r"left|l", {"side": "left"}),
    (r"right|r", {"side": "right"}),
    (r"technique(?:\s+broke(?:\s+down)?)?|form(?:\s+broke(?:\s+down)?)?", {"technique": True}),
)
_FLAGS = tuple(
    (re.compile(rf"(?:{words})(?![\w-])", re.IGNORECASE), said) for words, said in _WORDS
)
_BETWEEN = re.compile(r"[\s,;]+")


@dataclass
class Tail:
    """What was said after the repetitions.

    Attributes:
        fields: fields of the set record.
        rirs: repetitions in reserve of each set, or None when not said.
    """

    fields: dict[str, Any] = field(default_factory=dict)
    rirs: tuple[float, ...] | None = None


def read_tail(text: str, sets: int = 1) -> Tail:
    """Read the rest of a line.

    Args:
        text: what follows the repetitions.
        sets: how many sets the line has; an effort is said once for all, or once for each.

    Raises:
        AmountError: with what is allowed, and what was found as second argument.
    """
    tail = Tail()
    rest = text
    while rest := rest[match.end() :] if (match := _BETWEEN.match(rest)) else rest:
        rest = rest[_piece(rest, tail, sets) :]
    return tail


def _piece(text: str, tail: Tail, sets: int) -> int:
    """Read one piece; its length."""
    if match := _EFFORT.match(text):
        tail.rirs = _efforts(match, sets)
        return match.end()
    if match := _REST.match(text):
        amount = re.sub(r"(?<=\d)\s*m\Z", " min", match[1])
        tail.fields["rest_s"] = float(read_rest(amount)[0])
        return match.end()
    if match := _PAIN.match(text):
        level = int(match["level"])
        if level > 10:
            raise AmountError("pain from 0 to 10", match[0])
        tail.fields["pain"] = {"where": match["where"].strip(), "level": level}
        return match.end()
    if match := _SYMPTOM.match(text):
        tail.fields["symptoms"] = (*tail.fields.get("symptoms", ()), match["name"].lower())
        return match.end()
    if re.match(r"symptom", text, re.IGNORECASE):
        raise AmountError(f"`symptom` and one of: {', '.join(SYMPTOMS)}", text)
    if match := _NOTE.match(text):
        tail.fields["note"] = match["note"].strip()
        return match.end()
    for pattern, said in _FLAGS:
        if match := pattern.match(text):
            tail.fields |= said
            return match.end()
    raise AmountError(TAIL_FORMS, text.split()[0])


def _efforts(match: re.Match[str], sets: int) -> tuple[float, ...]:
    rpe = "rpe" in match["mark"].lower()
    listed = re.sub(r"(?<=\d),(?=5\b)", ".", match["list"]) if sets == 1 else match["list"]
    try:
        figures = tuple(read_effort(piece, rpe) for piece in re.split(r"\s*,\s*", listed))
    except AmountError as error:
        raise AmountError(str(error), match[0]) from None
    if len(figures) == 1:
        return figures * sets
    if len(figures) != sets:
        raise AmountError(f"one effort for all, or {sets}, one for each set", match[0])
    return figures
