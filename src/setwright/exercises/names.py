"""Which exercise a coach's words mean: sure, or a list to choose from."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from types import MappingProxyType
from typing import Final

from setwright.exercises.catalogue import exercises

# A likeness (0 to 100) is sure only this high and this far ahead of the next exercise.
SURE_FROM: Final = 90.0
SURE_AHEAD: Final = 7.0
WORTH_SHOWING: Final = 45.0

# Shorthand of the trade, word by word.
ABBREVIATIONS: Final[Mapping[str, str]] = MappingProxyType(
    {
        "bb": "barbell",
        "db": "dumbbell",
        "dbs": "dumbbell",
        "kb": "kettlebell",
        "bw": "bodyweight",
        "rdl": "romanian deadlift",
        "sldl": "stiff leg deadlift",
        "ohp": "overhead press",
        "ext": "extension",
        "pulldown": "pull down",
        "pullup": "pull up",
        "chinup": "chin up",
        "pushup": "push up",
        "situp": "sit up",
        "pushdown": "push down",
        "legged": "leg",
        "armed": "arm",
        "1": "single",
        "one": "single",
    }
)


@dataclass(frozen=True)
class Match:
    """What the words may mean.

    Attributes:
        words: the words as written.
        sure: the exercise meant, or None when it must be asked.
        candidates: ids with their likeness 0 to 100, best first.
    """

    words: str
    sure: str | None
    candidates: tuple[tuple[str, float], ...]


def plain(words: str) -> str:
    """Words without case, hyphens, plurals and the trade's abbreviations, for comparison."""
    pieces = re.sub(r"[^\w]+", " ", words.lower().replace("'", "").replace("_", " ")).split()
    spelled = " ".join(ABBREVIATIONS.get(_singular(piece), _singular(piece)) for piece in pieces)
    return " ".join(_singular(piece) for piece in spelled.split())


def _singular(word: str) -> str:
    if len(word) > 3 and word.endswith("s") and not word.endswith("ss") and word != "triceps":
        return word.removesuffix("es") if word.endswith(("ches", "sses")) else word[:-1]
    return word


@cache
def _known() -> Mapping[str, tuple[str, ...]]:
    """Every plain name with the ids it stands for, exact names before synonyms."""
    known: dict[str, list[str]] = {}
    for exercise in exercises():
        for name in (exercise.id, exercise.name, *exercise.synonyms):
            found = known.setdefault(plain(name), [])
            if exercise.id not in found:
                found.append(exercise.id)
    return MappingProxyType({name: tuple(found) for name, found in known.items()})


def match(words: str, limit: int = 5) -> Match:
    """Find the exercise that words mean.

    Args:
        words: an exercise as a coach writes it.
        limit: the most candidates to give back.

    Returns:
        A match that is sure when the words are an id, a name or a synonym of one exercise (case,
        hyphens and plurals aside), or when one exercise is far ahead of all others.
    """
    wanted = plain(words)
    exact = _known().get(wanted, ())
    if len(exact) == 1:
        return Match(words, exact[0], ((exact[0], 100.0),))
    if exact:
        return Match(words, None, tuple((ident, 100.0) for ident in exact[:limit]))
    scores = _likeness(wanted)
    ranked = sorted(scores.items(), key=lambda item: (-item[1], item[0]))
    shown = tuple((ident, round(score, 1)) for ident, score in ranked if score >= WORTH_SHOWING)
    sure = None
    if ranked and ranked[0][1] >= SURE_FROM:
        ahead = ranked[0][1] - (ranked[1][1] if len(ranked) > 1 else 0.0)
        sure = ranked[0][0] if ahead >= SURE_AHEAD else None
    return Match(words, sure, shown[:limit])


def _likeness(wanted: str) -> dict[str, float]:
    from rapidfuzz import fuzz, process

    names = list(_known())
    best: dict[str, float] = {}
    if not wanted:
        return best
    for name, score, _ in process.extract(wanted, names, scorer=fuzz.token_sort_ratio, limit=None):
        for ident in _known()[name]:
            best[ident] = max(best.get(ident, 0.0), score)
    return best
