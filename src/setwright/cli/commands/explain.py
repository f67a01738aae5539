"""`setwright explain`: why each exercise stands where it stands."""

from __future__ import annotations

import click

from setwright.cli.common import document_argument, emit_json, intake_option, json_option, read_text

HELP = """Say why: each exercise, its place, sets, repetitions, effort, rest and technique.

Plain sentences a coach could teach from, with the sources they stand on.

\b
Examples:
  setwright explain plan.yaml
  setwright explain plan.yaml --intake intake.yaml --json
"""


@click.command("explain", help=HELP)
@document_argument("plan")
@intake_option
@json_option
def command(plan: str, intake_path: str | None, as_json: bool) -> None:
    """Explain a plan."""
    from setwright.handout.explain import explain, explained_text
    from setwright.plan.read import read_any_plan, read_intake

    week = read_any_plan(*read_text(plan))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    sessions = explain(week, intake)
    if as_json:
        emit_json(sessions)
    else:
        click.echo(explained_text(sessions, intake))
