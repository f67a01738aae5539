"""How strong evidence is, in words: how many findings of what kind, and what they found."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from setwright.handout.teaching.content import Source, Words
from setwright.handout.wording import listed, number
from setwright.sources.library import finding, findings
from setwright.sources.model import Basis, Finding, Read, Value

# One and several, strongest first.
KINDS: dict[Basis, tuple[str, str]] = {
    "meta-analysis": ("meta-analysis", "meta-analyses"),
    "trial": ("trial", "trials"),
    "observational": ("observational study", "observational studies"),
    "guideline": ("guideline", "guidelines"),
    "consensus": ("consensus or review", "consensuses or reviews"),
    "standard": ("standard", "standards"),
    "handbook": ("handbook", "handbooks"),
    "case report": ("case report", "case reports"),
    "derived": ("piece of arithmetic", "pieces of arithmetic"),
    "common practice": ("fact of the trade", "facts of the trade"),
}
UNITS = {
    "ES": "in effect size",
    "SMD": "in effect size",
    "standardised mean difference": "in effect size",
    "g": "in effect size",
    "reps": "repetitions",
    "% change": "%",
    "weekly sets/muscle": "sets a week",
    "fractional sets/session": "fractional sets",
    "percentage points/set": "percentage points",
}
READ: dict[Read, str] = {
    "full text": "in full",
    "abstract": "as abstract",
    "secondary page": "on another page about it",
    "computed from open data": "computed from open data",
    "from memory": "from memory",
}


def known(idents: Iterable[str]) -> tuple[str, ...]:
    """Ids among some that are findings, each once, order kept."""
    return tuple(dict.fromkeys(one for one in idents if one in findings()))


def weighed(idents: Iterable[str]) -> str:
    """How many findings of what kind, and how they were read."""
    chosen = [finding(one) for one in known(idents)]
    if not chosen:
        return "common practice only"
    kinds = Counter(one.basis for one in chosen)
    read = Counter(one.read for one in chosen)
    said = listed(
        [f"{kinds[kind]} {words[kinds[kind] > 1]}" for kind, words in KINDS.items() if kinds[kind]]
    )
    how = listed([f"{read[kind]} {words}" for kind, words in READ.items() if read[kind]])
    return f"{said}; read: {how}"


def shown(figures: Iterable[tuple[str, str, str]]) -> tuple[Words, ...]:
    """Published figures with their intervals.

    Args:
        figures: id of a finding, the name of one of its values, and the words for it.

    Raises:
        KeyError: when a finding has no such value.
    """
    return tuple(
        Words(value_words(_value(ident, name), words), (ident,)) for ident, name, words in figures
    )


def _value(ident: str, name: str) -> Value:
    for one in finding(ident).values:
        if one.name == name:
            return one
    raise KeyError(f"{ident} has no value {name!r}")


def value_words(value: Value, words: str) -> str:
    """A published figure, its interval, and what an interval that spans zero says."""
    if value.value is not None:
        words += f": {number(value.value)}"
        if value.low is not None and value.high is not None:
            words += f" ({number(value.low)} to {number(value.high)})"
    elif value.low is not None and value.high is not None:
        words += f": {number(value.low)} to {number(value.high)}"
    if value.unit:
        words += f" {UNITS.get(value.unit, value.unit)}"
    if value.low is not None and value.high is not None and value.low < 0 < value.high:
        words += "; the interval spans zero"
    return words


def source_lines(idents: Iterable[str]) -> tuple[Source, ...]:
    """The list of sources, numbered in the order given."""
    return tuple(
        _line(number_, finding(ident)) for number_, ident in enumerate(known(idents), start=1)
    )


def _line(number_: int, one: Finding) -> Source:
    cited = one.citations[0] if one.citations else None
    where = ""
    if cited is not None:
        end = ", ".join(str(piece) for piece in (cited.journal, cited.year) if piece)
        where = ". ".join(filter(None, (cited.title.rstrip("."), end)))
    name = KINDS[one.basis][0]
    kind = f"{name[:1].upper()}{name[1:]}, {_how(one.read)}"
    return Source(
        number_, one.id, one.finding, kind, where, (cited.doi or "") if cited is not None else ""
    )


def _how(read: Read) -> str:
    return (
        READ[read] if read in ("from memory", "computed from open data") else f"read {READ[read]}"
    )
