"""What the commands share: input from a file or stdin, output as text or JSON."""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable, Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import Any, TypeVar

import click

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.plain_data import plain

F = TypeVar("F", bound=Callable[..., Any])
MAX_BYTES = 2_000_000


def document_argument(name: str) -> Callable[[F], F]:
    """A required document: a path, or ``-`` for standard input."""
    return click.argument(name, metavar=name.upper(), type=click.Path(allow_dash=True))


def json_option(command: F) -> F:
    """The switch for machines."""
    return click.option("--json", "as_json", is_flag=True, help="Print JSON for machines.")(command)


def intake_option(command: F) -> F:
    """The person's intake beside a plan."""
    return click.option(
        "--intake",
        "intake_path",
        type=click.Path(allow_dash=True),
        metavar="INTAKE.yaml",
        help="The person's aims and limits.",
    )(command)


def read_text(path: str) -> tuple[str, str]:
    """Text and name of a document.

    Raises:
        DocumentError: when the file cannot be read, is no UTF-8 text or is too large.
    """
    name = "standard input" if path == "-" else path
    try:
        raw = sys.stdin.buffer.read(MAX_BYTES + 1) if path == "-" else Path(path).read_bytes()
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise DocumentError(name, (Fault("", reason.lower(), "a readable file, or -"),)) from error
    if len(raw) > MAX_BYTES:
        fault = Fault("", f"{len(raw):,} bytes or more", f"at most {MAX_BYTES:,} bytes")
        raise DocumentError(name, (fault,))
    try:
        return raw.decode("utf-8-sig"), name
    except UnicodeDecodeError as error:
        fault = Fault("", f"a byte that is no text at position {error.start}", "UTF-8 text")
        raise DocumentError(name, (fault,)) from error


def emit_json(value: Any) -> None:
    """Print a value as JSON."""
    click.echo(json.dumps(plain(value), indent=2, ensure_ascii=False, allow_nan=False))


def wants_colour() -> bool:
    """Whether the terminal may be given emphasis."""
    return sys.stdout.isatty() and "NO_COLOR" not in os.environ


def now() -> datetime:
    """This moment, or the one that SOURCE_DATE_EPOCH gives for repeatable files."""
    fixed = os.environ.get("SOURCE_DATE_EPOCH", "")
    return datetime.fromtimestamp(int(fixed), UTC) if fixed.isdigit() else datetime.now(UTC)


def picture_option(words: str) -> Callable[[F], F]:
    """The switch that also draws."""
    return click.option(
        "--picture",
        type=click.Path(dir_okay=False, path_type=Path),
        metavar="FILE",
        help=f"{words}; .svg or .png.",
    )


def without_font(letters: Sequence[str]) -> str:
    """What to say of letters that a PDF cannot show.

    Args:
        letters: each once, at least one.
    """
    return (
        f"no font on this machine has {' '.join(letters)}; the PDF shows [?] instead, the other "
        "files hold them. Debian's fonts-noto-cjk has Chinese, Japanese and Korean, "
        "fonts-noto-core most other scripts."
    )
