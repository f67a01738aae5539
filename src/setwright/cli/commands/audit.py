"""`setwright audit`: a plan against every criterion."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.cli.common import (
    document_argument,
    emit_json,
    intake_option,
    json_option,
    picture_option,
    read_text,
)

HELP = """Hold a plan against every criterion.

Each remark gives the figure measured, the limit, the verdict (holds, close, misses), the evidence
and the smallest mend. Exit status 1 when something misses that the plan does not declare
unavoidable, so that it can guard a folder of plans.

\b
Examples:
  setwright audit plan.yaml
  setwright audit plan.yaml --intake intake.yaml --all
  setwright audit plan.yaml --intake intake.yaml --picture parts.svg
  cat plan.txt | setwright audit - --json
"""
MISSES = 1


@click.command("audit", help=HELP)
@document_argument("plan")
@intake_option
@click.option("--all", "show_all", is_flag=True, help="Show what holds, too.")
@picture_option("Also draw what each part gets against its target")
@json_option
def command(
    plan: str, intake_path: str | None, show_all: bool, picture: Path | None, as_json: bool
) -> int:
    """Audit a plan."""
    from setwright.audit.audit import audit
    from setwright.plan.read import read_any_plan, read_intake

    week = read_any_plan(*read_text(plan))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    report = audit(week, intake)
    if picture is not None:
        from setwright.handout.canvas_file import save_svg
        from setwright.handout.dose_picture import TITLE, dose_picture

        save_svg(dose_picture(report.response, intake, f"{week.title}: {TITLE}"), picture)
    if as_json:
        emit_json({"remarks": report.remarks, "response": report.response})
    else:
        from setwright.handout.audit_text import audit_text

        click.echo(audit_text(report, week, show_all=show_all))
    return MISSES if report.misses else 0
