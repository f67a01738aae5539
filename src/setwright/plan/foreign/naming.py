"""Which exercise a stranger's words mean, and how sure that is."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from setwright.exercises.catalogue import exercise, exercises, ids
from setwright.exercises.names import match, plain
from setwright.plan.foreign.model import AS_WRITTEN, BY_CUSTOM

# Words that say how, not what.
_QUALIFIERS = re.compile(
    r"\b(?:heavy|light|slow(?:ly)?|strict|controlled|explosive|paused?|deep|main lift|optional|"
    r"finisher|any|your choice|working|straight|top|back-?off|warm-?up)\b",
    re.IGNORECASE,
)
_SHOWN = 4
# A likeness letter by letter, spaces aside, is sure only this high and this far ahead.
_SURE_FROM, _SURE_AHEAD = 0.84, 0.07


@dataclass(frozen=True)
class Named:
    """What words mean.

    Attributes:
        words: as written.
        ident: catalogue id, or None when nothing is surely meant.
        confidence: 0 to 1; of None the likeness of the best candidate.
        candidates: ids, best first.
        extra: words that say how the exercise is done.
        assumed: what was assumed, or ''.
    """

    words: str
    ident: str | None
    confidence: float
    candidates: tuple[str, ...] = ()
    extra: str = ""
    assumed: str = ""


@cache
def named(words: str) -> Named:
    """The exercise meant by words."""
    found = _named(words)
    if found.ident is not None:
        return found
    bare = " ".join(_QUALIFIERS.sub(" ", words).split()).strip(" -–,()")
    if bare and bare != words:
        again = _named(bare)
        if again.ident is not None:
            extra = ", ".join(one.lower() for one in _QUALIFIERS.findall(words))
            return Named(
                words, again.ident, min(again.confidence, BY_CUSTOM), again.candidates, extra,
                again.assumed,
            )  # fmt: skip
    return found


def _named(words: str) -> Named:
    if words in ids():
        return Named(words, words, AS_WRITTEN)
    found = match(words)
    candidates = tuple(ident for ident, _ in found.candidates[:_SHOWN])
    best = found.candidates[0][1] / 100 if found.candidates else 0.0
    if found.sure is None:
        slip = _slip(words)
        if slip is not None:
            ident, likeness = slip
            assumed = f"{words!r} read as {exercise(ident).name!r}"
            return Named(words, ident, round(likeness, 2), candidates, "", assumed)
        return Named(words, None, min(best, 0.7), candidates)
    name = exercise(found.sure).name
    assumed = "" if best >= 1 else f"{words!r} read as {name!r}"
    return Named(words, found.sure, round(best, 2), candidates, "", assumed)


@cache
def _run_together() -> dict[str, str]:
    """Every name without spaces, with the one exercise it means."""
    meant: dict[str, set[str]] = {}
    for one in exercises():
        for name in (one.id, one.name, *one.synonyms):
            meant.setdefault(plain(name).replace(" ", ""), set()).add(one.id)
    return {name: found.pop() for name, found in meant.items() if len(found) == 1}


def _slip(words: str) -> tuple[str, float] | None:
    """The exercise whose name is a slip of the keyboard away, and the likeness 0 to 1."""
    from rapidfuzz.distance import OSA
    from rapidfuzz.process import extract

    # A missing letter at the end may look like a singular: both forms are tried.
    forms = {plain(words).replace(" ", ""), re.sub(r"[\W_]+", "", words.lower())}
    names = _run_together()
    best: dict[str, float] = {}
    for wanted in forms:
        if len(wanted) < 6:
            continue
        found = extract(wanted, list(names), scorer=OSA.normalized_similarity, limit=12)
        for name, score, _ in found:
            best[names[name]] = max(best.get(names[name], 0.0), score)
    if not best:
        return None
    (ident, likeness), *others = sorted(best.items(), key=lambda item: -item[1])
    ahead = likeness - (others[0][1] if others else 0.0)
    return (ident, likeness) if likeness >= _SURE_FROM and ahead >= _SURE_AHEAD else None


def likely(words: str) -> bool:
    """Whether words are surely, or nearly, the name of an exercise."""
    return len(words) >= 3 and (named(words).ident is not None or named(words).confidence >= 0.7)
