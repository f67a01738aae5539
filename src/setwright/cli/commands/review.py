"""`setwright review`: a client's week on one screen."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path

import click

from setwright.cli.common import emit_json, json_option, picture_option
from setwright.documents.errors import DocumentError, Fault

HELP = """The week of CLIENT_FOLDER in review: what was done, what it shows, what to decide.

Done against planned, changes of strength beyond noise, parts against their targets, honesty of
effort, pain, and numbered proposals. The coach decides: see `setwright decide`. Nothing here
diagnoses or treats.

Without --week it is the last week whose sessions all lie behind.

\b
Examples:
  setwright review anna
  setwright review anna --week 2026-09-14
  setwright review anna --json
  setwright review anna --picture done.svg
"""


@click.command("review", help=HELP)
@click.argument("folder", metavar="CLIENT_FOLDER", type=click.Path(path_type=Path))
@click.option(
    "--week", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="Any day of the week."
)
@click.option(
    "--today",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="The day to stand on; today by default.",
)
@picture_option("Also draw the last weeks, planned against done")
@json_option
def command(
    folder: Path,
    week: datetime | None,
    today: datetime | None,
    picture: Path | None,
    as_json: bool,
) -> None:
    """Print a review."""
    from setwright.plan.client_folder import open_folder
    from setwright.training.review import review, week_to_review

    known = open_folder(folder)
    day = date.today() if today is None else today.date()
    monday = week_to_review(known, day) if week is None else week.date()
    found = review(known, monday, day)
    if picture is not None:
        from setwright.handout.done_picture import WEEKS, done_picture
        from setwright.handout.drawing import save
        from setwright.training.facts.attendance import weeks_kept

        weeks = weeks_kept(found.facts.client, found.facts.monday, WEEKS)
        if not weeks:
            fault = Fault("", "no plan in force then", "a week with a plan")
            raise DocumentError(str(folder), (fault,))
        save(done_picture(f"{known.intake.name}: planned and done", weeks), picture)
    if as_json:
        from setwright.handout.review_data import review_data

        emit_json(review_data(found))
        return
    from setwright.handout.review_text import review_text

    click.echo(review_text(found))
