"""Plain data to a validated model, with every fault placed in the author's file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, TypeVar

from pydantic import BaseModel, ValidationError

from setwright.documents.base import UUID_PATTERN
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.yaml_build import Path_, dotted
from setwright.documents.yaml_io import Loaded, read_yaml, shown

M = TypeVar("M", bound=BaseModel)


@dataclass(frozen=True)
class Spot:
    """Where a spelled-out value stands in the author's file.

    Attributes:
        path: the author's value.
        offset: characters into it, when it is a text with several values in it.
        own_name: whether messages call the value by the author's path, not by the model's.
    """

    path: Path_
    offset: int = 0
    own_name: bool = False


Spots = Mapping[Path_, Spot]


def validate(model: type[M], data: Any, loaded: Loaded, spots: Spots | None = None) -> M:
    """Check data against a model strictly: no text for numbers, no true for 1.

    Args:
        model: the document's model.
        data: the document, its shortcuts already spelled out.
        loaded: the document as read, for positions.
        spots: where spelled-out values stand in the author's file.

    Raises:
        DocumentError: with every fault found.
    """
    try:
        return model.model_validate(_tuples(data), strict=True)
    except ValidationError as error:
        faults = tuple(
            _fault(item, data, loaded, spots or {}) for item in error.errors() if not _follows(item)
        )
        raise DocumentError(loaded.name, faults) from None


def versioned(text: str, name: str, version: str) -> Loaded:
    """Read a YAML document of a version.

    Raises:
        DocumentError: when it cannot be read, is no mapping or of another version.
    """
    loaded = read_yaml(text, name)
    data: Any = loaded.data
    if not isinstance(data, dict):
        fault = fault_at(
            loaded, (), "no mapping of `key: value`", f"`setwright: {version}` and more"
        )
        raise DocumentError(name, (fault,))
    if data.get("setwright") != version:
        found = repr(data["setwright"]) if "setwright" in data else "nothing"
        raise DocumentError(name, (fault_at(loaded, ("setwright",), found, f"{version!r}"),))
    return loaded


def explained(error: ValidationError) -> tuple[tuple[str, str, str], ...]:
    """Field, what was found and what is allowed, for every fault that pydantic found."""
    rows = []
    for item in error.errors():
        missing = item["type"] in ("missing", "union_tag_not_found")
        found = "nothing" if missing else shown(item["input"])
        field = item["loc"]
        if item["type"].startswith("union_tag"):
            tag = str(item["ctx"]["discriminator"]).strip("'")
            field = (*field, tag)
            found = "nothing" if missing else shown(item["ctx"]["tag"])
        rows.append((dotted(field), found, _allowed(item["type"], item)))
    return tuple(rows)


def fault_at(
    loaded: Loaded, path: Path_, found: str, allowed: str, spots: Spots | None = None
) -> Fault:
    """A fault at a value of the document, named by its path in the model."""
    for end in range(len(path), 0, -1):
        spot = (spots or {}).get(path[:end])
        if spot is not None:
            written = spot.path + path[end:]
            inside = end == len(path) or written not in loaded.values
            place = loaded.inside(spot.path, spot.offset) if inside else loaded.place(written)
            return Fault(dotted(written if spot.own_name else path), found, allowed, *place)
    return Fault(dotted(path), found, allowed, *loaded.place(path))


def _follows(item: Any) -> bool:
    """Whether a fault only follows from others: a list too short because its entries failed."""
    enough = item.get("ctx", {}).get("min_length", 0)
    return bool(item["type"] == "too_short" and len(item["input"]) >= enough)


def _tuples(value: Any) -> Any:
    """Lists as tuples, which strict models ask for."""
    if isinstance(value, list | tuple):
        return tuple(_tuples(item) for item in value)
    if isinstance(value, dict):
        return {key: _tuples(item) for key, item in value.items()}
    return value


def _path_in(data: Any, location: tuple[str | int, ...]) -> Path_:
    """The part of a pydantic location that is a path in the data."""
    path: list[str | int] = []
    for piece in location:
        inside = (isinstance(data, dict) and piece in data) or (
            isinstance(data, list | tuple) and isinstance(piece, int) and piece < len(data)
        )
        if inside:
            data = data[piece]
        elif not isinstance(data, dict):
            break
        path.append(piece)
        if not inside:
            break
    return tuple(path)


def _fault(item: Any, data: Any, loaded: Loaded, spots: Spots) -> Fault:
    path = _path_in(data, item["loc"])
    kind = item["type"]
    allowed = _allowed(kind, item)
    if kind == "extra_forbidden":
        found = f"the unknown field {path[-1]!r}"
        return Fault(dotted(path), found, allowed, *loaded.key_place(path))
    found = "nothing" if kind == "missing" else shown(item["input"])
    return fault_at(loaded, path, found, allowed, spots)


_BOUNDS = {
    "greater_than_equal": ("ge", "at least"),
    "greater_than": ("gt", "more than"),
    "less_than_equal": ("le", "at most"),
    "less_than": ("lt", "less than"),
}
# Patterns that have a name.
_FORMS = {UUID_PATTERN: "an id such as 8fa3c1d2-1f6b-4c0e-9c39-3a4a6a3c2f10"}
_KINDS = {
    "int_type": "a whole number",
    "float_type": "a number",
    "finite_number": "a finite number",
    "bool_type": "true or false",
    "string_type": "text (in quotes when it looks like a number)",
    "tuple_type": "a list",
    "dict_type": "a mapping of `key: value`",
    "model_type": "a mapping of `key: value`",
    "missing": "this field must be given",
    "extra_forbidden": "no such field here",
    "int_from_float": "a whole number",
    "union_tag_not_found": "this field must be given",
    "datetime_from_date_parsing": "a time such as 2026-09-07T18:05:00",
    "datetime_parsing": "a time such as 2026-09-07T18:05:00",
    "datetime_type": "a time such as 2026-09-07T18:05:00",
}


def _allowed(kind: str, item: Any) -> str:
    context = item.get("ctx", {})
    if kind in _BOUNDS:
        key, words = _BOUNDS[kind]
        return f"{words} {context[key]}"
    if kind == "union_tag_invalid":
        return str(context["expected_tags"])
    if kind == "literal_error":
        return str(context["expected"])
    if kind == "too_long":
        return f"at most {context['max_length']} entries"
    if kind == "too_short":
        return f"at least {context['min_length']} entries"
    if kind == "string_too_long":
        return f"at most {context['max_length']} characters"
    if kind == "string_too_short":
        return f"at least {context['min_length']} characters"
    if kind == "string_pattern_mismatch":
        return _FORMS.get(context["pattern"], f"text of the form {context['pattern']}")
    return _KINDS.get(kind, str(item["msg"]).removeprefix("Value error, "))
