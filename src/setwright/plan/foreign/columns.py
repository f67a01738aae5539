"""Headings of columns: what each column of a coach's table holds."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from setwright.plan.foreign.headings import bare, day_heading

_ROLES: Final[Mapping[str, re.Pattern[str]]] = {
    role: re.compile(rf"(?:{words})\Z", re.IGNORECASE)
    for role, words in {
        "order": r"#|no\.?|nr\.?|order|pos(?:ition)?|super\s?sets?|ss|group|pair(?:ing)?|letter",
        "day": r"days?|tag|weekday|when|wochentag",
        "session": r"session(?: name)?|workout|training|einheit",
        "minutes": r"minutes|mins?|duration|dauer|minuten",
        "exercise": r"exercises?(?: name)?|movements?|lifts?|übung(?:en)?|name|what|drill",
        "scheme": r"s[aä]?e?tz?e?s?\s*(?:x|×|/|&|and|und|\*|-)\s*(?:reps?|wdh\.?|r)|scheme|"
        r"prescription|sets and reps|set/rep|volume|vorgabe|work",
        "sets": r"(?:working |work |number of |no\.? of |# )?sets?|s[aä]tze|satz",
        "reps": r"(?:target |rep )?(?:reps?|repetitions?)(?: range| target)?|wdh\.?|wh\.?|"
        r"wiederholungen|rep range",
        "rir": r"rir|(?:reps? in )?reserve|effort(?: \(?rir\)?)?|rir first(?:-| to )last",
        "rpe": r"rpe|(?:effort|intensity) \(?rpe\)?|exertion",
        "rest": r"rests?|pausen?|rest (?:time|interval|period|between sets)|breaks?|recovery",
        "tempo": r"tempo|cadence|speed",
        "load": r"loads?|weights?|gewichte?|last|kg|lbs?|(?:start(?:ing)?|working) (?:load|weight)",
        "partials": r"(?:lengthened )?partials?",
        "note": r"(?:coach(?:'?s|ing)? )?(?:notes?|cues?|comments?)|bemerkung(?:en)?|hinweise?|"
        r"remarks?|technique|details|instructions",
        "other": r"muscles?(?: groups?)?|target(?: muscle)?|videos?|links?|done|✓|actual.*|"
        r"(?:week|wk|w) ?\d+.*|set ?\d+.*|date|pattern|equipment|kit|warm[ -]?up|station taken|"
        r"last (?:time|week)|log|e?1rm.*|%.*|category|type|volume load.*|muskel.*",
    }.items()
}  # fmt: skip
_UNITS = {
    "s": "s", "sec": "s", "secs": "s", "seconds": "s", "sek": "s", "min": "min", "mins": "min",
    "minutes": "min", "minuten": "min", "kg": "kg", "kgs": "kg", "lb": "lb", "lbs": "lb",
}  # fmt: skip
# Headings that only our own workbook has: there `1-3` goes from the first set to the last.
_OWN = frozenset({"superset", "partials", "station taken"})


@dataclass(frozen=True)
class Column:
    """What a column holds.

    Attributes:
        role: of its cells.
        heading: as written.
        unit: said in the heading, or None.
    """

    role: str
    heading: str
    unit: str | None = None


def column_of(text: str) -> Column | None:
    """The column that a heading heads, or None."""
    words = " ".join((bare(text) or text).lower().split())
    unit = re.search(r"[\s(\[/,]+(?:in )?([a-z]{1,7})[)\]]?\s*\Z", words)
    said = _UNITS.get(unit[1]) if unit is not None else None
    short = re.sub(r"\s*[(\[].*[)\]]\s*\Z", "", words)
    if said is not None and unit is not None:
        short = words[: unit.start()].strip(" ,")
    for form in (words, short):
        for role, pattern in _ROLES.items():
            if pattern.match(form):
                bare_unit = words if role == "load" and words in _UNITS else None
                return Column(role, text, _UNITS[bare_unit] if bare_unit else said)
    return None


def heading_row(cells: Mapping[int, str]) -> dict[int, Column] | None:
    """The columns that a row of headings heads, or None when it is no such row.

    Args:
        cells: text by column.
    """
    found = {at: column for at, text in cells.items() if (column := column_of(text)) is not None}
    roles = {column.role for column in found.values()}
    telling = roles - {"other", "day", "order", "session", "note", "minutes"}
    if len(found) < 2 or 2 * len(found) < len(cells) or not telling:
        return None
    if "exercise" not in roles:
        if len(telling & {"sets", "reps", "scheme"}) == 0:
            return None
        first = next((at for at in cells if at not in found and at < max(found)), None)
        found[first if first is not None else min(found) - 1] = Column("exercise", "")
    for at, text in cells.items():
        if at not in found:
            found[at] = Column("other", text)
    return found


def is_own(columns: Sequence[Column]) -> bool:
    """Whether the headings are those of our own workbook."""
    return {column.heading.strip().lower() for column in columns} >= _OWN


def heads_a_day(text: str) -> bool:
    """Whether a cell of the heading row heads a day, above a column of exercises."""
    return bool(text) and day_heading(text) is not None and column_of(text) is None
