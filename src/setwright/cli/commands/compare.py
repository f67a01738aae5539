"""`setwright compare`: two plans beside each other."""

from __future__ import annotations

import click

from setwright.cli.common import document_argument, emit_json, intake_option, json_option, read_text

HELP = """Hold two plans against each other.

Minutes as rehearsed, dose and expected growth of every part with the interval of the difference,
spinal load, variety and where the audit differs; then which is better for what. A difference that
lies inside its own interval is called no difference. Exit status 0 whichever is better.

\b
Examples:
  setwright compare monday-plan.yaml other-plan.yaml
  setwright compare a.yaml b.yaml --intake intake.yaml
  setwright compare a.yaml b.txt --json
"""


@click.command("compare", help=HELP)
@document_argument("a")
@document_argument("b")
@intake_option
@json_option
def command(a: str, b: str, intake_path: str | None, as_json: bool) -> None:
    """Compare two plans."""
    from setwright.audit.compare import compare
    from setwright.plan.read import read_any_plan, read_intake

    first, second = read_any_plan(*read_text(a)), read_any_plan(*read_text(b))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    found = compare(first, second, intake)
    if as_json:
        emit_json(found)
        return
    from setwright.handout.compare_text import compare_text

    click.echo(compare_text(found))
