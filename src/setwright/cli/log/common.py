"""What the log's commands share: the folder, its unit, the time."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.plan.intake import Intake
    from setwright.plan.log import Log

F = TypeVar("F", bound=Callable[..., Any])
TIME_FORMS = "2026-09-07, 2026-09-07T18:05 or 18:05"


def folder_argument(command: F) -> F:
    """The client's folder."""
    return click.argument("folder", metavar="CLIENT_FOLDER", type=click.Path(path_type=Path))(
        command
    )


def opened(folder: Path) -> tuple[Intake, Log]:
    """Intake and log of a client; what the log's reader has to say goes to standard error.

    Raises:
        DocumentError: when the folder, its intake or its log is at fault.
    """
    from setwright.plan.client_folder import LOG, read_folder_intake
    from setwright.plan.log_store import read_log

    intake = read_folder_intake(folder)
    log = read_log(folder / LOG)
    for note in log.notes:
        click.echo(f"note: {note}", err=True)
    return intake, log


def moment(words: str | None, now: datetime) -> datetime:
    """A time as typed; a clock time alone is today's.

    Raises:
        DocumentError: when it is no time.
    """
    if words is None:
        return now
    try:
        if len(words) <= 5 and ":" in words:
            clock = datetime.strptime(words, "%H:%M")
            return now.replace(hour=clock.hour, minute=clock.minute, second=0, microsecond=0)
        return datetime.fromisoformat(words).replace(tzinfo=None)
    except ValueError:
        raise DocumentError("--at", (Fault("", repr(words), TIME_FORMS),)) from None


def day_option(name: str, words: str) -> Callable[[F], F]:
    """An option that takes a date."""

    def read(ctx: click.Context, option: click.Parameter, given: str | None) -> date | None:
        if given is None:
            return None
        try:
            return date.fromisoformat(given)
        except ValueError:
            fault = Fault("", repr(given), "a date such as 2026-09-07")
            raise DocumentError(name, (fault,)) from None

    return click.option(name, metavar="DATE", callback=read, help=words)
