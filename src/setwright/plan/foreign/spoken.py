"""Numbers in words and signs of many keyboards brought to figures and plain signs."""

from __future__ import annotations

import re
from typing import Final

_WORDS: Final = {
    word: number
    for number, words in {
        1: "one single eine einen une un una één een", 2: "two zwei deux dos twee to",
        3: "three drei trois tres drie tre", 4: "four vier quatre cuatro fire fyra",
        5: "five fünf cinq cinco vijf fem", 6: "six sechs seis zes seks", 8: "eight acht huit ocho",
        7: "seven sieben sept siete zeven", 9: "nine neun neuf nueve negen",
        10: "ten zehn dix diez tien ti", 12: "twelve zwölf douze doce twaalf tolv",
        15: "fifteen fünfzehn quinze quince vijftien femten",
        20: "twenty zwanzig vingt veinte twintig",
        30: "thirty dreissig dreißig trente treinta dertig",
    }.items()
    for word in words.split()
}  # fmt: skip
_NUMBER: Final = "|".join(sorted(_WORDS, key=len, reverse=True))
_COUNTED: Final = (
    r"(?:(?:working\s+|hard\s+)?sets?|s[aä]tze|satz|s[ée]ries?|reps?|repetitions?|r[ée]p[ée]titions|"
    r"repeticiones|wdh|wiederholungen|herhalingen|reeksen|minutes?|minuten|minutos|seconds?|"
    r"(?:left\s+)?in\s+(?:reserve|the\s+tank)|more\s+in|short\s+of|away\s+from|(?:min|s|sec)\b)"
)
_BEFORE: Final = re.compile(
    rf"\b({_NUMBER})\b(?=\s+(?:to\s+(?:{_NUMBER})\s+)?(?:(?:more|good|clean)\s+)?{_COUNTED})",
    re.IGNORECASE,
)
_AFTER: Final = re.compile(
    rf"\b((?:sets|s[aä]tze|s[ée]ries|reeksen)\s+(?:of|de|à|zu|van)\s+)({_NUMBER})\b"
    rf"(?:(\s+(?:to|bis|à|a|tot)\s+)({_NUMBER})\b)?",
    re.IGNORECASE,
)
_BETWEEN: Final = re.compile(r"(?<=\d)\s+(?:a|à|tot|hasta|al|ou|or|oder|till|o)\s+(?=\d)")
_HALF: Final = re.compile(r"(?<=\d)\s*½")
_SIGNS: Final = str.maketrans(
    {"×": "x", "✕": "x", "✖": "x", "х": "x", "‑": "-", "−": "-", "‐": "-", "’": "'", "‘": "'",
     "“": '"', "”": '"', "″": '"', "′": "'", "\u00a0": " ", "\u202f": " ", "\u2009": " ",
     "＠": "@", "⁓": "~"}
)  # fmt: skip


def in_figures(text: str) -> str:
    """A line with its numbers as figures and its signs as a plain keyboard has them.

    >>> in_figures("Three sets of eight to ten")
    '3 sets of 8 to 10'
    """
    plain = _HALF.sub(".5", text.translate(_SIGNS))
    plain = _AFTER.sub(_second, plain)
    plain = _BEFORE.sub(lambda match: str(_WORDS[match[1].lower()]), plain)
    return _BETWEEN.sub("-", plain)


def _second(match: re.Match[str]) -> str:
    first = f"{match[1]}{_WORDS[match[2].lower()]}"
    return f"{first}{match[3]}{_WORDS[match[4].lower()]}" if match[4] else first
