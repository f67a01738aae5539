"""The headings people give their columns, and what they mean."""

from __future__ import annotations

import re
from collections.abc import Mapping
from types import MappingProxyType

from setwright.documents.units import Unit

# Every role a column can have, and the headings that mean it, in the words of
# ``plain_heading``.
HEADINGS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "date": (
            "date", "day", "workout date", "session date", "training date", "performed on",
            "datum", "tag", "fecha", "data", "jour",
        ),
        "time": ("time", "start time", "clock", "time of day", "uhrzeit", "zeit", "hora", "heure"),
        "at": (
            "datetime", "date time", "timestamp", "start", "started", "started at", "date and time",
            "performed at", "completed at", "logged at", "zeitpunkt", "when",
        ),
        "exercise": (
            "exercise", "exercise name", "lift", "movement", "exercise title", "name of exercise",
            "übung", "uebung", "ubung", "ejercicio", "exercice", "esercizio", "oefening", "what",
        ),
        "number": (
            "set", "set number", "set no", "set nr", "set order", "set index", "satz", "satz nr",
            "serie nr", "no", "nr",
        ),
        "sets": ("sets", "number of sets", "sets done", "sätze", "saetze", "series"),
        "load": (
            "load", "weight", "weight lifted", "load lifted", "resistance", "gewicht", "last",
            "carga", "peso", "poids", "charge", "working weight", "weight used",
        ),
        "assistance": ("assistance", "assist", "assisted weight", "assistance weight", "hilfe"),
        "added": ("added weight", "added load", "extra weight", "zusatzgewicht"),
        "reps": (
            "reps", "rep", "repetitions", "reps done", "actual reps", "reps performed", "wdh",
            "wiederholungen", "repeticiones", "repetitions done", "ripetizioni", "full reps",
        ),
        "partials": ("partials", "partial reps", "partial repetitions", "lengthened partials"),
        "rir": (
            "rir", "reps in reserve", "repetitions in reserve", "in reserve", "reserve",
            "reps left", "rir felt", "actual rir",
        ),
        "rpe": (
            "rpe", "exertion", "perceived exertion", "rating of perceived exertion", "rpe felt",
        ),
        "effort": ("effort", "intensity", "anstrengung"),
        "rest": (
            "rest", "rest time", "rest before", "rest taken", "rest period", "pause", "rest s",
            "descanso", "repos",
        ),
        "side": ("side", "limb", "leg", "arm", "left right", "l r", "seite", "lado"),
        "role": ("type", "set type", "kind", "kind of set", "satzart", "role"),
        "failure": ("failure", "to failure", "reached failure", "muskelversagen"),
        "pain": ("pain", "pain level", "schmerz", "dolor", "discomfort"),
        "pain_where": ("pain where", "where it hurts", "pain site", "pain location"),
        "symptom": ("symptom", "symptoms", "warning sign", "symptome"),
        "technique": ("technique", "form", "technique broke down", "form broke down", "technik"),
        "note": (
            "note", "notes", "comment", "comments", "remark", "remarks", "notiz", "notizen",
            "bemerkung", "kommentar", "nota", "notas", "set notes", "exercise notes",
        ),
        "unit": ("unit", "units", "weight unit", "load unit", "einheit"),
        "body_mass": (
            "body mass", "bodyweight", "body weight", "körpergewicht", "koerpergewicht", "bw",
        ),
        "performed": ("sets and reps", "sets x reps", "performed", "result", "results", "done"),
    }
)  # fmt: skip
_UNITS = (
    (re.compile(r"\b(?:lbs?|pounds?)\b"), "lb"),
    (re.compile(r"\b(?:kgs?|kilos?|kilograms?)\b"), "kg"),
)
_MINUTES = re.compile(r"\b(?:min|mins|minutes|minuten)\b")
_SECONDS = re.compile(r"\b(?:s|sec|secs|seconds|sek|sekunden)\b")
# Columns of one set among several in a line: `Set 1`, `Reps 2`, `Weight 3 (kg)`.
_COUNTED = re.compile(r"(?P<what>.*?)\s*(?P<number>[1-9]\d?)\Z")
# Roles that a line may tell of several sets.
COUNTED_ROLES = ("performed", "load", "reps", "rir", "rpe", "rest", "partials")
_ROLE_OF = {heading: role for role, headings in HEADINGS.items() for heading in headings}


def plain_heading(text: str) -> str:
    """A heading without case, brackets, units and signs."""
    words = re.sub(r"[^\w]+|_", " ", text.casefold())
    for pattern, _ in _UNITS:
        words = pattern.sub(" ", words)
    words = _SECONDS.sub(" ", _MINUTES.sub(" ", words))
    return " ".join(words.split())


def role_of(heading: str) -> tuple[str, int | None] | None:
    """What a heading says its column holds, and of which set of the line; None when unknown."""
    plain = plain_heading(heading)
    role = _ROLE_OF.get(plain)
    number = None
    counted = _COUNTED.match(plain)
    if role is None and counted:
        what = counted["what"]
        # `Set 1` holds the whole set; `Reps 1` one figure of it.
        role = "performed" if what in ("set", "satz", "serie") else _ROLE_OF.get(what)
        number = int(counted["number"])
    if role is None:
        inner = re.match(r"(?:set|satz)\s*(?P<number>[1-9]\d?)\s+(?P<what>.+)\Z", plain)
        if inner:
            role, number = _ROLE_OF.get(inner["what"]), int(inner["number"])
    if role is None or (number is not None and role not in COUNTED_ROLES):
        return None
    return role, number


def unit_of(heading: str, role: str) -> str | None:
    """The unit said in a heading."""
    words = re.sub(r"[^\w]+|_", " ", heading.casefold())
    if role == "rest":
        return "min" if _MINUTES.search(words) else "s" if _SECONDS.search(words) else None
    found: list[Unit] = [unit for pattern, unit in _UNITS if pattern.search(words)]  # type: ignore[misc]
    return found[0] if len(found) == 1 else None
