"""A plan from a file, with what was understood of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from setwright.documents.errors import DocumentError
from setwright.documents.units import Unit
from setwright.plan.foreign.importing import import_plan
from setwright.plan.foreign.model import Piece
from setwright.plan.read import is_yaml, read_plan
from setwright.plan.week import Plan


@dataclass(frozen=True)
class Imported:
    """What a file holds.

    Attributes:
        pieces: every line or cell with what was understood; none for a plan of our own making.
        attention: the pieces that nobody but the coach can say.
    """

    plan: Plan | None
    pieces: tuple[Piece, ...] = ()
    attention: tuple[Piece, ...] = ()


def imported(data: bytes, name: str, unit: Unit | None, answers: Mapping[str, str]) -> Imported:
    """Read a plan from a file of any making.

    Raises:
        DocumentError: when it cannot be read.
    """
    text = _text(data)
    if text is not None and is_yaml(text):
        return Imported(read_plan(text, name))
    reading = import_plan(data, name, None, unit, answers)
    return Imported(reading.plan, reading.pieces, reading.attention)


def fault_words(error: DocumentError) -> list[str]:
    """Faults as a form shows them."""
    words = []
    for fault in error.faults[:10]:
        where = f"line {fault.line}: " if fault.line else ""
        field = f"{fault.field}: " if fault.field else ""
        words.append(f"{where}{field}found {fault.found}; allowed: {fault.allowed}")
    return words


def _text(data: bytes) -> str | None:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return None
