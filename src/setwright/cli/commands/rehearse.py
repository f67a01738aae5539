"""`setwright rehearse`: a plan on a clock, set by set."""

from __future__ import annotations

import click

from setwright.cli.common import document_argument, emit_json, intake_option, json_option, read_text

HELP = """Live a plan through on a clock before anyone lifts.

Warm-up sets, working sets, rests, change-overs and supersets in their order; for each set the
load, the repetitions the person will really be able to do at that point, and the rest that keeps
performance.

\b
Examples:
  setwright rehearse plan.yaml
  setwright rehearse plan.yaml --intake intake.yaml --json
"""


@click.command("rehearse", help=HELP)
@document_argument("plan")
@intake_option
@json_option
def command(plan: str, intake_path: str | None, as_json: bool) -> None:
    """Rehearse a plan."""
    from setwright.plan.read import read_any_plan, read_intake
    from setwright.rehearsal.rehearse import rehearse

    week = read_any_plan(*read_text(plan))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    rehearsal = rehearse(week, intake)
    if as_json:
        emit_json(rehearsal)
        return
    from setwright.handout.rehearsal_text import rehearsal_text

    click.echo(rehearsal_text(week, rehearsal))
