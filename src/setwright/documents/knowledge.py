"""Folders of knowledge files, read fast through a compiled copy.

A folder holds YAML documents of one model and, beside them, ``compiled.json``: the same documents
and the sha256 of the files they came from. A copy that is missing or stale is passed over and the
YAML is read instead, so the YAML always has the last word.
"""

from __future__ import annotations

import hashlib
from importlib import import_module
from pathlib import Path
from typing import TypeVar

from pydantic import TypeAdapter, ValidationError

from setwright.documents.base import Document
from setwright.documents.errors import DocumentError, Fault

D = TypeVar("D", bound=Document)
COMPILED = "compiled.json"
_FOOTER = "\n}\n"


def folder_of(package: str, folder: str) -> Path:
    """The folder of a package that holds knowledge files."""
    origin = import_module(package).__file__
    if origin is None:
        raise ModuleNotFoundError(f"{package} has no folder")
    return Path(origin).parent / folder


def digest_of(folder: Path) -> str:
    """The sha256 over the names and bytes of a folder's YAML files, as hexadecimal text."""
    seen = hashlib.sha256()
    for path in sorted(folder.glob("*.yaml")):
        seen.update(path.name.encode() + b"\0")
        seen.update(path.read_bytes() + b"\0")
    return seen.hexdigest()


def read_folder(folder: Path, model: type[D]) -> tuple[D, ...]:
    """Every YAML document of a folder, in the order of the file names.

    Raises:
        DocumentError: when a file is no document of the model.
    """
    # Our own files may use anchors, which the reader of user documents refuses.
    from ruamel.yaml import YAML

    reader = YAML(typ="safe", pure=True)
    documents = []
    for path in sorted(folder.glob("*.yaml")):
        try:
            documents.append(model.model_validate(reader.load(path)))
        except ValidationError as error:
            faults = (
                Fault(".".join(map(str, one["loc"])), repr(one["input"])[:80], one["msg"])
                for one in error.errors()
            )
            raise DocumentError(path.name, tuple(faults)) from None
    return tuple(documents)


def compile_folder(package: str, folder: str, model: type[Document]) -> Path:
    """Write the compiled copy of a folder.

    Raises:
        DocumentError: when a file is no document of the model, or cannot be written.
    """
    from setwright.documents.yaml_io import write_text

    place = folder_of(package, folder)
    documents = TypeAdapter(tuple[model, ...]).dump_json(  # type: ignore[valid-type]
        read_folder(place, model), exclude_unset=True
    )
    path = place / COMPILED
    write_text(path, _header(place) + documents.decode() + _FOOTER)
    return path


def load_folder(package: str, folder: str, model: type[D]) -> tuple[D, ...]:
    """Every document of a knowledge folder.

    Args:
        package: the package the folder lies in, for example ``setwright.exercises``.
        folder: the folder's name.
        model: the model of its documents.

    Returns:
        The documents in the order of the file names.

    Raises:
        DocumentError: when the YAML has to be read and is no document of the model.
    """
    place = folder_of(package, folder)
    copy = place / COMPILED
    if copy.is_file():
        text = copy.read_text(encoding="utf-8")
        header = _header(place)
        if text.startswith(header):
            documents = text.removeprefix(header).removesuffix(_FOOTER)
            found: tuple[D, ...] = TypeAdapter(tuple[model, ...]).validate_json(  # type: ignore[valid-type]
                documents
            )
            return found
    return read_folder(place, model)


def _header(folder: Path) -> str:
    # The digest stands first, so that a stale copy is known without parsing it.
    return f'{{"sha256": "{digest_of(folder)}", "documents":\n'
