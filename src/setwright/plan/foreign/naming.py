"""Which exercise a stranger's words mean, and how sure that is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import combinations, groupby
from types import MappingProxyType

from setwright.exercises.catalogue import exercise, exercises, ids
from setwright.exercises.names import plain
from setwright.plan.foreign.model import AS_WRITTEN, BY_CUSTOM
from setwright.plan.foreign.tongues import folded, in_english
from setwright.plan.foreign.vocabulary import (
    EQUIPMENT,
    FILLING,
    HOW,
    MOVEMENTS,
    MUSCLES,
    SPELLINGS,
)

_SHOWN, _LOOKED_AT, _WORTH_SHOWING = 4, 12, 0.3
# Words that may be left out of a name at once, and letters that may be wrong in one of them.
_LEFT_OUT = 4
_SLIPS = ((3, 1), (8, 2))
_RUN_TOGETHER = 6
# More words are no name of an exercise.
_LONGEST_NAME = 12
_SPELT, _SLIPPED = 0.95, 0.85
_LONGEST_SPELLING = max(len(one.split()) for one in SPELLINGS)
_HOW = frozenset(HOW)
_OPPOSITE = {"standing": "seated", "seated": "standing", "flat": "incline"}
_DOING = frozenset(MOVEMENTS) | {
    "push", "pull", "deadlift", "lunge", "thrust", "crunch", "dip", "plank", "shrug", "step",
    "swing", "bridge", "carry", "twist", "rotation", "crusher", "kick", "hold", "chin", "sit",
}  # fmt: skip
Words = tuple[str, ...]
Span = tuple[tuple[int, ...], str]


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
    """The exercise meant by words: as the catalogue has it, spelt otherwise, or with slips."""
    if words in ids():
        return Named(words, words, AS_WRITTEN)
    written = in_english(words).split()
    tokens = _spelt(written)
    for spelt, told in ((tokens, _SPELT), (_mended(written), _SLIPPED)):
        found = _meant(spelt)
        if found is not None:
            return _sure(words, *found, told)
    joined = _joined().get("".join(tokens))
    return _sure(words, joined, "", _SLIPPED) if joined else _candidates(words)


def _sure(words: str, ident: str, extra: str, told: float) -> Named:
    """The exercise meant; as written only where the catalogue has these very words."""
    if plain(words) in _as_written().get(ident, ()):
        return Named(words, ident, AS_WRITTEN, (ident,))
    assumed = f"{words!r} read as {exercise(ident).name!r}"
    return Named(words, ident, min(told, BY_CUSTOM) if extra else told, (ident,), extra, assumed)


@cache
def _as_written() -> Mapping[str, frozenset[str]]:
    return {one.id: frozenset(map(plain, (one.id, one.name, *one.synonyms))) for one in exercises()}


def likely(words: str) -> bool:
    """Whether words are surely, or nearly, the name of an exercise."""
    return len(words) >= 3 and (named(words).ident is not None or named(words).confidence >= 0.7)


def moves(words: str) -> bool:
    """Whether words hold one that says what an exercise does, such as `press` or `row`."""
    return bool(_DOING & set(_mended(in_english(words).split())))


def _spelt(tokens: Sequence[str]) -> Words:
    """Words in one spelling, the longest shorthand first; fillings left out."""
    at, out = 0, []
    while at < len(tokens):
        for length in range(min(_LONGEST_SPELLING, len(tokens) - at), 0, -1):
            run = tokens[at : at + length]
            found = SPELLINGS.get(" ".join(run))
            found = found or SPELLINGS.get(" ".join([*run[:-1], _singular(run[-1])]))
            if found is not None:
                out += found.split()
                at += length
                break
        else:
            out.append(_singular(tokens[at]))
            at += 1
    return tuple(one for one in out if one not in FILLING)


def _singular(word: str) -> str:
    if len(word) > 5 and word.endswith("ies"):
        return f"{word[:-3]}y"
    if len(word) > 3 and word.endswith("s") and not word.endswith(("ss", "us")):
        return word.removesuffix("es") if word.endswith(("ches", "sses", "xes")) else word[:-1]
    return word


@cache
def _names() -> Mapping[Words, frozenset[str]]:
    """The words of every name, in one spelling and sorted, with the exercises they mean."""
    meant: dict[Words, set[str]] = {}
    for one in exercises():
        for name in (one.id.replace("-", " "), one.name, *one.synonyms):
            tokens = tuple(sorted(_spelt(folded(name).split())))
            meant.setdefault(tokens, set()).add(one.id)
    return MappingProxyType({words: frozenset(found) for words, found in meant.items()})


@cache
def _joined() -> Mapping[str, str]:
    """Every name without spaces, with the one exercise it means."""
    meant: dict[str, set[str]] = {}
    for one in exercises():
        for name in (one.name, *one.synonyms):
            meant.setdefault("".join(_spelt(folded(name).split())), set()).add(one.id)
    return {name: found.pop() for name, found in meant.items()
            if len(found) == 1 and len(name) >= _RUN_TOGETHER}  # fmt: skip


@cache
def _vocabulary() -> frozenset[str]:
    """Every word that a name may hold."""
    words = {word for name in _names() for word in name}
    words |= {word for how in HOW for word in how.split()} | MUSCLES | set(EQUIPMENT)
    return frozenset(words | set(FILLING) | {word for one in SPELLINGS for word in one.split()})


def _mended(words: Sequence[str]) -> Words:
    """Words that are none of a name's replaced by the one that is a slip of the keyboard away."""
    return _spelt([_near(one) or one for one in words])


@cache
def _near(word: str) -> str | None:
    from rapidfuzz.distance import OSA

    if word in _vocabulary() or _singular(word) in _vocabulary():
        return None
    allowed = max((slips for length, slips in _SLIPS if len(word) >= length), default=0)
    best: dict[int, set[str]] = {}
    for known in _vocabulary():
        if len(known) < 4 or abs(len(known) - len(word)) > allowed:
            continue
        if len(word) > 4 or (known[0], known[-1]) == (word[0], word[-1]):
            distance = OSA.distance(word, known, score_cutoff=allowed)
            if distance <= allowed:
                best.setdefault(distance, set()).add(known)
    nearest = best[min(best)] if best else set()
    spelt = {_spelt([one]) for one in nearest}
    return nearest.pop() if len(spelt) == 1 else None


def _meant(tokens: Words) -> tuple[str, str] | None:
    """The one exercise that words name, and how it is done."""
    names = _names()
    whole = names.get(tuple(sorted(tokens)))
    if whole is not None:
        return (next(iter(whole)), "") if len(whole) == 1 else None
    if len(tokens) > 1:
        longer = {name: found for name, found in names.items() if not set(tokens) - set(name)}
        near = [names.get(tuple(sorted((*tokens, noun)))) for noun in MOVEMENTS]
        meant = frozenset[str]().union(*(found for found in near if found))
        if longer:
            return (next(iter(meant)), "") if len(meant) == 1 else None
    return _without(tokens)


def _without(tokens: Words) -> tuple[str, str] | None:
    """The one exercise named when what says least is left out."""
    droppable = list(_droppable(tokens)) if len(tokens) <= _LONGEST_NAME else []
    ways = [way for count in range(1, min(_LEFT_OUT, len(droppable)) + 1)
            for way in combinations(droppable, count)]  # fmt: skip
    for _, alike in groupby(sorted(ways, key=_cost), key=_cost):
        meant: dict[str, str] = {}
        for left_out in alike:
            places = [at for span, _ in left_out for at in span]
            if len(set(places)) < len(places) or len(places) == len(tokens):
                continue
            rest = [word for at, word in enumerate(tokens) if at not in places]
            for ident in _whole(rest):
                extra = _extra(tokens, left_out, ident)
                if extra is not None:
                    meant.setdefault(ident, extra)
        if meant:
            return next(iter(meant.items())) if len(meant) == 1 else None
    return None


def _whole(tokens: Sequence[str]) -> frozenset[str]:
    """The exercises with just these words, the movement said or not."""
    names = _names()
    exact = names.get(tuple(sorted(tokens)), frozenset())
    if exact or len(tokens) < 2:
        return exact
    return frozenset().union(
        *(names.get(tuple(sorted((*tokens, noun))), frozenset()) for noun in MOVEMENTS)
    )


def _cost(left_out: Sequence[Span]) -> int:
    """How much is lost with words: an exercise's own equipment least."""
    return sum(1 if words in EQUIPMENT else 2 for _, words in left_out)


def _droppable(tokens: Words) -> Iterator[Span]:
    """Places of words that may be left out, each with its words."""
    for at, word in enumerate(tokens):
        pair = f"{word} {tokens[at + 1]}" if at + 1 < len(tokens) else ""
        if pair in _HOW:
            yield (at, at + 1), pair
        if word in _HOW or word in EQUIPMENT or word in MUSCLES:
            yield (at,), word


def _extra(tokens: Words, left_out: Sequence[Span], ident: str) -> str | None:
    """How the exercise is done, said by what was left out; None when it is another exercise."""
    said = []
    own = set(_spelt(folded(exercise(ident).name).split()))
    for _, words in sorted(left_out):
        if _OPPOSITE.get(words) in own:
            return None
        if words in EQUIPMENT and not _made_of(ident, words):
            return None
        told = words in EQUIPMENT or (words in MUSCLES and words not in _HOW)
        if not told and not set(words.split()) <= own:
            said.append(words)
    return " ".join(said)


def _made_of(ident: str, equipment: str) -> bool:
    """Whether an exercise is done with an equipment."""
    one = exercise(ident)
    kit = {thing for alternative in one.kit for thing in alternative} | {one.resistance}
    return any(word in kit for word in EQUIPMENT[equipment])


def _candidates(words: str) -> Named:
    """Nothing surely meant: the exercises that share most words and are spelt most alike."""
    from rapidfuzz import fuzz, process

    wanted = set(_mended(in_english(words).split()))
    text = " ".join(sorted(wanted))
    scores: dict[str, float] = {}
    if 0 < len(wanted) <= _LONGEST_NAME:
        by_text = _by_text()
        for scorer in (fuzz.ratio, fuzz.token_set_ratio):
            for near, _, _ in process.extract(text, list(by_text), scorer=scorer, limit=_LOOKED_AT):
                common = len(wanted & set(near.split())) / len(wanted | set(near.split()))
                score = 0.6 * common + 0.4 * fuzz.ratio(text, near) / 100
                for ident in by_text[near]:
                    scores[ident] = max(scores.get(ident, 0.0), score)
    ranked = sorted(scores.items(), key=lambda item: (-item[1], item[0]))
    shown = tuple(ident for ident, score in ranked[:_SHOWN] if score >= _WORTH_SHOWING)
    return Named(words, None, round(min(ranked[0][1] if ranked else 0.0, 0.75), 2), shown)


@cache
def _by_text() -> Mapping[str, frozenset[str]]:
    return {" ".join(name): idents for name, idents in _names().items()}
