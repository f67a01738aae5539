"""`setwright decide`: a proposal accepted, edited or declined."""

from __future__ import annotations

import json
from datetime import date, datetime
from pathlib import Path

import click
from pydantic import JsonValue

from setwright.cli.common import emit_json, json_option
from setwright.documents.errors import DocumentError, Fault

HELP = """Decide on a proposal of the week's review, by its number there or by its id.

The decision and its reason are kept in decisions.jsonl. When it changes the plan, next week's plan
is written to plans/MONDAY.yaml at once, and what the audit makes of it is shown. The week is the
one that `setwright review` shows without --week. Numbers hold while the log does not change; ids
always do.

\b
Examples:
  setwright decide anna 1 accept
  setwright decide anna 2 decline --because "the knee is fine again"
  setwright decide anna 3 edit --change sets=4
  setwright decide anna 9f2c61aa accept --week 2026-09-14
  setwright decide anna 1 decline --instead
"""


@click.command("decide", help=HELP)
@click.argument("folder", metavar="CLIENT_FOLDER", type=click.Path(path_type=Path))
@click.argument("proposal", metavar="NUMBER_OR_ID")
@click.argument("choice", type=click.Choice(["accept", "decline", "edit"]))
@click.option(
    "--change", "changes", metavar="KEY=VALUE", multiple=True, help="A field to change; for edit."
)
@click.option("--because", metavar="TEXT", default="", help="The reason, kept with the decision.")
@click.option("--instead", is_flag=True, help="Take the place of an earlier decision.")
@click.option(
    "--week", type=click.DateTime(["%Y-%m-%d"]), metavar="DATE", help="Any day of the week."
)
@click.option(
    "--today",
    type=click.DateTime(["%Y-%m-%d"]),
    metavar="DATE",
    help="The day to stand on; today by default.",
)
@json_option
def command(
    folder: Path,
    proposal: str,
    choice: str,
    changes: tuple[str, ...],
    because: str,
    instead: bool,
    week: datetime | None,
    today: datetime | None,
    as_json: bool,
) -> None:
    """Decide."""
    from setwright.plan.client_folder import open_folder
    from setwright.training.decisions import decide, pick
    from setwright.training.review import review, week_to_review

    known = open_folder(folder)
    day = date.today() if today is None else today.date()
    monday = week_to_review(known, day) if week is None else week.date()
    found = review(known, monday, day)
    at = datetime.now() if today is None else datetime.combine(day, datetime.min.time())
    done = decide(
        found,
        pick(found, proposal),
        "accept" if choice == "accept" else "edit" if choice == "edit" else "decline",
        at,
        dict(_change(one) for one in changes),
        because,
        instead,
    )
    if as_json:
        emit_json({"decision": done.decision, "plan": done.plan, "path": _text(done.path)})
        return
    from setwright.handout.proposal_text import decided_text

    click.echo(decided_text(done))


def _text(path: Path | None) -> str | None:
    return None if path is None else str(path)


def _change(words: str) -> tuple[str, JsonValue]:
    key, equals, value = words.partition("=")
    if not equals or not key:
        raise DocumentError("decide", (Fault("--change", repr(words), "KEY=VALUE"),))
    try:
        return key.strip(), json.loads(value)
    except ValueError:
        return key.strip(), value.strip()
