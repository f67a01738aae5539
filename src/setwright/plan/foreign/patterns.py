"""The ways people write sets, effort, rest, tempo and load, as patterns to be searched for."""

from __future__ import annotations

import re
from typing import Final

NUMBER: Final = r"(?<![\d.,])\d{1,4}(?:[.,]\d{1,3})?"
TO: Final = r"\s*(?:-|–|—|to|bis|till|->|→|>)\s*"
BAND: Final = rf"{NUMBER}(?:{TO}{NUMBER})?"
LIST: Final = (
    rf"(?:(?<![\d.,])\d(?:,\d){{2,5}}(?![\d.,])|{NUMBER}(?:(?:/|\s*>\s*){NUMBER})+|{BAND})(?![\d:])"
)
_TIMES = (
    r"\s*(?:sets?\s+of|sets?\s*[x×*@]|sets?\s*[,:]|s[aä]tze?\s*(?:[x×*,:à]|zu|mit)|sets?\s+to|"
    r"sets?\b|s[aä]tze?\b|[x×*])\s*"
)
_COUNT = rf"\d{{1,3}}(?:{TO}\d{{1,3}}|(?:[/,]\d{{1,3}})+)?"
_REPS_WORD = r"(?:reps?|repetitions?|wdh|wh|wiederholungen)\b\.?"
_EACH = (
    r"(?:\s*(?:(?:per|each|a|je|pro)\s+(?:side|leg|arm|hand|seite|bein|arm)|each(?!\s+\w)|ea|"
    r"e/s|p/s|/\s*(?:side|leg|arm))(?!\w))?"
)
_NO_UNIT = (
    r"(?![\d:%])(?![.,]\d)(?!\s*(?:s|secs?|seconds?|sek|sekunden|min|mins|minutes?|minuten|m|"
    r"meters?|metres?|yards?|kgs?|lbs?)\b)(?!\s*['\"″′%#])"
)
_TIME_UNIT = r"(?:seconds?|secs?|sekunden|sek|s|minutes?|minuten|mins?|min|m|\"|″|''|'|′)"
_TIME = (
    rf"(?:(?<![\d.,])\d{{1,2}}\s*(?:['′]|min)\s*\d{{2}}(?!\d)(?:\s*(?:\"|″|''|s(?!\w)))?|"
    rf"(?<![\d.,:])\d{{1,3}}:\d\d(?::\d\d)?(?:\s*min\b)?|{NUMBER}(?:\s*{_TIME_UNIT}(?![\w]))?)"
)
_CLEAR_TIME = (
    rf"(?:(?<![\d.,])\d{{1,2}}\s*(?:['′]|min)\s*\d{{2}}(?!\d)(?:\s*(?:\"|″|''|s(?!\w)))?|"
    rf"(?<![\d.,:])\d{{1,3}}:\d\d(?::\d\d)?(?:\s*min\b)?|{NUMBER}\s*{_TIME_UNIT}(?![\w]))"
)
_WEIGHT = r"(?:kgs?|kilos?|kilogram(?:m?e?s)?|lbs?|pounds?|#)(?!\w)\.?"
_HAND = (
    r"(?:\s*(?:(?:per|each|a|je|pro)\s+(?:hand|side|dumbbell|db|arm|seite)|"
    r"/\s*(?:hand|side|db)))?"
)
_CUE = (
    r"(?:eccentrics?|negatives?|lowering|down|pauses?|holds?|squeeze|stretch|at\s+the|in\s+the|up|"
    r"isometric|exzentrisch|halten)"
)


def _flagged(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern, re.IGNORECASE)


# Searched for in this order; what one has taken the next no longer sees.
PATTERNS: Final[tuple[tuple[str, re.Pattern[str]], ...]] = tuple(
    (name, _flagged(pattern))
    for name, pattern in (
        ("note", r"(?<!\w)(?:notes?|cues?|comments?|hinweis|notiz|bemerkung)\s*[:–-]\s*(.*)\Z"),
        ("note", r"(?<!\w)note\s+(.*)\Z"),
        ("cue", rf"({NUMBER}\s*-?\s*(?:s|secs?|seconds?|sek|count)\s*{_CUE}\b[\w ]*)"),
        ("cue",
         r"(\d{1,2}\s*(?:[x×]\s*)?(?:warm[- ]?ups?|ramp(?:-?up)?|feeder)(?:\s+sets?)?)(?!\w)"),
        ("tempo",
         rf"tempo\s*[:=]?\s*({NUMBER}(?:\s*/\s*(?:\d{{1,2}}(?:[.,]\d{{1,3}})?|X)){{2,3}})"),
        ("tempo", r"tempo\s*[:=]?\s*([\dX](?:[\s.,/:-]?[\dX]){2,3})(?![\dX])"),
        ("tempo", r"@\s*([\d][\dX]{2,3})(?!\d|\s*(?:kg|lb|%))"),
        ("tempo",
         r"(?<![\d/.,-])(\d(?:\s*/\s*[\dX]){2,3}|\d(?:-[\dX]){2,3})(?![\d/-])(?!"
         r"\s*(?:reps?|wdh))"),
        ("tempo",
         r"(?<![\d.,])([1-6]0[1X][0-2]|[1-6][0-3][1X][0-2])(?![\d.,])(?!\s*(?:kg|"
         r"lb|s|m)\b)"),
        ("load_times", rf"(?<=\d)\s*[x×*]\s*({NUMBER}\s*{_WEIGHT}){_HAND}"),
        ("sets_reps",
         rf"(?P<sets>(?<![\d.,])\d{{1,3}}{TO}\d{{1,3}}){_TIMES}(?P<reps>{_COUNT})"
         rf"{_NO_UNIT}(?:\s*{_REPS_WORD})?{_EACH}"),
        ("sets_reps",
         rf"(?<![\d.,/-])(?P<sets>\d{{1,3}}){_TIMES}(?P<reps>{_COUNT}){_NO_UNIT}(?"
         rf":\s*{_REPS_WORD})?{_EACH}"),
        ("reps_sets",
         rf"(?P<reps>{_COUNT})\s*{_REPS_WORD}{_EACH}\s*(?:[x×*,]|for)?\s*(?P<sets>"
         rf"\d{{1,2}})\s*(?:sets?|s[aä]tze?)\b"),
        ("timed",
         rf"(?<![\d.,/-])\d{{1,3}}{_TIMES}(?:{BAND})\s*(?:{_TIME_UNIT}|meters?|met"
         rf"res?|yards?)(?!\w)"),
        ("free",
         r"(?<![\d.,/-])(?P<sets>\d{1,3})(?:\s*sets?(?:\s+of|\s*[x×*])?|\s*s[aä]tze?|\s*[x×*])\s*"
         r"(?P<words>(?:AMRAP|max(?:imum|imal)?|failure|fail|as\s+many|bis\s+zum\s+\w+|burn\w*|"
         r"ladders?|pyramids?|holds?|\?+|tbd)(?:\s+reps?)?)(?!\w)"),
        ("free", r"(?<!\w)(?P<words>AMRAP|as many (?:reps )?as possible)(?!\w)"),
        ("rir", rf"(?:leave|keep)\s+({LIST})(?:\s+reps?)?(?:\s+in\s+(?:reserve|the\s+tank))?"),
        ("rir", rf"(?:@\s*)?(?<!\w)RIR\s*[:=]?\s*({LIST})(?!\s*(?:{_WEIGHT}))"),
        ("rir",
         rf"(?:@\s*)?({LIST})\s*(?:RIR(?!\w)|(?:reps?\s+)?(?:left\s+)?in\s+(?:rese"
         rf"rve|the\s+tank)|reps?\s+left|left\s+in\s+the\s+tank|(?:reps?\s+)?(?:sh"
         rf"ort|shy)\s+of\s+failure)"),
        ("rpe", rf"(?:@\s*)?(?<!\w)RPE\s*[:=]?\s*({LIST})"),
        ("rpe", rf"(?:@\s*)?({LIST})\s*RPE(?!\w)"),
        ("failure",
         r"(?<!\w)(?:taken\s+)?(?:to|bis(?:\s+zum)?)\s+(?:failure|muskelversagen)"
         r"(?!\w)"),
        ("percent", rf"(?:@\s*|at\s+)?({BAND}\s*%(?:\s*(?:of\s+)?1\s?RM)?)"),
        ("load", rf"(?:@\s*|at\s+|with\s+|mit\s+)?({BAND}\s*{_WEIGHT}){_HAND}"),
        ("load",
         rf"(?<!\w)(?:load|weight|gewicht|last)\s*[:=]?\s*({BAND})(?!\s*(?:"
         rf"{_TIME_UNIT})(?!\w)){_HAND}"),
        ("no_rest", r"(?<!\w)(?:no|without|keine|ohne)\s+(?:rest|pause)(?!\w)"),
        ("rest",
         rf"(?<!\w)(?:rest(?:s|ing)?|pausen?|R)\s*(?:of|for)?\s*[:=]?\s*(?:~|ca\.?"
         rf"\s*)?({_TIME}(?:{TO}{_TIME})?)(?!\w)"),
        ("rest",
         rf"(?:~|ca\.?\s*)?({_TIME}(?:{TO}{_TIME})?)\s*(?:of\s+)?(?:rest|pause|bre"
         rf"aks?)(?!\w)(?:\s+between(?:\s+sets)?)?"),
        ("rest",
         rf"(?:~|ca\.?\s*)?((?:{_TIME}{TO})?{_CLEAR_TIME})(?!\w)(?:\s+between(?:\s"
         rf"+sets)?)?"),
        ("partials",
         r"(?:\+\s*)?(?:lengthened\s+)?partials?\s+(?P<which>(?:after|on)\s+(?:th"
         r"e\s+)?last\s+set|whole\s+sets|(?:on|for)\s+all\s+sets)(?!\w)"),
        ("superset", r"(?<!\w)(?:superset|ss)\s*[:=]?\s*([A-Z])(?!\w)"),
        ("at", rf"@\s*({BAND})(?![\d%])"),
        ("ladder",
         rf"(?<![\d/,.-])(\d{{1,2}}(?:\s*[/,]\s*\d{{1,2}}){{2,5}})(?:\s*"
         rf"{_REPS_WORD})?(?![\d/])"),
        ("sets", r"(?<![\d.,/-])(\d{1,2})\s*(?:sets?|s[aä]tze?)(?!\w)"),
        ("sets", r"(?<![\d.,/-])(\d{1,2})\s*[x×](?=\s+[^\W\d_]{3})"),
        ("reps", rf"(?<![\d.,/-])({_COUNT})\s*{_REPS_WORD}{_EACH}"),
    )
)  # fmt: skip
