"""`setwright log show`: the log by session."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import click

from setwright.cli.common import emit_json, json_option
from setwright.cli.log.common import day_option, folder_argument, opened

HELP = """Show a client's log, session by session.

Records that were taken back are left out.

\b
Examples:
  setwright log show anna
  setwright log show anna --exercise "back squat" --since 2026-09-07
  setwright log show anna --ids
  setwright log show anna --json
"""


@click.command("show", help=HELP)
@folder_argument
@click.option("--exercise", "words", metavar="NAME", help="One exercise only.")
@day_option("--since", words="First day to show.")
@day_option("--until", words="Last day to show.")
@click.option("--ids", is_flag=True, help="Show the id of each record, for `withdraw ID`.")
@json_option
def command(
    folder: Path,
    words: str | None,
    since: date | None,
    until: date | None,
    ids: bool,
    as_json: bool,
) -> None:
    """Show the log."""
    from setwright.handout.log_text import log_text
    from setwright.plan.log import Log

    intake, log = opened(folder)
    exercise = _exercise(words) if words else None
    shown = Log(
        tuple(
            record
            for record in log.standing()
            if (exercise is None or exercise in _exercises_of(record))
            and (since is None or record.at.date() >= since)
            and (until is None or record.at.date() <= until)
        )
    )
    if as_json:
        emit_json({"records": shown.records, "notes": log.notes})
    else:
        click.echo(log_text(shown, intake.unit, ids))


def _exercises_of(record: object) -> tuple[str | None, ...]:
    return getattr(record, "exercise", None), getattr(record, "by", None)


def _exercise(words: str) -> str:
    from setwright.documents.errors import DocumentError, Fault
    from setwright.plan.naming import UnsureNameError, exercise_id

    try:
        return exercise_id(words)
    except UnsureNameError as error:
        raise DocumentError("--exercise", (Fault("", repr(words), str(error)),)) from None
