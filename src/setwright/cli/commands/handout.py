"""`setwright handout`: what a client takes to the gym floor, and what the coach keeps."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.cli.common import now, read_text, without_font
from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.handout.export import Wishes, Written

HELP = """Print a plan: PDF, calendar, web page and workbook.

Each plan gives files named after it in the folder DIR. A client's handout has one page a session
with boxes to write in; a coach's adds the audit, the picture of the week and what each part gets.
Several plans are done one after the other; one that fails leaves the others done, is reported, and
makes the exit status 2.

\b
Examples:
  setwright handout plan.yaml -o handouts
  setwright handout plan.yaml --intake intake.yaml --for coach --paper letter -o handouts
  setwright handout clients/*.yaml --start 2026-03-02 --weeks 6 --zone Europe/Lisbon -o handouts
"""
FAILED = 2
FORMATS = ("pdf", "ics", "html", "xlsx")


def _formats(_: click.Context, __: click.Parameter, value: str) -> tuple[str, ...]:
    asked = tuple(dict.fromkeys(word.strip().lower() for word in value.split(",") if word.strip()))
    wrong = [word for word in asked if word not in FORMATS]
    if wrong or not asked:
        found = ", ".join(wrong) or "nothing"
        raise click.BadParameter(f"{found}; allowed are {', '.join(FORMATS)}, joined by commas")
    return asked


def _zone(_: click.Context, __: click.Parameter, value: str | None) -> Any:
    from zoneinfo import ZoneInfo

    if value is None:
        return None
    try:
        return ZoneInfo(value)
    except (ValueError, OSError, LookupError):
        raise click.BadParameter(f"{value!r} is no time zone such as Europe/Lisbon") from None


def _time(_: click.Context, __: click.Parameter, value: str) -> time:
    try:
        return datetime.strptime(value, "%H:%M").time()
    except ValueError:
        raise click.BadParameter(f"{value!r} is no time such as 18:00") from None


@click.command("handout", help=HELP)
@click.argument(
    "plans", nargs=-1, required=True, metavar="PLAN...", type=click.Path(allow_dash=True)
)
@click.option(
    "-o",
    "--output",
    "folder",
    required=True,
    metavar="DIR",
    type=click.Path(file_okay=False),
    help="Folder for the files; made when missing.",
)
@click.option(
    "--for",
    "reader",
    type=click.Choice(["client", "coach"]),
    default="client",
    show_default=True,
    help="Whom it is for.",
)
@click.option(
    "--intake",
    "intakes",
    multiple=True,
    type=click.Path(allow_dash=True),
    metavar="INTAKE.yaml",
    help="The person's intake; once, or once for each plan in order.",
)
@click.option(
    "--formats",
    default=",".join(FORMATS),
    show_default=True,
    callback=_formats,
    help="Which files to make.",
)
@click.option(
    "--paper",
    type=click.Choice(["a4", "letter"]),
    default="a4",
    show_default=True,
    help="Size of the sheet.",
)
@click.option(
    "--start",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="First day of training; the coming Monday when absent.",
)
@click.option(
    "--time", "at", default="18:00", show_default=True, callback=_time, help="When sessions begin."
)
@click.option(
    "--zone",
    callback=_zone,
    metavar="ZONE",
    help="Time zone of that time, for example Europe/Lisbon; the reader's own when absent.",
)
@click.option(
    "--weeks",
    type=click.IntRange(1, 52),
    default=1,
    show_default=True,
    help="How often the calendar repeats the week.",
)
def command(
    plans: tuple[str, ...], folder: str, reader: Any, intakes: tuple[str, ...], formats: Any,
    paper: Any, start: datetime | None, at: time, zone: Any, weeks: int,
) -> int:  # fmt: skip
    """Print plans."""
    from setwright.handout.export import Wishes

    if len(intakes) not in (0, 1, len(plans)) or (len(intakes) == 1 and len(plans) > 1):
        raise click.UsageError(f"{len(plans)} plans need no intake or {len(plans)} of them")
    moment = now()
    first = start.date() if start else _coming_monday(moment.astimezone(zone).date())
    wishes = Wishes(reader, formats, paper, first, at, zone, weeks, moment)
    target = _folder(folder)
    failures = _all(plans, intakes, target, wishes)
    for name, why in failures:
        click.echo(f"{name} failed:\n{why}", err=True)
    if failures:
        click.echo(f"{len(plans) - len(failures)} of {len(plans)} plans done", err=True)
    return FAILED if failures else 0


def _all(
    plans: tuple[str, ...], intakes: tuple[str, ...], folder: Path, wishes: Wishes
) -> list[tuple[str, str]]:
    """Do every plan; the ones that failed with the reason."""
    from setwright.handout.names import safe_names

    names = safe_names(["plan" if plan == "-" else Path(plan).stem for plan in plans])
    failures = []
    for number, plan in _counted(plans):
        try:
            written = _one(
                plan, intakes[number] if intakes else None, folder, names[number], wishes
            )
        except DocumentError as error:
            failures.append((plan, str(error)))
        except Exception as error:
            if "SETWRIGHT_DEBUG" in os.environ:
                raise
            failures.append((plan, f"a fault of ours: {type(error).__name__}: {error}"))
        else:
            for path in written.paths:
                click.echo(path)
            if written.unprintable:
                click.echo(f"{plan}: {without_font(written.unprintable)}", err=True)
    return failures


def _one(plan: str, intake: str | None, folder: Path, name: str, wishes: Wishes) -> Written:
    from setwright.handout.export import export
    from setwright.plan.read import read_any_plan, read_intake

    week = read_any_plan(*read_text(plan))
    person = read_intake(*read_text(intake)) if intake else None
    return export(week, person, folder, name, wishes)


def _counted(plans: tuple[str, ...]) -> Iterator[tuple[int, str]]:
    """Plans with their number; a bar on the error stream when there are several."""
    if len(plans) == 1:
        yield 0, plans[0]
        return
    from rich.console import Console
    from rich.progress import track

    console = Console(stderr=True)
    yield from track(
        enumerate(plans), "handouts", total=len(plans), console=console,
        disable=not sys.stderr.isatty(),
    )  # fmt: skip


def _folder(folder: str) -> Path:
    target = Path(folder)
    try:
        target.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise DocumentError(folder, (Fault("", reason, "a folder that can be made"),)) from error
    return target


def _coming_monday(today: date) -> date:
    return today + timedelta(days=(-today.weekday()) % 7 or 7)
