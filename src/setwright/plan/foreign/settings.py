"""Effort, rest and tempo said once for compound and once for isolation exercises."""

from __future__ import annotations

import re
from typing import Any, Final

from setwright.documents.units import Unit
from setwright.plan.foreign.line import read_line

SETTABLE: Final = frozenset({"rir", "rest_s", "tempo"})
_KINDS: Final = {
    "compound": re.compile(
        r"\b(?:compounds?|big|main|heavy|primary|multi-?joint|large|mehrgelenk\w*|grundübung\w*|"
        r"polyarticul\w+|básicos|multiarticul\w+|compuestos|samengesteld\w*)\b",
        re.IGNORECASE,
    ),
    "isolation": re.compile(
        r"\b(?:isolations?|small(?:er)?|single-?joint|accessor(?:y|ies)|secondary|eingelenk\w*|"
        r"isolationsübung\w*|monoarticul\w+|accesorios|aislamiento|isolatie\w*|everything\s+else)\b",
        re.IGNORECASE,
    ),
}
_FIGURES: Final = re.compile(r"\A\D*(?=\d)")
_CLAUSES: Final = re.compile(r"\s*(?:[,;|]|\.\s|\s/\s|\band\b|\bund\b|\bet\b|\by\b|\ben\b)\s*")


def by_kind(words: str, unit: Unit) -> dict[str, dict[str, Any]]:
    """What a line says for compound and for isolation exercises; empty when it says neither.

    Args:
        words: the line.
        unit: of bare loads.
    """
    said: dict[str, dict[str, Any]] = {}
    resting = re.search(r"\b(?:rests?|pausen?|repos|descansos?|rust|pauze)\b", words, re.IGNORECASE)
    for clause in _CLAUSES.split(words):
        kind = next((one for one, pattern in _KINDS.items() if pattern.search(clause)), None)
        found = read_line(clause, unit, True)
        if "rest_s" not in found.fields and resting and re.search(r"\d", clause):
            found = read_line(f"rest {_FIGURES.sub(r'', clause)}", unit, True)
        fields = {key: value for key, value in found.fields.items() if key in SETTABLE}
        if kind is None and not fields:
            continue
        if kind is None or not fields or found.prescribes:
            return {}
        said.setdefault(kind, {}).update(fields)
    return said
