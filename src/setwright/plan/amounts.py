"""The trade's ways of writing amounts: repetitions, effort, rest, tempo, load; read and written.

Each ``read_`` function takes text, a number or a list and gives the value of the document model;
each ``write_`` function gives text that reads back to exactly the same value.
"""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Any

from setwright.documents.units import KG_PER_LB
from setwright.documents.yaml_text import plain_number
from setwright.plan.week import Tempo

# X in a tempo: as fast as possible, taken as the middle of 0.6 to 1.0 s (from memory).
FAST_S = 0.8

NUMBER = r"\d{1,6}(?:[.,]\d{1,400})?"
TO = r"\s*(?:-|–|—|to|bis)\s*"
REPS_FORMS = "`8` or `8-10`"
RIR_FORMS = "`2` or `3-1` (first set to last set)"
REST_FORMS = "`90 s`, `90-120 s`, `2 min` or `2-3 min`"
TEMPO_FORMS = "`3/1/1/0`, `3-1-1-0`, `3110`, `31X0` or `2/0/X`"
LOAD_FORMS = "`60 kg` or `135 lb`"

_UNIT = {"s": 1, "sec": 1, "secs": 1, "second": 1, "seconds": 1, "sek": 1, '"': 1}
_UNIT |= {"m": 60, "min": 60, "mins": 60, "minute": 60, "minutes": 60, "'": 60}
_TIME = rf"(\d{{1,3}}:\d\d|{NUMBER})\s*([a-z]+|'|\")?\.?"
_REST = re.compile(rf"{_TIME}(?:{TO}{_TIME})?\Z", re.IGNORECASE)
_REPS = re.compile(rf"(\d{{1,6}})(?:{TO}(\d{{1,6}}))?\Z", re.IGNORECASE)
_PAIR = re.compile(rf"({NUMBER})(?:{TO}({NUMBER}))?\Z", re.IGNORECASE)
_LOAD = re.compile(rf"({NUMBER})\s*(kgs?|kilos?|lbs?|pounds?)\Z", re.IGNORECASE)


class AmountError(ValueError):
    """An amount that cannot be read; its text says what is allowed."""


def number(text: str) -> float:
    """A decimal number, with a point or a comma."""
    return float(text.replace(",", "."))


def _is_number(value: Any) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)


def _pair(value: Any) -> bool:
    return isinstance(value, list | tuple) and len(value) == 2 and all(map(_is_number, value))


def read_reps(value: Any) -> tuple[int, int]:
    """Lowest and highest repetitions."""
    if _is_number(value):
        return (value, value)
    if _pair(value):
        return (value[0], value[1])
    match = _REPS.match(value.strip()) if isinstance(value, str) else None
    if match is None:
        raise AmountError(REPS_FORMS)
    low = int(match[1])
    return low, int(match[2]) if match[2] else low


def write_reps(reps: tuple[int, int]) -> str:
    """Repetitions as ``8`` or ``8-10``."""
    return f"{reps[0]}" if reps[0] == reps[1] else f"{reps[0]}-{reps[1]}"


def read_rir(value: Any) -> tuple[float, float]:
    """Repetitions in reserve on the first and on the last set."""
    if _is_number(value):
        return float(value), float(value)
    if _pair(value):
        return float(value[0]), float(value[1])
    match = _PAIR.match(value.strip()) if isinstance(value, str) else None
    if match is None:
        raise AmountError(RIR_FORMS)
    first = number(match[1])
    return first, number(match[2]) if match[2] else first


def write_rir(rir: tuple[float, float]) -> str:
    """Effort as ``2`` or ``3-1``."""
    first, last = plain_number(rir[0]), plain_number(rir[1])
    return first if first == last else f"{first}-{last}"


def _seconds(amount: str, unit: str | None) -> int:
    if ":" in amount:
        minutes, seconds = amount.split(":")
        if unit not in (None, "min") or int(seconds) > 59:
            raise AmountError(REST_FORMS)
        return int(minutes) * 60 + int(seconds)
    factor = 1 if unit is None else _UNIT.get(unit.lower(), 0)
    seconds_exact = Decimal(amount.replace(",", ".")) * factor
    if factor == 0 or seconds_exact != int(seconds_exact):
        raise AmountError(f"{REST_FORMS}, in whole seconds")
    return int(seconds_exact)


def read_rest(value: Any) -> tuple[int, int]:
    """Shortest and longest rest in seconds; a bare number means seconds."""
    if _is_number(value):
        return (value, value)
    if _pair(value):
        return (value[0], value[1])
    match = _REST.match(value.strip()) if isinstance(value, str) else None
    if match is None:
        raise AmountError(REST_FORMS)
    low, low_unit, high, high_unit = match.groups()
    if high is None:
        seconds = _seconds(low, low_unit)
        return seconds, seconds
    clock = ":" in low
    return _seconds(low, low_unit or (None if clock else high_unit)), _seconds(high, high_unit)


def write_rest(rest_s: tuple[int, int]) -> str:
    """Rest as ``90 s``, ``90-120 s`` or, from two whole minutes up, ``2-3 min``."""
    low, high = rest_s
    minutes = low >= 120 and low % 60 == 0 and high % 60 == 0
    if minutes:
        low, high = low // 60, high // 60
    unit = "min" if minutes else "s"
    return f"{low} {unit}" if low == high else f"{low}-{high} {unit}"


def read_tempo(value: Any) -> Tempo | None:
    """Seconds lowering, at the stretched end, lifting, at the top; None is no set tempo.

    X, as fast as possible, may stand for the lifting alone.
    """
    if value is None or isinstance(value, Tempo):
        return value
    text = str(value).strip() if isinstance(value, str) or type(value) is int else ""
    if re.fullmatch(r"\d\d[\dXx]\d?", text):
        places = list(text)
    elif re.fullmatch(rf"{NUMBER}(?:\s*/\s*(?:{NUMBER}|[Xx])){{2,3}}", text):
        places = [piece.strip() for piece in text.split("/")]
    elif re.fullmatch(rf"{NUMBER}(?:\s*-\s*(?:{NUMBER}|[Xx])){{2,3}}", text):
        places = [piece.strip() for piece in text.split("-")]
    else:
        raise AmountError(TEMPO_FORMS)
    lowering, stretched, lifting, top = (*places, "0")[:4]
    if stretched in "Xx" or top in "Xx":
        raise AmountError(f"{TEMPO_FORMS}; X for the lifting alone")
    seconds = [
        FAST_S if piece in "Xx" else number(piece) for piece in (lowering, stretched, lifting, top)
    ]
    if max(seconds) > 20:
        raise AmountError("at most 20 s for each phase of a repetition")
    return Tempo(
        lowering_s=seconds[0], stretched_s=seconds[1], lifting_s=seconds[2], top_s=seconds[3]
    )


def write_tempo(tempo: Tempo) -> str:
    """Tempo as ``3/1/1/0``."""
    lifting = "X" if tempo.lifting_s == FAST_S else plain_number(tempo.lifting_s)
    return "/".join(
        (
            plain_number(tempo.lowering_s),
            plain_number(tempo.stretched_s),
            lifting,
            plain_number(tempo.top_s),
        )
    )


def read_load(value: Any, unit: str = "kg") -> float:
    """Load in kg; a bare number is in the unit given."""
    if _is_number(value):
        amount, written = float(value), unit
    else:
        match = _LOAD.match(value.strip()) if isinstance(value, str) else None
        if match is None:
            raise AmountError(LOAD_FORMS)
        amount, written = number(match[1]), match[2].lower()
    return amount * KG_PER_LB if written[0] in "lp" else amount


def write_load(load_kg: float, unit: str = "kg") -> str:
    """Load as ``60 kg`` or ``135 lb``; in kg when no short figure in lb means exactly this load."""
    if unit == "lb":
        for digits in range(5):
            pounds = round(load_kg / KG_PER_LB, digits)
            if pounds * KG_PER_LB == load_kg:
                return f"{plain_number(pounds)} lb"
    return f"{plain_number(load_kg)} kg"
