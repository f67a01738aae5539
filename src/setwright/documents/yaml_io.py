"""YAML text to plain data with the line and column of every value, and safe writes.

Only plain data is accepted: mappings, lists, text, whole numbers, decimals, true and false, null.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.whole_file import write_bytes
from setwright.documents.yaml_build import SURROGATE, Builder, Path_, Place

# A four-day plan has some 4,000 characters; the cap keeps a hostile file from holding a machine up.
MAX_CHARACTERS = 200_000


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
    if SURROGATE.search(text):
        raise _whole(name, "text that is no Unicode", "UTF-8 text")
    from ruamel.yaml import YAML
    from ruamel.yaml.error import MarkedYAMLError, YAMLError

    builder = Builder(name)
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
    """Write a text file whole or not at all.

    Raises:
        DocumentError: when the file cannot be written.
    """
    write_bytes(path, text.encode("utf-8"))
