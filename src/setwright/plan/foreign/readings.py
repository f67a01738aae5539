"""Amounts as strangers write them, each with how sure the reading is and what was assumed."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Any

from setwright.documents.units import Unit, to_kg
from setwright.plan import amounts
from setwright.plan.amounts import AmountError, number
from setwright.plan.foreign.model import AS_WRITTEN, ASSUMED, BY_CUSTOM
from setwright.plan.week import Tempo

# A bare rest up to here is meant in minutes, from here in seconds; between the two nothing is
# sure (common practice: nobody rests 5 seconds or 20 minutes).
MINUTES_UP_TO, SECONDS_FROM = 5, 20
# `@ 8` is a rating of exertion, `@ 2` repetitions in reserve; 5 could be either.
RESERVE_UP_TO, EXERTION_FROM = 4, 6
_FIGURES = re.compile(r"\d{1,4}(?:[.,]\d{1,3})?")
_EXACT = re.compile(r">|→")


@dataclass(frozen=True)
class Read:
    """An amount in the model's terms.

    Attributes:
        value: of the entry's field.
        confidence: 0 to 1.
        assumed: what was assumed, in words, or ''.
    """

    value: Any
    confidence: float = AS_WRITTEN
    assumed: str = ""


def sets(text: str) -> Read:
    """Working sets.

    Raises:
        AmountError: when they are a band, or none.
    """
    match = re.fullmatch(r"(\d{1,3})\s*(?:sets?|s[aä]tze?|x|×)?", text.strip(), re.IGNORECASE)
    if match is None:
        raise AmountError("one number of sets")
    count = int(match[1])
    if not 1 <= count <= 20:
        raise AmountError("1 to 20 sets")
    return Read(count)


def reps(text: str, count: int | None) -> Read:
    """Repetitions: one figure, a band, or one figure a set.

    Raises:
        AmountError: when they are none, or not as many as the sets.
    """
    bare = re.sub(
        r"\s*(?:reps?|repetitions?|wdh\.?|wiederholungen|(?:each|per|je|pro)\b.*|e/s|p/s)",
        "", text.strip(), flags=re.IGNORECASE,
    )  # fmt: skip
    if re.fullmatch(r"\d{1,3}(?:\s*[/,]\s*\d{1,3})+", bare):
        figures = [int(one) for one in re.findall(r"\d+", bare)]
        if count is not None and len(figures) != count:
            raise AmountError(f"a band, or one figure for each of the {count} sets")
        assumed = "one figure a set, kept as a band" if len(set(figures)) > 1 else ""
        return Read(_band(min(figures), max(figures)), BY_CUSTOM if assumed else 1.0, assumed)
    low, high = amounts.read_reps(bare)
    if low > high:
        return Read(_band(high, low), BY_CUSTOM, "the lower figure put first")
    return Read(_band(low, high))


def _band(low: int, high: int) -> tuple[int, int]:
    if not 1 <= low <= high <= 100:
        raise AmountError("1 to 100 repetitions")
    return low, high


def rir(text: str, count: int | None = None) -> Read:
    """Repetitions in reserve, first set to last.

    ``3-1`` and ``3>1`` go from the first set to the last, ``1-2`` is a band, whose higher figure
    is the first set's; so is a list with a figure for each set.

    Raises:
        AmountError: when there are none, or above 10.
    """
    first, last, assumed = _ends(text, count)
    if first < last and not _EXACT.search(text):
        first, last = last, first
        assumed = f"a band: {last:g} in reserve on the last set"
    return Read(_reserve(first, last), BY_CUSTOM if assumed else AS_WRITTEN, assumed)


def rpe(text: str, count: int | None = None) -> Read:
    """A rating of exertion as repetitions in reserve: 10 is none.

    Raises:
        AmountError: when there is no such rating.
    """
    first, last, assumed = _ends(text, count)
    if not (1 <= first <= 10 and 1 <= last <= 10):
        raise AmountError("an RPE from 1 to 10")
    if first > last and not _EXACT.search(text):
        first, last = last, first
        assumed = f"a band: RPE {last:g} on the last set"
    told = assumed or "RPE read as 10 less the repetitions in reserve"
    return Read(_reserve(10 - first, 10 - last), BY_CUSTOM if assumed else AS_WRITTEN, told)


def _ends(text: str, count: int | None) -> tuple[float, float, str]:
    single = re.fullmatch(r"\s*\d(?:,\d){2,}\s*", text)
    figures = [number(one) for one in (re.findall(r"\d", text) if single else _numbers(text))]
    if not figures or (len(figures) > 2 and count is not None and len(figures) != count):
        raise AmountError("one figure, `3-1` from the first set to the last, or one for each set")
    return figures[0], figures[-1], "first and last of a list" if len(figures) > 2 else ""


def _numbers(text: str) -> list[str]:
    return _FIGURES.findall(text)


def _reserve(first: float, last: float) -> tuple[float, float]:
    if not (0 <= first <= 10 and 0 <= last <= 10):
        raise AmountError("0 to 10 repetitions in reserve")
    return first, last


def at(text: str, unit: Unit) -> tuple[str, Read]:
    """The field meant by ``@ 8``, ``@ 2`` or ``@ 80``, and its value.

    Raises:
        AmountError: when it may be either of two.
    """
    low, *_, high = [number(one) for one in _numbers(text)] * 2
    if max(low, high) <= RESERVE_UP_TO:
        return "rir", Read(rir(text).value, ASSUMED, f"@{text.strip()} read as RIR")
    if min(low, high) >= EXERTION_FROM and max(low, high) <= 10:
        return "rir", Read(rpe(text).value, ASSUMED, f"@{text.strip()} read as RPE")
    if min(low, high) > 10 and low == high:
        return "load_kg", Read(to_kg(low, unit), ASSUMED, f"@{text.strip()} read as {unit}")
    raise AmountError("RIR, RPE or a load, said as such")


def rest(text: str, unit: str | None = None) -> Read:
    """Rest in seconds, shortest and longest.

    Args:
        text: as written, for example ``90s``, ``2'``, ``1-3 min``, ``1:30`` or ``2-3``.
        unit: ``s`` or ``min`` of bare figures, when a heading says so.

    Raises:
        AmountError: when it cannot be told.
    """
    pieces = re.split(r"\s*(?:-|–|—|->|→|\bto\b|\bbis\b|\btill\b)\s*", text.strip())
    if not 1 <= len(pieces) <= 2:
        raise AmountError(amounts.REST_FORMS)
    high = _seconds(pieces[-1], unit)
    shared = unit or _unit_of(pieces[-1])
    low = _seconds(pieces[0], shared if high.assumed == "" else unit)
    values = low.value, high.value
    if values[0] > values[1]:
        raise AmountError("the shorter rest first")
    if values[1] > 900:
        raise AmountError("a rest of at most 15 min")
    told = low.assumed or high.assumed
    return Read(values, min(low.confidence, high.confidence), told)


def _unit_of(text: str) -> str | None:
    word = re.search(r"[^\W\d]+|['\"″′]+", text)
    if word is None:
        return None
    return "min" if word[0].lower().startswith(("m", "'", "′")) and word[0] != "''" else "s"


def _seconds(text: str, unit: str | None) -> Read:
    """Seconds of one time."""
    bare = text.strip().rstrip(".")
    clock = re.fullmatch(r"(\d{1,3}):(\d\d)(?::(\d\d))?(?:\s*min)?", bare, re.IGNORECASE)
    if clock is not None:
        return _clock(int(clock[1]), int(clock[2]), clock[3])
    both = re.fullmatch(
        r"(\d{1,2})\s*(?:['′]|min)\s*(\d\d)(?:\s*(?:\"|″|''|s))?", bare, re.IGNORECASE
    )
    if both is not None:
        return _clock(int(both[1]), int(both[2]), None)
    match = re.fullmatch(r"(\d{1,4}(?:[.,]\d{1,3})?)\s*([^\W\d]+|['\"″′]{1,2})?", bare)
    if match is None:
        raise AmountError(amounts.REST_FORMS)
    figure = number(match[1])
    said = _unit_of(match[2]) if match[2] else unit
    if said is not None:
        return _whole(figure * (60 if said == "min" else 1))
    if figure == 0 or figure >= SECONDS_FROM:
        return Read(_whole(figure).value, BY_CUSTOM, f"rest {match[1]} read as seconds")
    if figure <= MINUTES_UP_TO:
        return Read(_whole(60 * figure).value, BY_CUSTOM, f"rest {match[1]} read as minutes")
    raise AmountError("a rest with its unit, s or min")


def _clock(first: int, second: int, third: str | None) -> Read:
    """``1:30`` is minutes and seconds; so is the time of day a spreadsheet makes of it."""
    if second > 59:
        raise AmountError(amounts.REST_FORMS)
    if third is None:
        return Read(60 * first + second)
    if first == 0:
        return Read(60 * second + int(third))
    if third == "00":
        return Read(60 * first + second, BY_CUSTOM, "a time of day read as minutes and seconds")
    raise AmountError("minutes and seconds")


def _whole(seconds: float) -> Read:
    if abs(seconds - round(seconds)) > 1e-9:
        raise AmountError("whole seconds")
    return Read(round(seconds))


def tempo(text: str) -> Read:
    """Tempo: three or four phases.

    Raises:
        AmountError: when it is none.
    """
    bare = re.sub(r"\s+", "", text.strip())
    if "/" not in bare and not re.fullmatch(r"\d[\dXx]{2,3}", bare):
        bare = re.sub(r"[.,:]", "-", bare)
    read: Tempo | None = amounts.read_tempo(bare)
    return Read(read)


def load(text: str, unit: Unit, said: bool = True) -> Read:
    """Load in kg.

    Args:
        text: as written.
        unit: of a bare figure.
        said: whether that unit was said anywhere, or is assumed.

    Raises:
        AmountError: when it is a band, a share of 1RM or no figure.
    """
    bare = re.sub(
        r"\s*(?:(?:per|each|a|je|pro)\s+\w+|/\s*(?:hand|side|db|h))\s*\Z", "", text.strip(),
        flags=re.IGNORECASE,
    )  # fmt: skip
    match = re.fullmatch(r"@?\s*(\d{1,4}(?:[.,]\d{1,3})?)\s*([^\W\d]+|#)?\.?", bare)
    if match is None:
        raise AmountError("one load, for example `60 kg` or `135 lb`")
    word = (match[2] or "").lower()
    if word and not re.fullmatch(r"kgs?|kilos?|kilogram(?:m?e?s)?|lbs?|pounds?|#", word):
        raise AmountError("a load in kg or lb")
    written: Unit = ("kg" if word[0] == "k" else "lb") if word else unit
    value = to_kg(number(match[1]), written)
    if value > 1000:
        raise AmountError("at most 1000 kg")
    if word or said:
        return Read(value)
    return Read(value, ASSUMED, f"load {match[1]} read as {unit}")
