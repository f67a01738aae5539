"""`setwright swap`: substitutes for an exercise, ranked by what the week loses or gains."""

from __future__ import annotations

import click

from setwright.cli.common import document_argument, emit_json, intake_option, json_option, read_text
from setwright.documents.errors import DocumentError, Fault

HELP = """Find substitutes for an exercise of a plan.

Each substitute is put in the exercise's place and the week is computed again; they are ranked by
the change in expected growth.

\b
Examples:
  setwright swap plan.yaml romanian-deadlift
  setwright swap plan.yaml "lat pulldown" --without pulldown
  setwright swap plan.yaml back-squat --avoid pain --intake intake.yaml --json
"""


@click.command("swap", help=HELP)
@document_argument("plan")
@click.argument("exercise")
@click.option("--without", metavar="KIT", help="Kit that is not to be had.")
@click.option(
    "--avoid",
    type=click.Choice(["pain", "preference", "skill"]),
    help="Why it must go: pain also rules out movements that load the same joint action; skill "
    "asks for something simpler.",
)
@intake_option
@click.option("--most", type=click.IntRange(1, 50), default=8, show_default=True)
@json_option
def command(
    plan: str,
    exercise: str,
    without: str | None,
    avoid: str | None,
    intake_path: str | None,
    most: int,
    as_json: bool,
) -> None:
    """Rank substitutes."""
    from setwright.design.swap import swaps
    from setwright.exercises.names import match
    from setwright.plan.read import read_any_plan, read_intake

    week = read_any_plan(*read_text(plan))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    found = match(exercise)
    if found.sure is None:
        near = ", ".join(candidate for candidate, _ in found.candidates)
        raise DocumentError(
            "swap", (Fault("exercise", exercise, f"an exercise of the plan; near: {near}"),)
        )
    ranked = swaps(week, found.sure, without=without, avoid=avoid, intake=intake)[:most]
    if as_json:
        emit_json(ranked)
        return
    from setwright.handout.design_text import swaps_text

    click.echo(swaps_text(found.sure, ranked))
