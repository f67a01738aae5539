"""Append-only files of one JSON object a line, safe against a write cut off at any moment."""

from __future__ import annotations

import codecs
import os
import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from pydantic_core import from_json

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.lock import locked

_ID = re.compile(rb'"id"\s*:\s*"([0-9a-f-]{36})"')


@dataclass(frozen=True, slots=True)
class Line:
    """One line that is not blank: its number from 1, and its bytes without the line end."""

    number: int
    raw: bytes


def read_lines(path: Path) -> tuple[Line, ...]:
    """Lines of a file that are not blank; none when the file is not there.

    Raises:
        DocumentError: when the file cannot be read.
    """
    with _said(path):
        try:
            data = path.read_bytes()
        except FileNotFoundError:
            return ()
    stripped = ((number, raw.strip()) for number, raw in enumerate(data.split(b"\n"), start=1))
    return tuple(Line(number, raw.removeprefix(codecs.BOM_UTF8)) for number, raw in stripped if raw)


def whole(raw: bytes) -> bool:
    """Whether a line was written to its end: False only for the beginning of a JSON object."""
    text = codecs.getincrementaldecoder("utf-8")(errors="replace").decode(raw.strip(b"\0"))
    try:
        from_json(text)
    except ValueError:
        return not _beginning(text)
    return True


def append_lines(path: Path, lines: Sequence[tuple[str, str]]) -> frozenset[str]:
    """Add lines at the end, on the disk when this returns; ids that are there are left out.

    A last line cut off by an earlier, killed write keeps its bytes; the new lines begin afresh.

    Args:
        path: the file; made when it is not there.
        lines: id and JSON text of each.

    Returns:
        Ids that were added.

    Raises:
        DocumentError: when the file cannot be written.
    """
    with _said(path), path.open("a+b") as file, locked(file):
        file.seek(0)
        data = file.read()
        known = _ids(data, frozenset(ident for ident, _ in lines))
        fresh: dict[str, str] = {}
        for ident, text in lines:
            if ident not in known:
                fresh.setdefault(ident, text)
        if fresh:
            start = "\n" if data and not data.endswith(b"\n") else ""
            file.write((start + "".join(f"{text}\n" for text in fresh.values())).encode())
            file.flush()
            os.fsync(file.fileno())
        return frozenset(fresh)


def _ids(data: bytes, wanted: frozenset[str]) -> frozenset[str]:
    """Which ids stand in whole lines."""
    if len(wanted) == 1:
        (one,) = wanted
        if one.encode() not in data:
            return frozenset()
    found = set()
    for match in _ID.finditer(data):
        ident = match[1].decode()
        if ident in wanted and ident not in found:
            start = data.rfind(b"\n", 0, match.start()) + 1
            end = data.find(b"\n", start)
            if whole(data[start : end if end >= 0 else len(data)]):
                found.add(ident)
    return frozenset(found)


def _beginning(text: str) -> bool:
    if not text.lstrip().startswith("{"):
        return not text.strip()
    try:
        from_json(text, allow_partial=True)
    except ValueError:
        return False
    return True


@contextmanager
def _said(path: Path) -> Iterator[None]:
    """Faults of the file system as messages."""
    try:
        yield
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        fault = Fault("", reason, "a file that can be read and added to")
        raise DocumentError(str(path), (fault,)) from error
