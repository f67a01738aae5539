"""`setwright next`: the next set in a session, or the session to come."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

import click

from setwright.cli.common import emit_json, json_option
from setwright.documents.errors import DocumentError, Fault

HELP = """What to do next, from the log of CLIENT_FOLDER.

When sets were logged today: the next set, with its load, repetitions and rest. Otherwise the
session to come: warm-up, loads, repetitions and how near failure, and why.

\b
Examples:
  setwright next anna
  setwright next anna --today 2026-09-21
  setwright next anna --exercise "leg press"
"""


@click.command("next", help=HELP)
@click.argument("folder", metavar="CLIENT_FOLDER", type=click.Path(path_type=Path))
@click.option(
    "--today",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="The day to stand on; today by default.",
)
@click.option("--exercise", metavar="NAME", help="The exercise meant.")
@json_option
def command(folder: Path, today: datetime | None, exercise: str | None, as_json: bool) -> None:
    """Print what comes next."""
    from setwright.cli.meant import meant
    from setwright.plan.client_folder import open_folder
    from setwright.training.client import client_on
    from setwright.training.due import due_session, due_set

    day = date.today() if today is None else today.date()
    known = open_folder(folder)
    plan = known.plan_on(day)
    if plan is None:
        fault = Fault("plans", f"no plan in force on {day.isoformat()}", "plans/MONDAY.yaml")
        raise DocumentError(str(folder), (fault,))
    client = client_on(known, day)
    planned = {entry.exercise for one in plan.sessions for entry in one.exercises}
    wanted = None if exercise is None else meant(exercise, planned, "the plan")
    step = due_set(client, plan, wanted)
    if step is not None:
        if as_json:
            emit_json(step)
            return
        from setwright.handout.next_text import set_text, unread_text

        symptoms = client.past.open_symptoms(client.day, known.intake.screening.cleared_on)
        click.echo(set_text(step, plan.unit, symptoms) + unread_text(client))
        return
    due = due_session(client, plan, wanted)
    if as_json:
        emit_json(due)
        return
    from setwright.handout.next_text import session_text, unread_text

    click.echo(session_text(due, plan.unit) + unread_text(client))
