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
_GERMAN = ("montag", "dienstag", "mittwoch", "donnerstag", "freitag", "samstag", "sonntag")
WEEKDAYS = {word: at for words in (DAYS, _GERMAN) for at, word in enumerate(words)}
WEEKDAYS |= {day[:3]: at for at, day in enumerate(DAYS)}
WEEKDAYS |= {"tues": 1, "thur": 3, "thurs": 3}
_NAMES = "|".join(sorted(WEEKDAYS, key=len, reverse=True))
HEADING = re.compile(
    rf"(?:(?P<weekday>{_NAMES})\b\.?|(?:day|tag|session|workout)\s*(?P<number>\d{{1,2}}|[A-G])\b)"
    r"\s*[-–—:.)]*\s*(?P<name>.*)\Z",
    re.IGNORECASE,
)
MINUTES = re.compile(
    r"[\[(,\s]*\b(\d{1,4})\s*(?:min|mins|minutes|minuten|')(?:\b|(?<='))\s*[\])]?", re.IGNORECASE
)
