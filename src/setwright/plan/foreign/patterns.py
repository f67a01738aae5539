"""The ways people write sets, effort, rest, tempo and load, as patterns to be searched for."""

from __future__ import annotations

import re
from typing import Final

NUMBER: Final = r"(?<![\d.,])\d{1,4}(?:[.,]\d{1,3})?"
TO: Final = r"(?:\s*(?:-|–|to|bis|till|->|→|>)\s*|—)"
BAND: Final = rf"{NUMBER}(?:{TO}{NUMBER})?"
LIST: Final = (
    rf"(?:(?<![\d.,])\d(?:,\d){{2,5}}(?![\d.,])|"
    rf"{NUMBER}(?:(?:/|\s*>\s*){NUMBER}){{1,11}}|{BAND})(?![\d:])"
)
SETS: Final = (
    r"(?:(?:work(?:ing)?\s+|hard\s+|straight\s+)?sets?|s[aä]tze?|satz|s[ée]ries?|serien?|"
    r"reeks(?:en)?|"
    r"sett|rounds?|runden|tours?|vueltas|rondes?)"
)
REPS: Final = (
    r"(?:reps?|repetitions?|r[ée]p[ée]titions?|r[ée]ps?|repeticiones|repes|ripetizioni|"
    r"herhalingen|herh|wdh|wh|wdhl|wiederholungen|repetisjoner|repetitioner)\b\.?"
)
_OF = r"(?:\s+(?:of|de|van|di|av|à|a|zu|mit|with|to|for|x)\b|\s*[x×*@,:à–—-])?"
_TIMES = rf"\s*(?:{SETS}\b{_OF}|[x×*])\s*"
_COUNT = rf"\d{{1,3}}(?:{TO}\d{{1,3}}|(?:[/,]\d{{1,3}}){{1,11}})?"
_REPS_WORD = REPS
_SIDE = (
    r"(?:side|legs?|arms?|hands?|seite|bein|arm|hand|jambe|côté|cote|bras|lado|pierna|brazo|been|"
    r"kant|zijde|ben|sida|gamba|lato|perna|braccio|db|dumbbell|kh|mancuerna|haltère|main|mano)"
)
_EACH = (
    rf"(?:\s*(?:(?:per|each|ea|a|je|pro|par|por|elke)\.?\s+{_SIDE}|each(?!\s+\w)|ea\b|jeweils|"
    rf"e/s|p/s|/\s*{_SIDE})(?!\w))?"
)
_NO_UNIT = (
    r"(?![\d:%])(?![.,]\d)(?!\s*(?:s|secs?|seconds?|sek|sekunden|secondes?|segundos?|seg|seconden|"
    r"min|mins|minutes?|minuten|minutos?|m|km|meters?|metres?|m[eè]tres?|metros?|yards?|yds?|ft|"
    r"kgs?|"
    r"kilos?|lbs?|pounds)\b)(?!\s*['\"″′’”%#])"
)
_TIME_UNIT = (
    r"(?:seconds?|secs?|sekunden|sek|secondes?|segundos?|seg|seconden|s|minutes?|minuten|minutos?|"
    r"mins?|min|m|\"|″|”|''|'|′|’)"
)
_MINUTE = r"(?:['′’]|min(?:utes?)?|m)"
_CLOCKS = (
    rf"(?<![\d.,])\d{{1,2}}\s*{_MINUTE}\s*\d{{2}}(?!\d)(?:\s*(?:\"|″|”|''|s(?:ec)?(?!\w)))?|"
    rf"(?<![\d.,:])\d{{1,3}}:\d\d(?::\d\d)?(?:\s*min\b)?"
)
_TIME = rf"(?:{_CLOCKS}|{NUMBER}(?:\s*{_TIME_UNIT}(?![\w]))?)"
_CLEAR_TIME = rf"(?:{_CLOCKS}|{NUMBER}\s*{_TIME_UNIT}(?![\w]))"
_REST_WORD = (
    r"(?:rests?|resting|pausen?|pauze|pausa|repos|r[ée]cup(?:[ée]ration)?s?|recovery|breaks?|"
    r"descansos?|desc|recuperaci[óo]n|rust(?:tijd)?|hvile|vila|riposo|recupero|intervalo)"
)
_WEIGHT = r"(?:kgs?|kilos?|kilogram(?:m?e?s)?|lbs?|pounds?|#)(?!\w)\.?"
_HAND = (
    rf"(?:\s*(?:(?:per|each|ea|a|je|pro|par|por)\.?\s+{_SIDE}(?!\w)|each\b|ea\b|jeweils|"
    rf"/\s*{_SIDE}(?!\w)|(?:dumb)?bells?\b|dbs\b))?"
)
_CUE = (
    r"(?:eccentrics?|negatives?|lowering|down|pauses?|holds?|squeeze|stretch|at\s+the|in\s+the|up|"
    r"isometric|exzentrisch|halten|bottom|stop|top|contraction|excentrique|descente|bajada|abajo)"
)


def _flagged(pattern: str) -> re.Pattern[str]:
    return re.compile(pattern, re.IGNORECASE)


# Searched for in this order; what one has taken the next no longer sees.
PATTERNS: Final[tuple[tuple[str, re.Pattern[str]], ...]] = tuple(
    (name, _flagged(pattern))
    for name, pattern in (
        ("note",
         r"(?<!\w)(?:notes?|cues?|comments?|tips?|hinweis|notiz|bemerkung|notas?|remarque|"
         r"opmerking)"
         r"\s*[:–-]\s*(.*)\Z"),
        ("note", r"(?<!\w)note\s+(.*)\Z"),
        ("cue", rf"({NUMBER}\s*-?\s*(?:s|secs?|seconds?|sek|count)\s*{_CUE}\b[\w ]*)"),
        ("cue",
         r"(\d{1,2}\s*(?:[x×]\s*)?(?:warm[- ]?ups?|ramp(?:-?up)?|feeder)(?:\s+sets?)?)(?!\w)"),
        ("tempo",
         rf"tempo\s*[:=]?\s*({NUMBER}(?:\s*/\s*(?:\d{{1,2}}(?:[.,]\d{{1,3}})?|X)){{2,3}})"),
        ("tempo", r"tempo\s*[:=]?\s*([\dX](?:[\s.,/:-]?[\dX]){2,3})(?![\dX])"),
        ("tempo", r"@\s*(\d[\dX]{3}|\d(?:X\d|\dX))(?!\d|\s*(?:kg|lb|%))"),
        ("tempo",
         r"(?<![\d/.,-])(\d(?:\s*/\s*[\dX]){2,3}|\d(?:-[\dX]){2,3})(?![\d/-])(?!"
         r"\s*(?:reps?|wdh))"),
        ("tempo",
         r"(?<![\d.,])([1-6]0[1X][0-2]|[1-6][0-3][1X][0-2])(?![\d.,])(?!\s*(?:kg|"
         r"lb|s|m)\b)"),
        ("sets", rf"(?<!\w){SETS}\s*[:=]\s*(\d{{1,2}})(?!\s*[x×\d.,])"),
        ("reps", rf"(?<!\w){REPS}\s*[:=]\s*({_COUNT})(?!\s*[x×])"),
        ("load_first",
         rf"(?P<load>{NUMBER}\s*{_WEIGHT})\s*[x×]\s*(?P<first>\d{{1,2}})\s*[x×]\s*"
         r"(?P<second>\d{1,2})(?![\d:])"),
        ("load_times", rf"(?<=\d)\s*[x×*]\s*({NUMBER}\s*{_WEIGHT}){_HAND}"),
        ("sets_reps",
         rf"(?P<sets>(?<![\d.,])\d{{1,3}}{TO}\d{{1,3}}){_TIMES}(?P<reps>{_COUNT})"
         rf"{_NO_UNIT}(?:\s*{_REPS_WORD})?{_EACH}"),
        ("sets_reps",
         rf"(?<![\d.,/-])(?P<sets>\d{{1,3}}){_TIMES}(?P<reps>{_COUNT}){_NO_UNIT}(?"
         rf":\s*{_REPS_WORD})?{_EACH}"),
        ("reps_sets",
         rf"(?P<reps>{_COUNT})\s*{_REPS_WORD}{_EACH}\s*(?:[x×*,]|for)?\s*(?P<sets>"
         rf"\d{{1,2}})\s*{SETS}\b"),
        ("timed",
         rf"(?<![\d.,/-])\d{{1,3}}{_TIMES}(?:{BAND})\s*(?:{_TIME_UNIT}|meters?|metres?|m[eè]tres?|"
         rf"metros?|yards?|yds?|ft|km|laps?|lengths?|breaths)(?!\w)"),
        ("free",
         rf"(?<![\d.,/-])(?P<sets>\d{{1,3}})(?:\s*{SETS}\b{_OF}|\s*[x×*])\s*"
         r"(?P<words>(?:(?:to\s+)?(?:AMRAP|max(?:imum|imal|imo)?|failure|fail|as\s+many|"
         r"bis\s+zum\s+\w+|(?:à\s+l\W)?échec|(?:al\s+)?fallo|falen|burn\w*|ladders?|pyramids?|"
         r"holds?|"
         r"F\b|\?+|tbd|open|descending))(?:\s+reps?)?)(?!\w)"),
        ("free", r"(?<!\w)(?P<words>AMRAP|as many (?:reps )?as (?:possible|you can))(?!\w)"),
        ("rir",
         rf"(?:leave|leaving|keep|stop(?:ping)?|lasse|laisser?|dejar?|deja|laat)\s+(?:about\s+|"
         rf"at\s+)?"
         rf"({LIST})(?:\s+{_REPS_WORD})?(?!\s*(?:{_TIME_UNIT}|sets?)(?!\w))(?:\s+(?:left\s+)?(?:in|"
         rf"en)"
         rf"\s+(?:reserve|réserve|reserva|the\s+tank)|\s+(?:short\s+of|shy\s+of|before|from|avant|"
         rf"antes)"
         rf"\s+\w+(?:\s+\w*fail\w*)?)?"),
        ("rir", rf"(?:@\s*)?(?<!\w)RIR\s*[:=]?\s*({LIST})(?!\s*(?:{_WEIGHT}|{_TIME_UNIT}(?!\w)))"),
        ("rir",
         rf"(?:@\s*)?({LIST})\s*(?:RIR(?!\w)|(?:{_REPS_WORD}\s+)?(?:left\s+)?(?:in|"
         rf"en)\s+(?:der\s+)?"
         rf"(?:reserve|réserve|reserva|riserva|the\s+tank)|reps?\s+left|left\s+in\s+the\s+tank|"
         rf"(?:{_REPS_WORD}\s+)?(?:short|shy|away|off)\s+(?:of|from)\s+failure|"
         rf"(?:{_REPS_WORD}\s+)?(?:from|before)\s+failure)"),
        ("rpe",
         rf"(?:@\s*)?(?<!\w)RPE\s*[:=]?\s*({LIST})(?!\s*(?:{_WEIGHT}|{_TIME_UNIT}(?!\w)))"),
        ("rpe", rf"(?:@\s*)?({LIST})\s*RPE(?!\w)"),
        ("last_failure",
         r"(?<!\w)(?:the\s+)?(?:last|final|letzter?|derni[eè]re|[uú]ltima)\s+(?:set|one|satz|"
         r"s[ée]rie)\s*"
         r"(?:is\s+)?(?:taken\s+)?(?:to|till|until|bis\s+zum|à\s+l\W|al)\s*(?:technical\s+)?"
         r"(?:failure|muskelversagen|versagen|échec|fallo)(?!\w)"),
        ("failure",
         r"(?<!\w)(?:taken\s+)?(?:(?:to|until|till|bis(?:\s+zum)?)\s+(?:technical\s+)?"
         r"(?:failure|muskelversagen|versagen)|(?:jusqu\W)?à\s+l\W[ée]chec|al\s+fallo|tot\s+falen)"
         r"(?!\w)"),
        ("percent", rf"(?:@\s*|(?<!\w)at\s+)?({BAND}\s*%(?:\s*(?:of\s+)?1\s?RM)?)"),
        ("load",
         rf"(?:@\s*|(?<!\w)(?:at|with|w/|mit|con|met|à|avec|a|med)\s+)?({BAND}\s*{_WEIGHT}){_HAND}"),
        ("load",
         rf"(?<!\w)(?:load|weight|gewicht|last|charge|poids|carga|peso|"
         rf"vekt)\s*[:=]?\s*({BAND})(?!\s*(?:"
         rf"{_TIME_UNIT})(?!\w)){_HAND}"),
        ("no_rest",
         rf"(?<!\w)(?:no|without|keine|ohne|sans|sin|zonder)\s+{_REST_WORD}(?!\w)"),
        ("rest",
         rf"(?<!\w)(?:(?:with|then|and|mit|con|avec|met)\s+)?(?:{_REST_WORD}|R)\.?\s*(?:of|for|de|"
         rf"von|van|"
         rf"about|time)?\s*[:=]?\s*(?:~|ca\.?\s*)?({_TIME}(?:{TO}{_TIME})?)(?!\w)"
         rf"(?:\s+between(?:\s+(?:all\s+)?sets)?)?"),
        ("rest",
         rf"(?:~|ca\.?\s*)?({_TIME}(?:{TO}{_TIME})?)\s*(?:of\s+|de\s+)?{_REST_WORD}"
         rf"(?!\w)\.?(?:\s+between(?:\s+(?:all\s+)?sets)?)?"),
        ("rest",
         rf"(?:~|ca\.?\s*)?((?:{_TIME}{TO})?{_CLEAR_TIME})(?!\w)(?:\s+between(?:\s"
         rf"+sets)?)?"),
        ("partials",
         r"(?:\+\s*)?(?:lengthened\s+)?partials?\s+(?P<which>(?:after|on)\s+(?:th"
         r"e\s+)?last\s+set|whole\s+sets|(?:on|for)\s+all\s+sets)(?!\w)"),
        ("superset", r"(?<!\w)(?:super\s?-?set|ss)\s*[:=]?\s*([A-Z])(?!\w)"),
        ("at", rf"@\s*({BAND})(?![\d%])"),
        ("ladder",
         rf"(?<![\d/,.-])(\d{{1,2}}(?:\s*[/,]\s*\d{{1,2}}){{2,5}})(?:\s*"
         rf"{_REPS_WORD})?(?![\d/])"),
        ("sets", r"(?<![\d.,/-])(\d{1,2})\s*"
         rf"{SETS}(?!\w)"),
        ("sets", r"(?<![\d.,/-])(\d{1,2})\s*[x×](?=\s+[^\W\d_]{3})"),
        ("reps", rf"(?<![\d.,/-])({_COUNT})\s*{_REPS_WORD}{_EACH}"),
    )
)  # fmt: skip
