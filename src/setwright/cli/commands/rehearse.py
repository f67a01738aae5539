"""`setwright rehearse`: a plan on a clock, set by set."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.cli.common import (
    document_argument,
    emit_json,
    intake_option,
    json_option,
    picture_option,
    read_text,
)
from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.plan.week import Plan

HELP = """Live a plan through on a clock before anyone lifts.

Warm-up sets, working sets, rests, change-overs and supersets in their order; for each set the
load, the repetitions the person will really be able to do at that point, and the rest that keeps
performance.

\b
Examples:
  setwright rehearse plan.yaml
  setwright rehearse plan.yaml --intake intake.yaml --json
  setwright rehearse plan.yaml --day monday --picture monday.png
"""
DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")


@click.command("rehearse", help=HELP)
@document_argument("plan")
@intake_option
@click.option(
    "--day", type=click.Choice(DAYS), help="Draw this day only; every session when absent."
)
@picture_option("Also draw repetitions and performance kept, set after set")
@json_option
def command(
    plan: str, intake_path: str | None, day: str | None, picture: Path | None, as_json: bool
) -> None:
    """Rehearse a plan."""
    if day is not None and picture is None:
        raise click.UsageError("--day says what to draw; it needs --picture FILE")
    from setwright.plan.read import read_any_plan, read_intake
    from setwright.rehearsal.rehearse import rehearse

    week = read_any_plan(*read_text(plan))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    rehearsal = rehearse(week, intake)
    if picture is not None:
        from setwright.handout.canvas_file import save_svg
        from setwright.handout.rehearsal_picture import rehearsal_picture

        save_svg(rehearsal_picture(week, rehearsal, _drawn(week, day)), picture)
    if as_json:
        emit_json(rehearsal)
        return
    from setwright.handout.rehearsal_text import rehearsal_text

    click.echo(rehearsal_text(week, rehearsal))


def _drawn(week: Plan, day: str | None) -> list[int] | None:
    """Which sessions to draw; None for all.

    Raises:
        DocumentError: when the plan has no session on the day.
    """
    if day is None:
        return None
    chosen = [number for number, session in enumerate(week.sessions) if session.day == day]
    if not chosen:
        held = ", ".join(dict.fromkeys(session.day for session in week.sessions))
        raise DocumentError("plan", (Fault("day", day, f"one of {held}"),))
    return chosen
