"""Headings of columns: what each column of a coach's table holds."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from setwright.plan.foreign.headings import bare, day_heading

_SETS: Final = r"(?:sets?|s[aä]e?tze?|satz|s[ée]ries?|serien?|reeksen|rounds?)"
_REPS: Final = (
    r"(?:reps?|repetitions?|wdh\.?|wiederholungen|r[ée]p[ée]titions?|r[ée]ps?|repeticiones|"
    r"herhalingen|herh\.?|repes|repetisjoner)"
)
_WEEK: Final = re.compile(
    r"(?:week|wk|w|woche|semaine|sem|semana|uke|vecka)\.? ?(?P<number>\d{1,2})\s*[-–—:(/]*\s*"
    r"(?P<rest>[^)]*)\)?\Z",
    re.IGNORECASE,
)
_ROLES: Final[Mapping[str, re.Pattern[str]]] = {
    role: re.compile(rf"(?:{words})\Z", re.IGNORECASE)
    for role, words in {
        "order": r"#|no\.?|nr\.?|order|pos(?:ition)?|super\s?sets?|ss|group|pair(?:ing)?|letter|"
        r"ex\.? ?#|block|n°|ordre|orden|bloc|bloque|reihenfolge|circuit",
        "day": r"days?|tag|weekday|when|wochentag|jours?|d[ií]as?|dag|training day|trainingstag",
        "session": r"session(?: name)?|workout(?: name)?|training|einheit|séance|sesi[óo]n|split|"
        r"entrenamiento|routine",
        "minutes": r"minutes|mins?|duration|dauer|minuten",
        "exercise": r"exercises?(?: name)?|movements?|lifts?|übung(?:en)?|name|what|drill|"
        r"exercices?|"
        r"mouvements?|ejercicios?|movimientos?|oefening(?:en)?|[øö]velser?|övning(?:ar)?|esercizio|"
        r"exercício|ex\.?",
        "scheme": rf"{_SETS}\s*(?:x|×|/|&|and|und|\*|-|y|et|en|\+)\s*(?:{_REPS}|r)|scheme|"
        r"prescription|sets and reps|set/rep|volume|vorgabe|work|sets?\s*&\s*reps?|target|"
        r"prescripci[óo]n",
        "sets": rf"(?:working |work |number of |no\.? of |# (?:of )?|total |hard )?{_SETS}|"
        r"(?:set|satz|série|serie) ?(?:#|no\.?|nr\.?|number|nummer)",
        "reps": rf"(?:target |rep |goal |planned )?{_REPS}(?:\.)?(?: range| target| goal)?|"
        rf"rep range|"
        r"wh\.?|rep(?:etition)?s?(?: per set|/set)|zielwdh\.?",
        "rir": r"rir|(?:target |goal )?(?:reps? in )?reserve|(?:target |goal )rir|"
        r"effort(?: \(?rir\)?)?|rir first(?:-| to )last|reps? in tank|réserve|reserva|intensity",
        "rpe": r"(?:target |goal )?rpe|(?:effort|intensity|intensität) \(?rpe\)?|exertion",
        "rest": r"rests?|pausen?|(?:rest|inter-?set) (?:time|interval|period|between sets)|breaks?|"
        r"recovery|repos|r[ée]cup(?:[ée]ration)?|descansos?|rust(?:tijd)?|pauze|recuperaci[óo]n|"
        r"satzpause|rest\.|hvile|vila|between sets",
        "tempo": r"tempo|cadence|speed|kadenz|cadencia|tempo \(.*\)",
        "load": r"(?:loads?|weights?|gewichte?|last|kg|lbs?|charges?|poids|cargas?|pesos?|vekt|"
        r"vikt)"
        r"(?: used)?|(?:start(?:ing)?|working|target|suggested|planned|start) (?:load|weight)|"
        r"startgewicht|arbeitsgewicht",
        "partials": r"(?:lengthened )?partials?",
        "note": r"(?:coach(?:'?s|ing)? )?(?:notes?|cues?|comments?)|bemerkung(?:en)?|hinweise?|"
        r"remarks?|technique|details|instructions|remarques?|notas?|observaciones|opmerking(?:en)?|"
        r"kommentar(?:e)?|notizen?|info|form cues?|execution|ausführung|consignes?|comentarios|"
        r"tips",
        "each": r"(?:set|satz|s[ée]rie|reeks|s) ?#?\d{1,2}(?: ?(?:reps?|wdh\.?|target))?|"
        r"\d(?:st|nd|rd|th|\.) (?:set|satz)",
        "other": r"muscles?(?: groups?)?|target(?: muscle)?|videos?|links?|done|✓|actual.*|"
        r"set ?\d+.*|(?:date|datum|fecha|completed|rpe actual|weight used|reps done|demo|"
        r"substitut\w*|alternatives?|swap|status|check|progress\w*|total.*|tonnage|sum)|pattern|"
        r"equipment|kit|warm[ -]?up|station taken|"
        r"last (?:time|week)|log|e?1rm.*|%.*|category|type|volume load.*|muskel.*",
    }.items()
}  # fmt: skip
_UNITS = {
    "s": "s", "sec": "s", "secs": "s", "seconds": "s", "sek": "s", "min": "min", "mins": "min",
    "minutes": "min", "minuten": "min", "kg": "kg", "kgs": "kg", "lb": "lb", "lbs": "lb",
}  # fmt: skip
_ONCE = frozenset({"sets", "reps", "scheme", "rir", "rpe", "load", "rest", "tempo", "week"})
# Headings that only our own workbook has: there `1-3` goes from the first set to the last.
_OWN = frozenset({"superset", "partials", "station taken"})


@dataclass(frozen=True)
class Column:
    """What a column holds.

    Attributes:
        role: of its cells.
        heading: as written.
        unit: said in the heading, or None.
        week: of several weeks side by side the one it belongs to, or None.
    """

    role: str
    heading: str
    unit: str | None = None
    week: int | None = None


def column_of(text: str) -> Column | None:
    """The column that a heading heads, or None."""
    words = " ".join((bare(text) or text).lower().split())
    week = _WEEK.match(words)
    if week is not None:
        inner = column_of(week["rest"]) if week["rest"] else None
        role = inner.role if inner is not None and inner.role != "other" else "week"
        return Column(role, text, inner.unit if inner else None, int(week["number"]))
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
    telling = roles - {"other", "day", "order", "session", "note", "minutes", "week"}
    weeks = [at for at, column in found.items() if column.role == "week"]
    named = [at for at in cells if at not in found]
    if len(weeks) > 1 and len(weeks) == len(found) and named and max(named) < min(weeks):
        found[named[-1]] = Column("exercise", cells[named[-1]])
        return _one_week(found | {at: Column("other", cells[at]) for at in named[:-1]})
    if len(found) < 2 or 2 * len(found) < len(cells) or not telling:
        return None
    if "exercise" not in roles:
        if len(telling & {"sets", "reps", "scheme", "each"}) == 0:
            return None
        first = next((at for at in cells if at not in found and at < max(found)), None)
        found[first if first is not None else min(found) - 1] = Column("exercise", "")
    for at, text in cells.items():
        if at not in found:
            found[at] = Column("other", text)
    return _one_week(found)


def _one_week(found: dict[int, Column]) -> dict[int, Column]:
    """Columns of the first week only, and no repetitions by set where they are said at once.

    A role that comes again beside one column of exercises is another week's, or a log's.
    """
    first = min((one.week for one in found.values() if one.week is not None), default=None)
    starts = sum(1 for one in found.values() if one.role == "exercise")
    roles = [one.role for one in found.values()]
    at_once = "reps" in roles or "scheme" in roles
    seen: set[str] = set()
    kept = {}
    for at, column in sorted(found.items()):
        again = starts == 1 and column.role in seen and column.role in _ONCE
        other = (column.week is not None and column.week != first) or again
        if column.role == "each" and at_once:
            other = True
        seen.add(column.role)
        kept[at] = Column("other", column.heading) if other else column
    return kept


def days_across(cells: Mapping[int, str]) -> list[int]:
    """The columns of days in a row that heads a column of exercises and then a column a day."""
    days = [at for at, text in cells.items() if heads_a_day(text)]
    before = [at for at in cells if days and at < min(days)]
    named = before and (column_of(cells[before[-1]]) or Column("", "")).role == "exercise"
    return days if len(days) > 1 and named and before[-1] == min(days) - 1 else []


def is_own(columns: Sequence[Column]) -> bool:
    """Whether the headings are those of our own workbook."""
    return {column.heading.strip().lower() for column in columns} >= _OWN


def heads_a_day(text: str) -> bool:
    """Whether a cell of the heading row heads a day, above a column of exercises."""
    return bool(text) and day_heading(text) is not None and column_of(text) is None
