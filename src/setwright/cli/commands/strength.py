"""`setwright strength`: strength on every exercise, its trend, and honesty of effort."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

import click

from setwright.cli.common import emit_json, json_option, picture_option
from setwright.documents.errors import DocumentError, Fault

HELP = """Strength as the log of CLIENT_FOLDER shows it.

For every exercise: the 1RM-equivalent with an 80 % interval, its trend, and how the calls of
repetitions in reserve compare with what was really left.

\b
Examples:
  setwright strength anna
  setwright strength anna --exercise "leg press" --json
  setwright strength anna --picture strength.svg
"""


@click.command("strength", help=HELP)
@click.argument("folder", metavar="CLIENT_FOLDER", type=click.Path(path_type=Path))
@click.option("--exercise", metavar="NAME", help="Only this exercise.")
@click.option(
    "--today",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="The day to stand on; today by default.",
)
@picture_option("Also draw strength over time")
@json_option
def command(
    folder: Path,
    exercise: str | None,
    today: datetime | None,
    picture: Path | None,
    as_json: bool,
) -> None:
    """Print strength now."""
    from setwright.cli.meant import meant
    from setwright.plan.client_folder import open_folder
    from setwright.training.client import client_on
    from setwright.training.strength_now import strength_now

    day = date.today() if today is None else today.date()
    client = client_on(open_folder(folder), day)
    logged = {one.exercise for one in client.done}
    wanted = None if exercise is None else meant(exercise, logged, "the log")
    rows = strength_now(client, wanted)
    if picture is not None:
        from setwright.handout.drawing import save
        from setwright.handout.strength_picture import strength_lines, strength_picture

        lines = strength_lines(client, [row.exercise for row in rows])
        if not lines:
            fault = Fault("", "no working set", "a log with sets to draw")
            raise DocumentError(str(folder), (fault,))
        save(strength_picture(f"{client.folder.intake.name}: strength", lines), picture)
    if as_json:
        emit_json(list(rows))
        return
    from setwright.handout.strength_text import strength_text

    click.echo(strength_text(rows, client.folder.intake.unit, day))
