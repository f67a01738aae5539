"""Lines that are no exercise: days, titles, settings, weeks, supersets, sections, notes."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

from setwright.plan.day_words import HEADING, MINUTES, WEEKDAYS
from setwright.plan.foreign.model import AS_WRITTEN, BY_CUSTOM

_MARKUP = re.compile(r"^[#=*_~\s>\[{<|-]+|[#=*_~:\s\]}>|-]+$")
_DAY = "|".join(sorted(WEEKDAYS, key=len, reverse=True))
_DAYS_TOGETHER = re.compile(
    rf"(?P<days>(?:{_DAY})s?\.?(?:\s*(?:,|/|&|\+|and|und)\s*(?:{_DAY})s?\b\.?)+)"
    r"\s*[-–—:.)]*\s*(?P<name>.*)\Z",
    re.IGNORECASE,
)
_DAY_INSIDE = re.compile(
    rf"(?P<name>[^\d(\[]{{2,40}}?)\s*(?:[-–—:,|]\s*|[(\[]\s*)(?P<weekday>{_DAY})s?\s*[)\]]?\s*\Z",
    re.IGNORECASE,
)
_WEEK = re.compile(
    r"(?:week|wk|woche|w)\s*(?P<number>\d{1,2})\b\s*[-–—:,/.]*\s*(?P<rest>.*)\Z", re.IGNORECASE
)
SPLIT_WORDS: Final = frozenset(
    {
        "push", "pull", "legs", "leg", "upper", "lower", "full", "total", "whole", "body",
        "torso", "limbs", "chest", "back", "shoulders", "shoulder", "arms", "arm", "glutes",
        "quads", "hamstrings", "hams", "biceps", "triceps", "calves", "delts", "abs", "core",
        "trunk", "posterior", "anterior", "chain", "oberkörper", "unterkörper", "ganzkörper",
        "brust", "rücken", "schultern", "arme", "beine", "bauch", "drücken", "ziehen",
    }
)  # fmt: skip
_FILLING: Final = frozenset(
    {
        "day", "workout", "session", "training", "a", "b", "c", "d", "e", "1", "2", "3", "4", "5",
        "6", "i", "ii", "iii", "and", "und", "with", "heavy", "light", "focus", "emphasis", "tag",
        "volume", "one", "two", "three", "presses", "pulls", "first", "second",
    }
)  # fmt: skip
OFF: Final = re.compile(
    r"(?:rest(?:\s*day)?|off(?:\s*day)?|day\s+off|frei|ruhetag|pause|recovery|no\s+training)\W*\Z",
    re.IGNORECASE,
)
TITLE: Final = re.compile(
    r"(?:title|plan|programme|program|block|name of plan|titel)\s*[:=]\s*(.+)\Z", re.IGNORECASE
)
PERSON: Final = re.compile(
    r"(?:person|client|for|athlete|name|trainee|kunde|kundin|für)\s*[:=]\s*(.+)\Z", re.IGNORECASE
)
UNIT: Final = re.compile(
    r"(?:units?|loads?|weights?|all\s+(?:loads|weights)|gewichte?)\s*(?:[:=]|in|are\s+in)\s*(?:in\s+)?"
    r"(kg|kilos?|lbs?|pounds)\b.*\Z",
    re.IGNORECASE,
)
NOTE: Final = re.compile(
    r"(?:notes?|notiz(?:en)?|comments?|remarks?|hinweise?|bemerkung|progression|ps|nb|n\.b\.|"
    r"remember|reminder|coach|cues?|goal|goals|focus|date|start|phase|deload|//|>)\s*[:–-]?\s*\S",
    re.IGNORECASE,
)
SETTING: Final = re.compile(
    r"(?:all(?:\s+(?:sets|exercises|lifts))?|every(?:thing|\s+set)?|throughout|defaults?|alle?s?"
    r"(?:\s+(?:sätze|übungen))?|unless\s+noted|if\s+not\s+(?:noted|stated)|überall)\b",
    re.IGNORECASE,
)
SUPERSET: Final = re.compile(
    r"(?:super\s*-?sets?|supersatz|ss|pair(?:ed)?|bi-?set|tri-?set|giant\s+set|circuit)"
    r"\b[\s\d():,.\w-]{0,30}\Z",
    re.IGNORECASE,
)
SECTION: Final = re.compile(
    r"(?P<warm>warm[\s-]*ups?|aufwärmen|mobility|activation|prep)\b|"
    r"(?:cool[\s-]*down|main(?:\s+(?:work|part|lifts?))?|working\s+sets|accessor(?:y|ies)|assistance|"
    r"finisher|cardio|conditioning|stretching|hauptteil|strength)\b",
    re.IGNORECASE,
)
ASIDE: Final = re.compile(
    r"\b(?:bike|run|walk|treadmill|rower|rowing machine|steps|stretch\w*|mobility|sleep|water|"
    r"protein|sauna|deload|progress\w*|cardio|add\s+(?:weight|load|reps)|"
    r"holiday|gym|phone|email|version|page|warm[\s-]*up|cool[\s-]*down|foam)\b",
    re.IGNORECASE,
)


@dataclass(frozen=True)
class DayHeading:
    """The heading of a day.

    Attributes:
        weekdays: days of the week it names, Monday 0; none when it is only numbered or named.
        name: of the session.
        minutes: to be had, or None.
        confidence: 0 to 1.
        off: whether it is a day without training.
        by_split: whether only words such as ``push`` or ``upper`` make it a heading.
        week: number of the week it stands in, or None.
    """

    weekdays: tuple[int, ...]
    name: str
    minutes: int | None = None
    confidence: float = AS_WRITTEN
    off: bool = False
    by_split: bool = False
    week: int | None = None


def bare(text: str) -> str:
    """A line without the marks around it."""
    return _MARKUP.sub("", text).strip()


def day_heading(text: str) -> DayHeading | None:
    """The day that a line heads, or None."""
    words = bare(text)
    if not words or len(words) > 80:
        return None
    week = _WEEK.match(words)
    if week is not None and week["rest"]:
        inner = day_heading(week["rest"])
        if inner is not None and not inner.by_split:
            return DayHeading(
                inner.weekdays, inner.name, inner.minutes, inner.confidence, inner.off,
                week=int(week["number"]),
            )  # fmt: skip
    together = _DAYS_TOGETHER.match(words)
    if together is not None:
        named = re.findall(_DAY, together["days"].lower())
        days = tuple(dict.fromkeys(WEEKDAYS[word] for word in named))
        return _made(days, together["name"], together["days"])
    match = HEADING.match(words)
    if match is not None:
        word = match["weekday"]
        given = word or f"Day {match['number'].upper()}"
        return _made((WEEKDAYS[word.lower()],) if word else (), match["name"], given)
    minutes = MINUTES.search(words)
    spare = words if minutes is None else words[: minutes.start()] + words[minutes.end() :]
    inside = _DAY_INSIDE.match(spare.rstrip(" /,-–—|()[]"))
    if inside is not None:
        time = "" if minutes is None else f" {minutes[0]}"
        return _made((WEEKDAYS[inside["weekday"].lower()],), f"{inside['name']}{time}", "")
    return _by_split(words)


def _made(weekdays: tuple[int, ...], rest: str, given: str) -> DayHeading:
    minutes = MINUTES.search(rest)
    if minutes is not None:
        rest = rest[: minutes.start()] + rest[minutes.end() :]
    name = rest.strip(" -–—:,.()[]*_#") or given.strip(" .,").capitalize()
    time = int(minutes[1]) if minutes is not None and 5 <= int(minutes[1]) <= 300 else None
    off = OFF.match(rest.strip(" -–—:,.()[]*_#")) is not None and bool(rest.strip())
    return DayHeading(weekdays, name, time, off=off)


def _by_split(words: str) -> DayHeading | None:
    minutes = MINUTES.search(words)
    name = words
    if minutes is not None:
        name = (words[: minutes.start()] + words[minutes.end() :]).strip(" -–—:,.()[]")
    pieces = [one for one in re.split(r"[\s/,&+()–—:.-]+", name.lower()) if one]
    if not pieces or not any(one in SPLIT_WORDS for one in pieces):
        return None
    if not all(one in SPLIT_WORDS or one in _FILLING for one in pieces):
        return None
    found = _made((), words, words)
    return DayHeading((), found.name, found.minutes, BY_CUSTOM, by_split=True)


def week_number(text: str) -> int | None:
    """The number of the week that a line heads, when it says nothing else that matters."""
    match = _WEEK.match(bare(text))
    if match is None or (match["rest"] and day_heading(match["rest"]) is not None):
        return None
    return int(match["number"])
