"""A movement a coach declares in a file: its name, and its fields or those it changes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Any, Final, Literal, TypeVar

import numpy as np
from pydantic import Field

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.validation import fault_at, validate, versioned
from setwright.documents.yaml_build import Path_
from setwright.documents.yaml_io import Loaded, shown
from setwright.exercises.movements import LIKE, MERGED, changed, movement_ids
from setwright.exercises.names import match
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.joint_ranges import joint_ranges
from setwright.mechanics.movement import Movement, Posture

VERSION: Final = "movement/1"
POSTURES: Final = ("stretched", "shortened", "hold")
T = TypeVar("T")


class MovementDocument(Movement):
    """A movement with the name its coach gives it."""

    setwright: Literal["movement/1"]
    name: str = Field(min_length=1, max_length=80)


@dataclass(frozen=True)
class Declared:
    """A movement as a coach declared it.

    Attributes:
        name: what the coach calls it.
        movement: the movement in full.
        like: id of the exercise it changes, or None.
        loaded: the document, for the places of faults found later.
    """

    name: str
    movement: Movement
    like: str | None
    loaded: Loaded


def read_movement(text: str, name: str) -> Declared:
    """Read a movement a coach declares.

    Args:
        text: the document.
        name: file name for messages.

    Raises:
        DocumentError: with every fault found, each with line and column.
    """
    loaded = versioned(text, name, VERSION)
    data = dict(loaded.data)
    like = _like(loaded, data.get(LIKE)) if LIKE in data else None
    if like is not None:
        _refuse_no_mapping(loaded, data)
        data = changed({**data, LIKE: like})
    found = validate(MovementDocument, data, loaded)
    _refuse_joints(loaded, found)
    return Declared(found.name, found, like, loaded)


def placed(declared: Declared, do: Callable[[], T]) -> T:
    """Do something with a declared movement; a posture no body can hold is a fault of the document.

    Raises:
        DocumentError: naming the field, its line, what was found and what is allowed.
    """
    try:
        return do()
    except PostureError as error:
        path = _place_of(declared.loaded, error.field)
        named = error.found if path[-1] == error.field else f"{error.field}, {error.found}"
        fault = fault_at(declared.loaded, path, named, error.allowed)
    raise DocumentError(declared.loaded.name, (fault,))


def _like(loaded: Loaded, words: Any) -> str:
    """The movement meant; by its name, or by that of an exercise that has one."""
    if isinstance(words, str):
        if words in movement_ids():
            return words
        found = match(words)
        if found.sure in movement_ids():
            return str(found.sure)
        near = [one for one, _ in found.candidates if one in movement_ids()]
        near = near or get_close_matches(words, movement_ids(), n=3, cutoff=0.0)
        allowed = f"an exercise whose movement is declared; near: {', '.join(near)}"
    else:
        allowed = "the name of an exercise"
    raise DocumentError(loaded.name, (fault_at(loaded, (LIKE,), shown(words), allowed),))


def _refuse_no_mapping(loaded: Loaded, data: dict[str, Any]) -> None:
    faults: list[Fault] = [
        fault_at(loaded, (name,), shown(data[name]), "a mapping of `angle: degrees`")
        for name in MERGED
        if name in data and not isinstance(data[name], dict)
    ]
    if faults:
        raise DocumentError(loaded.name, tuple(faults))


def _refuse_joints(loaded: Loaded, movement: Movement) -> None:
    """Refuse angles beyond what is known of the muscles; a balanced angle is only a first guess."""
    ranges = joint_ranges(dict.fromkeys((*movement.ends, *movement.holds)))
    postures: list[tuple[Path_, Posture]] = [(("hold",), movement.hold)]
    postures += [(("stretched",), movement.stretched), (("shortened",), movement.shortened)]
    postures += [(("between", k, "posture"), one.posture) for k, one in enumerate(movement.between)]
    faults = [
        fault_at(loaded, (*path, angle), f"{degrees:g}", f"{low:g} to {high:g} degrees")
        for path, posture in postures
        for angle, degrees in posture.items()
        for low, high in (ranges.get(angle, (-np.inf, np.inf)),)
        if angle != movement.balance and not low <= degrees <= high
    ]
    if faults:
        raise DocumentError(loaded.name, tuple(faults))


def _place_of(loaded: Loaded, field: str) -> Path_:
    """Where a field, or an angle of any posture, stands in the document.

    What stands nowhere in it was taken over or is 0; then the fault lies with the postures it has.
    """
    if field in loaded.data:
        return (field,)
    postures = [name for name in POSTURES if isinstance(loaded.data.get(name), dict)]
    for name in postures:
        if field in loaded.data[name]:
            return (name, field)
    return (postures[0],) if postures else (LIKE,)
