"""Parser events built into plain data, with the line and column of every value.

The events are walked with a stack of our own, so depth is bounded and nothing recurses.
"""

from __future__ import annotations

import re
from typing import Any

from setwright.documents.errors import DocumentError, Fault

Path_ = tuple[str | int, ...]
Place = tuple[int, int]

MAX_DEPTH = 20
MAX_VALUES = 20_000

_INTEGER = re.compile(r"[-+]?(0|[1-9][0-9]{0,14})\Z")
_DECIMAL = re.compile(r"[-+]?(0|[1-9][0-9]{0,14})\.[0-9]{1,400}\Z")
SURROGATE = re.compile("[\ud800-\udfff]")
_NULLS = frozenset({"", "~", "null", "Null", "NULL"})
_TRUE = frozenset({"true", "True", "TRUE"})
_FALSE = frozenset({"false", "False", "FALSE"})


def dotted(path: Path_) -> str:
    """A path as messages show it: ``sessions.0.name``."""
    return ".".join(str(piece) for piece in path)


def scalar(text: str) -> str | int | float | bool | None:
    """The value of an unquoted scalar.

    Numbers are the plain decimal forms alone: no octal or hexadecimal, no exponent, no infinity,
    no not-a-number, no digit groups. Whatever is none of these stays text.
    """
    if text in _NULLS:
        return None
    if text in _TRUE:
        return True
    if text in _FALSE:
        return False
    if _INTEGER.match(text):
        return int(text)
    if _DECIMAL.match(text):
        return float(text)
    return text


class _Open:
    """A mapping or list that is still being read."""

    __slots__ = ("path", "pending", "target")

    def __init__(self, target: Any, path: Path_) -> None:
        self.target = target
        self.path = path
        self.pending: str | None = None


class Builder:
    """Builds plain data out of parser events.

    Attributes:
        root: the data of the document.
        documents: how many documents have begun.
        values: path to the place of every value.
        keys: path to the place of every key.
        texts: path to the first character of every text on one line.
    """

    def __init__(self, name: str) -> None:
        self.name = name
        self.stack: list[_Open] = []
        self.values: dict[Path_, Place] = {}
        self.keys: dict[Path_, Place] = {}
        self.texts: dict[Path_, Place] = {}
        self.root: Any = None
        self.documents = 0

    def _refuse(self, mark: Any, field: Path_, found: str, allowed: str) -> DocumentError:
        fault = Fault(dotted(field), found, allowed, mark.line + 1, mark.column + 1)
        return DocumentError(self.name, (fault,))

    def _here(self) -> Path_:
        if not self.stack:
            return ()
        top = self.stack[-1]
        if isinstance(top.target, list):
            return (*top.path, len(top.target))
        return top.path if top.pending is None else (*top.path, top.pending)

    def _wants_key(self) -> bool:
        return (
            bool(self.stack)
            and isinstance(self.stack[-1].target, dict)
            and self.stack[-1].pending is None
        )

    def _put(self, value: Any, mark: Any) -> None:
        path = self._here()
        if len(self.values) >= MAX_VALUES:
            raise self._refuse(mark, path, "too many values", f"up to {MAX_VALUES} values")
        self.values[path] = (mark.line + 1, mark.column + 1)
        if not self.stack:
            self.root = value
            return
        top = self.stack[-1]
        if isinstance(top.target, list):
            top.target.append(value)
        else:
            top.target[top.pending] = value
            top.pending = None

    def _key(self, text: str, mark: Any) -> None:
        top = self.stack[-1]
        path = (*top.path, text)
        if text in top.target:
            line = self.keys[path][0]
            raise self._refuse(
                mark, path, f"the key {text!r} again (first on line {line})", "each key once"
            )
        self.keys[path] = (mark.line + 1, mark.column + 1)
        top.pending = text

    def _start(self, target: Any, mark: Any) -> None:
        path = self._here()
        if self._wants_key():
            raise self._refuse(mark, path, "a mapping or list as a key", "text as a key")
        if len(self.stack) >= MAX_DEPTH:
            raise self._refuse(mark, path, "values nested too deep", f"up to {MAX_DEPTH} levels")
        self._put(target, mark)
        self.stack.append(_Open(target, path))

    def take(self, event: Any) -> None:
        """Take in the next event.

        Raises:
            DocumentError: on anything but plain data.
        """
        kind = type(event).__name__
        mark = event.start_mark
        if kind == "AliasEvent" or getattr(event, "anchor", None):
            raise self._refuse(
                mark, self._here(), "an anchor or alias (& or *)", "values written out in full"
            )
        if kind in ("ScalarEvent", "MappingStartEvent", "SequenceStartEvent"):
            if getattr(event, "ctag", None):
                raise self._refuse(
                    mark, self._here(), f"the tag {event.ctag}", "values without tags"
                )
            if kind == "ScalarEvent":
                if SURROGATE.search(event.value):
                    raise self._refuse(mark, self._here(), "half a character", "whole characters")
                if self._wants_key():
                    self._key(event.value, mark)
                else:
                    plain = event.style is None
                    if event.end_mark.line == mark.line:
                        column = mark.column + (1 if plain else 2)
                        self.texts[self._here()] = (mark.line + 1, column)
                    self._put(scalar(event.value) if plain else event.value, mark)
            else:
                self._start({} if kind == "MappingStartEvent" else [], mark)
        elif kind in ("MappingEndEvent", "SequenceEndEvent"):
            self.stack.pop()
        elif kind == "DocumentStartEvent":
            self.documents += 1
            if self.documents > 1:
                raise self._refuse(mark, (), "a second document in the file", "one document a file")
