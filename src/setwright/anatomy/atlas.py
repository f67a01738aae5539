"""The atlas: every part and muscle, and what a coach's word for them means."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import get_close_matches
from functools import cache
from types import MappingProxyType
from typing import Literal

from pydantic import Field

from setwright.anatomy.model import Muscle, Part
from setwright.documents.base import Document
from setwright.documents.knowledge import load_folder


class AnatomyFile(Document):
    """One file of the atlas: the muscles and parts of one region."""

    setwright: Literal["anatomy/1"]
    muscles: tuple[Muscle, ...] = Field(min_length=1)
    parts: tuple[Part, ...] = Field(min_length=1)


@cache
def _files() -> tuple[AnatomyFile, ...]:
    return load_folder("setwright.anatomy", "parts", AnatomyFile)


@cache
def parts() -> tuple[Part, ...]:
    """Every part, in the order of every array over the parts."""
    return tuple(part for file in _files() for part in file.parts)


@cache
def muscles() -> Mapping[str, Muscle]:
    """Every muscle by id."""
    return MappingProxyType({muscle.id: muscle for file in _files() for muscle in file.muscles})


@cache
def index() -> Mapping[str, int]:
    """Position of each part in every array over the parts."""
    return MappingProxyType({part.id: position for position, part in enumerate(parts())})


def part(ident: str) -> Part:
    """The part of an id.

    Raises:
        KeyError: when there is no such part.
    """
    return parts()[index()[ident]]


def plain(words: str) -> str:
    """Words without case, hyphens, commas and double spaces, for comparison."""
    return " ".join(words.lower().replace("-", " ").replace("_", " ").replace(",", " ").split())


@cache
def vocabulary() -> Mapping[str, tuple[str, ...]]:
    """Every word a coach may use, plain, with the ids of the parts it means."""
    meant: dict[str, set[str]] = {}

    def teach(words: Iterable[str], ids: Iterable[str]) -> None:
        found = set(ids)
        for word in words:
            meant.setdefault(plain(word), set()).update(found)

    of_muscle: dict[str, list[str]] = {}
    for one in parts():
        teach((one.id, one.name, *one.synonyms), [one.id])
        of_muscle.setdefault(one.muscle, []).append(one.id)
    for muscle in muscles().values():
        teach(
            (muscle.id, muscle.name, *muscle.synonyms, *muscle.groups), of_muscle.get(muscle.id, ())
        )
    order = index()
    return MappingProxyType(
        {word: tuple(sorted(ids, key=order.__getitem__)) for word, ids in meant.items()}
    )


def resolve(words: str) -> tuple[str, ...]:
    """The ids of the parts a word means, in atlas order.

    Args:
        words: a part, a muscle or a group as a coach writes it; case and hyphens do not matter.

    Raises:
        KeyError: when nothing is called that; the message names the nearest words.
    """
    known = vocabulary()
    wanted = plain(words)
    for form in (wanted, wanted.removesuffix("s"), wanted + "s"):
        if form in known:
            return known[form]
    near = get_close_matches(wanted, known, n=3, cutoff=0.6)
    hint = f"; near: {', '.join(near)}" if near else ""
    raise KeyError(f"no part, muscle or group is called {words!r}{hint}")
