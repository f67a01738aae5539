"""Answers of a form, each read into the field of the intake that was asked for."""

from __future__ import annotations

import re
from typing import Any

from setwright.documents.units import KG_PER_LB
from setwright.plan.amounts import AmountError, number
from setwright.plan.day_words import SPREAD, WEEKDAYS
from setwright.plan.foreign.model import AS_WRITTEN, ASSUMED, BY_CUSTOM
from setwright.plan.foreign.naming import named
from setwright.plan.foreign.questions import GYMS, SEXES
from setwright.plan.foreign.readings import Read
from setwright.plan.intake import DAYS

_YES = re.compile(r"(?:yes|y|ja|j|true|x|1|✓|oui|si)\b.*", re.IGNORECASE | re.DOTALL)
# Only a bare no is a no: `not really, sometimes` is neither.
_NO = re.compile(r"(?:no|n|nein|none|false|0|never|nope|-|–|keine?)\W*", re.IGNORECASE)
_NONE = re.compile(r"(?:no|none|nothing|n/?a|-|–|nil|keine?|nein)\W*", re.IGNORECASE)
_FIGURE = re.compile(r"\d{1,3}(?:[.,]\d{1,2})?")
_DONE = re.compile(
    r"(?P<name>[^\d:,;]*?)\s*[:=]?\s*(?P<load>\d{1,3}(?:[.,]\d{1,2})?)\s*(?P<unit>kgs?|lbs?)?\s*"
    r"(?:[x×]|for)\s*(?P<reps>\d{1,3})\b(?:\s*(?:reps?)?\s*(?:@|,)?\s*(?:RIR\s*)?(?P<rir>\d)\s*"
    r"(?:RIR|in reserve)?)?",
    re.IGNORECASE,
)


def is_none(text: str) -> bool:
    """Whether an answer says that there is nothing."""
    return _NONE.fullmatch(text.strip()) is not None


def yes_no(text: str) -> Read:
    """Yes or no; a yes with words after it is a yes.

    Raises:
        AmountError: when it is neither.
    """
    words = text.strip()
    if _NO.fullmatch(words):
        return Read(False)
    if _YES.fullmatch(words):
        return Read(True)
    raise AmountError("yes or no")


def age_band(text: str) -> Read:
    """The band of an age in years.

    Raises:
        AmountError: when there is no age, or two.
    """
    figures = [int(one) for one in re.findall(r"\d{1,3}", text)]
    bands = [_band(one) for one in figures]
    if not figures or len(set(bands)) > 1 or max(figures) > 110:
        raise AmountError("an age in years")
    return Read(bands[0])


def _band(years: int) -> str:
    if years < 18:
        return "under 18"
    return "18-39" if years < 40 else "40-59" if years < 60 else "60 and over"


def of_words(text: str, words: tuple[tuple[str, str], ...], allowed: str) -> Read:
    """The value whose words an answer uses.

    Raises:
        AmountError: when it uses none, or those of several.
    """
    answer = text.strip()
    whole = [value for value, pattern in words if re.fullmatch(pattern, answer, re.IGNORECASE)]
    found = whole or [v for v, pattern in words
                      if len(answer) > 3 and re.search(pattern, answer, re.IGNORECASE)]  # fmt: skip
    if not found:
        raise AmountError(allowed)
    return Read(found[0], AS_WRITTEN if whole else BY_CUSTOM)


def sex(text: str) -> Read:
    """Sex as said."""
    return of_words(text, SEXES, "female, male or no answer")


def gym(text: str) -> Read:
    """The kind of gym."""
    return of_words(text, GYMS, "full gym, home dumbbells, machines or bodyweight")


def setting(text: str) -> Read:
    """Whether somebody is there."""
    words = (
        ("alone", r"alone|on my own|yes|allein|ja"),
        ("with a partner or staff", r"partner|staff|spotter|coach|friend|no|nein"),
    )
    return of_words(text, words, "alone, or with a partner or staff")


def experience(text: str) -> Read:
    """Training status from a word, or from years of training.

    Raises:
        AmountError: when there is neither.
    """
    for word in ("beginner", "intermediate", "advanced"):
        if word in text.lower():
            return Read(word)
    match = re.search(
        r"(\d{1,2}(?:[.,]\d)?)\s*\+?\s*(years?|yrs?|y\b|months?|mo\b|jahre?)", text, re.I
    )
    if match is None:
        raise AmountError("beginner, intermediate or advanced")
    years = number(match[1]) / (12 if match[2].lower().startswith("mo") else 1)
    value = "beginner" if years < 1 else "intermediate" if years < 5 else "advanced"
    return Read(value, ASSUMED, f"{match[0]} of training read as {value} (common practice)")


def body_mass(text: str, question: str) -> Read:
    """Body mass in kg.

    Raises:
        AmountError: when there is no single figure.
    """
    figures = _FIGURE.findall(text)
    if len(figures) != 1:
        raise AmountError("one body mass in kg or lb")
    said = re.search(r"\b(kg|kilos?|lbs?|pounds?)\b", f"{text} {question}", re.IGNORECASE)
    mass = number(figures[0])
    if said is not None:
        return Read(round(mass * KG_PER_LB, 1) if said[1][0] in "lLpP" else mass)
    return Read(mass, ASSUMED, f"{figures[0]} read as kg")


def stature(text: str, question: str) -> Read:
    """Stature in cm.

    Raises:
        AmountError: when it cannot be told.
    """
    feet = re.fullmatch(r"\s*(\d)\s*(?:'|ft|feet|′)\s*(\d{1,2})?\s*(?:\"|in|inches|″|'')?\s*", text,
                        re.IGNORECASE)  # fmt: skip
    if feet is not None:
        return Read(round(30.48 * int(feet[1]) + 2.54 * int(feet[2] or 0), 1))
    figures = _FIGURE.findall(text)
    if len(figures) != 1:
        raise AmountError("one stature, for example 178 cm or 5'10\"")
    value = number(figures[0])
    return Read(100 * value if value < 3 else value)


def days(text: str) -> Read:
    """Weekdays, Monday 0.

    Raises:
        AmountError: when none is named and no number of days either.
    """
    words = re.findall(r"[^\W\d_]+", text.lower())
    named_days = [WEEKDAYS.get(one, WEEKDAYS.get(one.removesuffix("s"))) for one in words]
    found = sorted({one for one in named_days if one is not None})
    if found:
        return Read(tuple(found))
    figures = re.findall(r"\d+", text)
    if len(figures) == 1 and int(figures[0]) in SPREAD:
        spread = SPREAD[int(figures[0])]
        names = ", ".join(DAYS[one].capitalize() for one in spread)
        return Read(spread, ASSUMED, f"{figures[0]} days spread over the week: {names}")
    raise AmountError("weekdays, or how many days a week")


def minutes(text: str) -> Read:
    """Minutes of a session; of a band the shorter.

    Raises:
        AmountError: when there are none.
    """
    hours = re.search(r"(\d(?:[.,]\d)?)\s*(?:h|hours?|std|stunden?)\b", text, re.IGNORECASE)
    figures = [round(60 * number(hours[1]))] if hours else [
        int(one) for one in re.findall(r"\d{2,3}", text)
    ]  # fmt: skip
    if not figures or len(figures) > 2:
        raise AmountError("minutes a session")
    if len(figures) == 2:
        return Read(min(figures), ASSUMED, f"the shorter of {figures[0]} and {figures[1]} min")
    return Read(figures[0])


def muscles(text: str) -> tuple[list[str], list[str]]:
    """Words that mean muscles, parts or groups, and those that do not."""
    from setwright.anatomy import atlas

    known, strange = [], []
    for one in re.split(r"\s*(?:[,;/\n]|\band\b|\bund\b|&)\s*", text):
        if not one or is_none(one):
            continue
        try:
            atlas.resolve(one)
        except KeyError:
            strange.append(one)
        else:
            known.append(one)
    return known, strange


def exercises(text: str) -> tuple[list[str], list[str]]:
    """Catalogue ids that words surely mean, and words that mean none."""
    known: list[str] = []
    strange: list[str] = []
    for one in re.split(r"\s*(?:[,;\n]|\band\b|\bund\b)\s*", text):
        if not one or is_none(one):
            continue
        ident = named(one).ident
        (strange if ident is None else known).append(one if ident is None else ident)
    return known, strange


def done(text: str, name: str = "", unit: str = "kg") -> tuple[list[dict[str, Any]], list[str]]:
    """Sets that were done, and pieces that are none.

    Args:
        text: for example ``back squat 100 kg x 5, bench 80x8``.
        name: the exercise, when the question names it.
        unit: of bare loads.
    """
    known: list[dict[str, Any]] = []
    strange: list[str] = []
    for one in re.split(r"\s*(?:;|\n|,(?!\d))\s*", text):
        if not one or is_none(one):
            continue
        match = _DONE.fullmatch(one.strip())
        words = (match["name"].strip() if match else "") or name
        ident = named(words).ident if words else None
        if match is None or ident is None:
            strange.append(one)
            continue
        kilos = number(match["load"])
        said = (match["unit"] or unit).lower()
        known.append(
            {
                "exercise": ident,
                "load_kg": round(kilos * KG_PER_LB, 4) if said.startswith("l") else kilos,
                "reps": int(match["reps"]),
                "rir": float(match["rir"] or 0),
            }
        )
    return known, strange
