"""YAML text to plain data with the line and column of every value, and safe writes.

Only plain data is accepted: mappings, lists, text, whole numbers, decimals, true and false, null.
The parser's events are walked with a stack of our own, so depth is bounded and nothing recurses.
"""

from __future__ import annotations

import os
import re
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from setwright.documents.errors import DocumentError, Fault

Path_ = tuple[str | int, ...]
Place = tuple[int, int]

# A four-day plan has some 4,000 characters; the cap keeps a hostile file from holding a machine up.
MAX_CHARACTERS = 200_000
MAX_DEPTH = 20
MAX_VALUES = 20_000

_INTEGER = re.compile(r"[-+]?(0|[1-9][0-9]{0,14})\Z")
_DECIMAL = re.compile(r"[-+]?(0|[1-9][0-9]{0,14})\.[0-9]{1,400}\Z")
_SURROGATE = re.compile("[\ud800-\udfff]")
_NULLS = frozenset({"", "~", "null", "Null", "NULL"})
_TRUE = frozenset({"true", "True", "TRUE"})
_FALSE = frozenset({"false", "False", "FALSE"})


@dataclass(frozen=True)
class Loaded:
    """Plain data and where each piece of it stands.

    Attributes:
        name: file name for messages.
        data: dict, list, str, int, float, bool or None; keys are always text.
        values: path to the line and column (from 1) where the value begins.
        keys: path to the line and column where the key begins, for values of mappings.
        texts: path to the line and column of the first character of text on one line.
    """

    name: str
    data: Any
    values: Mapping[Path_, Place]
    keys: Mapping[Path_, Place]
    texts: Mapping[Path_, Place]

    def place(self, path: Path_) -> Place | tuple[None, None]:
        """Line and column of a value, or of the nearest thing around it that is there."""
        for end in range(len(path), -1, -1):
            if path[:end] in self.values:
                return self.values[path[:end]]
        return None, None

    def inside(self, path: Path_, offset: int) -> Place | tuple[None, None]:
        """Line and column so many characters into a text; its beginning where it is folded."""
        if path not in self.texts:
            return self.place(path)
        line, column = self.texts[path]
        return line, column + offset

    def key_place(self, path: Path_) -> Place | tuple[None, None]:
        """Line and column of a key, or of the nearest value around it."""
        return self.keys.get(path) or self.place(path)


def dotted(path: Path_) -> str:
    """A path as messages show it: ``sessions.0.name``."""
    return ".".join(str(piece) for piece in path)


def shown(value: Any) -> str:
    """A value as messages show it, kept short."""
    if isinstance(value, dict):
        return "a mapping" if value else "an empty mapping"
    if isinstance(value, list | tuple):
        return "a list" if value else "an empty list"
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "true" if value else "false"
    text = repr(value)
    return text if len(text) <= 80 else text[:77] + "..."


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

    __slots__ = ("keys", "path", "pending", "target")

    def __init__(self, target: Any, path: Path_) -> None:
        self.target = target
        self.path = path
        self.pending: str | None = None
        self.keys: set[str] = set()


class _Builder:
    """Builds plain data out of parser events."""

    def __init__(self, name: str) -> None:
        self.name = name
        self.stack: list[_Open] = []
        self.values: dict[Path_, Place] = {}
        self.keys: dict[Path_, Place] = {}
        self.texts: dict[Path_, Place] = {}
        self.root: Any = None
        self.documents = 0

    def refuse(self, mark: Any, field: Path_, found: str, allowed: str) -> DocumentError:
        fault = Fault(dotted(field), found, allowed, mark.line + 1, mark.column + 1)
        return DocumentError(self.name, (fault,))

    def here(self) -> Path_:
        if not self.stack:
            return ()
        top = self.stack[-1]
        if isinstance(top.target, list):
            return (*top.path, len(top.target))
        return top.path if top.pending is None else (*top.path, top.pending)

    def wants_key(self) -> bool:
        return (
            bool(self.stack)
            and isinstance(self.stack[-1].target, dict)
            and self.stack[-1].pending is None
        )

    def put(self, value: Any, mark: Any) -> None:
        path = self.here()
        if len(self.values) >= MAX_VALUES:
            raise self.refuse(mark, path, "too many values", f"up to {MAX_VALUES} values")
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

    def key(self, text: str, mark: Any) -> None:
        top = self.stack[-1]
        path = (*top.path, text)
        if text in top.target:
            line = self.keys[path][0]
            raise self.refuse(
                mark, path, f"the key {text!r} again (first on line {line})", "each key once"
            )
        self.keys[path] = (mark.line + 1, mark.column + 1)
        top.pending = text

    def start(self, target: Any, mark: Any) -> None:
        path = self.here()
        if self.wants_key():
            raise self.refuse(mark, path, "a mapping or list as a key", "text as a key")
        if len(self.stack) >= MAX_DEPTH:
            raise self.refuse(mark, path, "values nested too deep", f"up to {MAX_DEPTH} levels")
        self.put(target, mark)
        self.stack.append(_Open(target, path))

    def take(self, event: Any) -> None:
        kind = type(event).__name__
        mark = event.start_mark
        if kind == "AliasEvent" or getattr(event, "anchor", None):
            raise self.refuse(
                mark, self.here(), "an anchor or alias (& or *)", "values written out in full"
            )
        if kind in ("ScalarEvent", "MappingStartEvent", "SequenceStartEvent"):
            if getattr(event, "ctag", None):
                raise self.refuse(mark, self.here(), f"the tag {event.ctag}", "values without tags")
            if kind == "ScalarEvent":
                if _SURROGATE.search(event.value):
                    raise self.refuse(mark, self.here(), "half a character", "whole characters")
                if self.wants_key():
                    self.key(event.value, mark)
                else:
                    plain = event.style is None
                    if event.end_mark.line == mark.line:
                        column = mark.column + (1 if plain else 2)
                        self.texts[self.here()] = (mark.line + 1, column)
                    self.put(scalar(event.value) if plain else event.value, mark)
            else:
                self.start({} if kind == "MappingStartEvent" else [], mark)
        elif kind in ("MappingEndEvent", "SequenceEndEvent"):
            self.stack.pop()
        elif kind == "DocumentStartEvent":
            self.documents += 1
            if self.documents > 1:
                raise self.refuse(mark, (), "a second document in the file", "one document a file")


def _whole(name: str, found: str, allowed: str) -> DocumentError:
    return DocumentError(name, (Fault("", found, allowed),))


def read_yaml(text: str, name: str) -> Loaded:
    """Read one YAML document into plain data with positions.

    Args:
        text: the document.
        name: file name for messages.

    Raises:
        DocumentError: on anything that is no plain YAML: bad indentation, tabs, duplicate keys,
            anchors, tags, several documents, too long, too deep.
    """
    if len(text) > MAX_CHARACTERS:
        raise _whole(name, f"{len(text)} characters", f"up to {MAX_CHARACTERS} characters")
    if _SURROGATE.search(text):
        raise _whole(name, "text that is no Unicode", "UTF-8 text")
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    builder = _Builder(name)
    try:
        for event in YAML(typ="safe", pure=True).parse(text.removeprefix("\ufeff")):
            builder.take(event)
    except MarkedYAMLError as error:
        raise DocumentError(name, (_syntax_fault(error),)) from None
    except YAMLError as error:
        raise DocumentError(name, (_character_fault(error, text),)) from None
    except (ValueError, TypeError, LookupError, AssertionError, AttributeError, RecursionError):
        # The parser trips over some malformed directives and escapes instead of naming them.
        raise _whole(name, "text that is no YAML", "a YAML document") from None
    if builder.documents == 0:
        raise _whole(name, "an empty document", "a document with its `setwright:` version")
    return Loaded(name, builder.root, builder.values, builder.keys, builder.texts)


def _syntax_fault(error: Any) -> Fault:
    mark = error.problem_mark or error.context_mark
    problem = " ".join(filter(None, (error.context, error.problem)))
    if "'\\t'" in problem:
        problem, allowed = "a tab", "spaces for indentation"
    else:
        allowed = "YAML: `key: value` lines, lists with `- `, the same indentation for equals"
    line, column = (mark.line + 1, mark.column + 1) if mark is not None else (None, None)
    return Fault("", problem or "text that is no YAML", allowed, line, column)


def _character_fault(error: Any, text: str) -> Fault:
    position = getattr(error, "position", None)
    if not isinstance(position, int):
        return Fault("", "text that is no YAML", "a YAML document")
    before = text[:position]
    line = before.count("\n") + 1
    column = position - (before.rfind("\n") + 1) + 1
    return Fault(
        "", f"the character {text[position : position + 1]!r}", "printable text", line, column
    )


def write_text(path: Path, text: str) -> None:
    """Write a file whole or not at all: a temporary file beside it, then a rename.

    Raises:
        DocumentError: when the file cannot be written.
    """
    try:
        handle, temporary = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    except OSError as error:
        raise _whole(
            str(path), error.strerror or "no place to write", "a folder that can be written"
        ) from None
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        mode = path.stat().st_mode & 0o777 if path.exists() else 0o666 & ~_umask()
        Path(temporary).chmod(mode)
        Path(temporary).replace(path)
    except OSError as error:
        raise _whole(
            str(path), error.strerror or "a failed write", "a file that can be written"
        ) from None
    finally:
        Path(temporary).unlink(missing_ok=True)


def _umask() -> int:
    mask = os.umask(0)
    os.umask(mask)
    return mask
