"""How the days of a plan are headed, and where they fall in the week when only numbered."""

from __future__ import annotations

import re

from setwright.plan.intake import DAYS

# Days of training with the days off between them, for plans that number their days (common
# practice: days off spread over the week).
SPREAD: dict[int, tuple[int, ...]] = {
    1: (0,), 2: (0, 3), 3: (0, 2, 4), 4: (0, 1, 3, 4), 5: (0, 1, 2, 4, 5), 6: (0, 1, 2, 3, 4, 5),
    7: (0, 1, 2, 3, 4, 5, 6),
}  # fmt: skip
_ABROAD = (
    ("montag", "dienstag", "mittwoch", "donnerstag", "freitag", "samstag", "sonntag"),
    ("lundi", "mardi", "mercredi", "jeudi", "vendredi", "samedi", "dimanche"),
    ("lunes", "martes", "miércoles", "jueves", "viernes", "sábado", "domingo"),
    ("maandag", "dinsdag", "woensdag", "donderdag", "vrijdag", "zaterdag", "zondag"),
    ("mandag", "tirsdag", "onsdag", "torsdag", "fredag", "lørdag", "søndag"),
    ("måndag", "tisdag", "onsdag", "torsdag", "fredag", "lördag", "söndag"),
    ("lunedì", "martedì", "mercoledì", "giovedì", "venerdì", "sabato", "domenica"),
)
WEEKDAYS = {word: at for words in (*_ABROAD, DAYS) for at, word in enumerate(words)}
WEEKDAYS |= {"miercoles": 2, "sabado": 5, "sonnabend": 5}
WEEKDAYS |= {day[:3]: at for at, day in enumerate(DAYS)}
WEEKDAYS |= {"tues": 1, "weds": 2, "thur": 3, "thurs": 3}
_NAMES = "|".join(sorted(WEEKDAYS, key=len, reverse=True))
# What a numbered day is called.
DAY_KINDS = (
    r"day|tag|session|workout|training(?:stag)?|trainingseinheit|einheit|jour|s[ée]ance|d[ií]a|"
    r"sesi[óo]n|entreno|entrenamiento|dag|sessie|giorno|dia|treino|økt|pass"
)
HEADING = re.compile(
    rf"(?:(?P<weekday>{_NAMES})\b\.?|(?P<kind>{DAY_KINDS})\s*(?P<number>\d{{1,2}}|[A-G])\b)"
    r"\s*[-–—:.)]*\s*(?P<name>.*)\Z",
    re.IGNORECASE,
)
MINUTES = re.compile(
    r"[\[(,\s]*\b(\d{1,4})\s*(?:min|mins|minutes|minuten|')(?:\b|(?<='))\s*[\])]?", re.IGNORECASE
)
