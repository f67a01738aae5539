"""The catalogue: every exercise, its profile, and the arrays over exercises and parts."""

from __future__ import annotations

from collections.abc import Mapping
from difflib import get_close_matches
from functools import cache
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import parts
from setwright.documents.knowledge import load_folder
from setwright.exercises.model import Exercise, PatternFile
from setwright.exercises.profile import Profile
from setwright.exercises.profile_cache import computed
from setwright.exercises.shares import Worked, profile_of, work


@cache
def exercises() -> tuple[Exercise, ...]:
    """Every exercise, in the order of every array over the exercises."""
    files = load_folder("setwright.exercises", "patterns", PatternFile)
    return tuple(exercise for file in files for exercise in file.exercises)


@cache
def ids() -> tuple[str, ...]:
    """Ids of the exercises in catalogue order."""
    return tuple(exercise.id for exercise in exercises())


@cache
def _rows() -> Mapping[str, int]:
    return MappingProxyType({ident: row for row, ident in enumerate(ids())})


def row(ident: str) -> int:
    """Position of an exercise in every array over the exercises.

    Raises:
        KeyError: when there is no such exercise.
    """
    try:
        return _rows()[ident]
    except KeyError:
        near = get_close_matches(ident, ids(), n=3)
        hint = f"; near: {', '.join(near)}" if near else ""
        raise KeyError(f"no exercise has the id {ident!r}{hint}") from None


def exercise(ident: str) -> Exercise:
    """The exercise of an id.

    Raises:
        KeyError: when there is no such exercise.
    """
    return exercises()[row(ident)]


@cache
def _worked() -> tuple[Worked, ...]:
    return tuple(work(one, computed(one.id), parts()) for one in exercises())


@cache
def profile(ident: str) -> Profile:
    """What an exercise trains.

    Raises:
        KeyError: when there is no such exercise.
    """
    position = row(ident)
    return profile_of(exercises()[position], computed(ident), parts(), _worked()[position])


@cache
def shares() -> NDArray[np.float64]:
    """Shares of every exercise over the parts, shape (E, P), read only."""
    return _fixed([one.shares for one in _worked()])


@cache
def share_spread() -> NDArray[np.float64]:
    """Standard deviations of the shares, shape (E, P), read only."""
    return _fixed([one.spread for one in _worked()])


@cache
def stretch() -> NDArray[np.float64]:
    """Loaded stretch, 0 to 1, of every exercise over the parts, shape (E, P), read only."""
    return _fixed([one.stretch for one in _worked()])


def _fixed(rows: list[NDArray[np.float64]]) -> NDArray[np.float64]:
    table = np.array(rows)
    table.flags.writeable = False
    return table
