"""Kilograms inside, pounds at the edge."""

from __future__ import annotations

from typing import Final, Literal

Unit = Literal["kg", "lb"]

# Exact by definition: finding `unit-lb`.
KG_PER_LB: Final = 0.45359237


def to_kg(load: float, unit: Unit) -> float:
    """A load as kilograms.

    >>> to_kg(45, "lb")
    20.41165665
    """
    return load * KG_PER_LB if unit == "lb" else load


def from_kg(load_kg: float, unit: Unit) -> float:
    """Kilograms as the unit the person uses."""
    return load_kg / KG_PER_LB if unit == "lb" else load_kg


def load_words(load_kg: float, unit: Unit) -> str:
    """A load as it is written on a plan, for example ``62.5 kg`` or ``135 lb``."""
    return f"{round(from_kg(load_kg, unit), 2):g} {unit}"
