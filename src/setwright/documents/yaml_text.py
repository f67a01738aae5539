"""Plain data as YAML text that reads back to the same data."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from typing import Any

from setwright.documents.yaml_build import scalar

# Text that needs no quotes in YAML: begins with a letter, holds none of YAML's own signs.
_PLAIN = re.compile(r"[A-Za-zÀ-ÖØ-öø-ÿ][\w ,./()+×%°'&-]*\Z")


def plain_number(value: float) -> str:
    """A number without exponent or needless zeros, exact when read back."""
    text = format(Decimal(repr(float(value) + 0.0)), "f")
    return text.rstrip("0").rstrip(".") if "." in text else text


def quoted(text: str) -> str:
    """Text as a YAML scalar that reads back as the same text."""
    plain = (
        _PLAIN.match(text)
        and not text.endswith(" ")
        and isinstance(scalar(text), str)
        and text.isprintable()
    )
    return text if plain else _in_quotes(text)


def _in_quotes(text: str) -> str:
    return "".join(
        char if char.isprintable() else _escaped(char)
        for char in json.dumps(text, ensure_ascii=False)
    )


def _escaped(char: str) -> str:
    return f"\\u{ord(char):04x}" if ord(char) < 0x10000 else f"\\U{ord(char):08x}"


def scalar_text(value: str | int | float | bool | None) -> str:
    """One value as YAML."""
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return quoted(value)
    return plain_number(value) if isinstance(value, float) else str(value)


def block(data: Mapping[str, Any], indent: int = 0) -> Iterator[str]:
    """The lines of a mapping: mappings and lists of mappings as blocks, other lists inline."""
    margin = " " * indent
    for key, value in data.items():
        if isinstance(value, Mapping) and value:
            yield f"{margin}{quoted(key)}:"
            yield from block(value, indent + 2)
        elif isinstance(value, list | tuple) and value and isinstance(value[0], Mapping):
            yield f"{margin}{quoted(key)}:"
            for item in value:
                yield from _member(item, indent + 2)
        else:
            yield f"{margin}{quoted(key)}: {_inline(value)}"


def _member(item: Mapping[str, Any], indent: int) -> Iterator[str]:
    for at, line in enumerate(block(item, indent + 2)):
        yield line if at else f"{' ' * indent}- {line[indent + 2 :]}"


def _inline(value: Any) -> str:
    if isinstance(value, list | tuple):
        return f"[{', '.join(_flow(item) for item in value)}]"
    return "{}" if isinstance(value, Mapping) else scalar_text(value)


def _flow(value: Any) -> str:
    """A member of an inline list, where a comma ends a plain scalar."""
    text = scalar_text(value)
    return _in_quotes(value) if isinstance(value, str) and "," in text else text
