"""The movement of every exercise, read from ``movements/*.yaml``.

A movement is declared whole, or as another one with changes: ``like: back-squat`` takes over every
field that is not named; named postures are merged angle by angle (``null`` drops an angle), all
other fields are replaced.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Any, Final, Literal

from setwright.documents.base import Document
from setwright.documents.knowledge import load_folder
from setwright.mechanics.movement import Movement

LIKE: Final = "like"
MERGED: Final = ("hold", "stretched", "shortened")


class MovementFile(Document):
    """One file of movements: by exercise id, or by the name of a trial's movement."""

    setwright: Literal["movements/1"]
    movements: dict[str, dict[str, Any]]


@cache
def _declared() -> Mapping[str, dict[str, Any]]:
    files = load_folder("setwright.exercises", "movements", MovementFile)
    found: dict[str, dict[str, Any]] = {}
    for file in files:
        for name, movement in file.movements.items():
            if name in found:
                raise ValueError(f"the movement {name!r} is declared twice")
            found[name] = movement
    return MappingProxyType(found)


def movement_ids() -> tuple[str, ...]:
    """Every name a movement is declared under."""
    return tuple(_declared())


@cache
def movement(name: str) -> Movement:
    """The movement of an exercise.

    Raises:
        KeyError: when there is none of that name, or it is like one that is not there.
    """
    return Movement.model_validate(whole(name))


def whole(name: str) -> dict[str, Any]:
    """The fields of a movement with what it takes over from another."""
    declared = _declared()
    if name not in declared:
        raise KeyError(f"no movement is declared for {name!r}")
    return changed(declared[name])


def changed(fields: Mapping[str, Any]) -> dict[str, Any]:
    """Fields of a movement that may be ``like`` another one, in full."""
    fields = dict(fields)
    base = whole(fields.pop(LIKE)) if LIKE in fields else {}
    for name, value in fields.items():
        if name in MERGED and name in base:
            merged = {**base[name], **value}
            base[name] = {
                angle: degrees for angle, degrees in merged.items() if degrees is not None
            }
        else:
            base[name] = value
    return base
