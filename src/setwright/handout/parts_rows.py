"""Which parts the picture of the parts shows, in which order and column."""

from __future__ import annotations

from collections.abc import Mapping

from setwright.anatomy.atlas import muscles, parts
from setwright.anatomy.model import Part, Region
from setwright.response.targets import Band

MUSCLE_GAP_ROWS, HEAD_ROWS = 0.45, 1.0
DOWN: tuple[Region, ...] = (
    "neck",
    "shoulder",
    "chest",
    "back",
    "upper arm",
    "forearm",
    "trunk",
    "hip",
    "thigh",
    "lower leg",
)


def groups(
    weekly: Mapping[str, float], targets: Mapping[str, Band]
) -> list[tuple[str, list[Part]]]:
    """Muscles with the parts that are worth a row, from the neck down."""
    found: dict[str, list[Part]] = {}
    for one in parts():
        if one.id in targets or one.trained_directly or weekly.get(one.id, 0) > 0:
            found.setdefault(one.muscle, []).append(one)
    ordered = sorted(found.items(), key=lambda item: DOWN.index(item[1][0].region))
    return [(muscles()[ident].name, rows) for ident, rows in ordered]


def rows_of(groups: list[tuple[str, list[Part]]]) -> float:
    """Height of groups, in rows of bars."""
    return sum(_height(rows) for _, rows in groups)


def _height(rows: list[Part]) -> float:
    return (HEAD_ROWS if len(rows) > 1 else 0) + len(rows) + MUSCLE_GAP_ROWS


def halves(
    groups: list[tuple[str, list[Part]]],
) -> tuple[list[tuple[str, list[Part]]], list[tuple[str, list[Part]]]]:
    """The groups in two columns of nearly the same height, order kept."""
    cut = min(
        range(len(groups) + 1), key=lambda at: abs(rows_of(groups[:at]) - rows_of(groups[at:]))
    )
    return groups[:cut], groups[cut:]
