"""`setwright design`: the best week under a person's limits."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from setwright.cli.common import document_argument, emit_json, json_option, read_text

HELP = """Design the best week under a person's limits.

The week with the most expected growth, weighted by the person's aims, within minutes, kit,
exclusions, frequency, spinal load and session limits. Says how far from the proven optimum it
can be at most, what binds, and what could not be covered.

\b
Examples:
  setwright design intake.yaml
  setwright design intake.yaml -o plan.yaml
  setwright design intake.yaml --seconds 30 --json
  setwright design intake.yaml --keep what-stays.yaml -o plan.yaml
"""


@click.command("design", help=HELP)
@document_argument("intake")
@click.option("-o", "--output", type=click.Path(), metavar="PLAN.yaml", help="Write the plan.")
@click.option(
    "--seconds",
    type=click.FloatRange(1, 600),
    default=10.0,
    show_default=True,
    help="Time for the search.",
)
@click.option(
    "--keep",
    type=click.Path(),
    metavar="PLAN.yaml",
    help="Exercises that stay on their days as they stand there; the rest is designed around them.",
)
@json_option
def command(
    intake: str, output: str | None, seconds: float, keep: str | None, as_json: bool
) -> None:
    """Design a week."""
    from setwright.design.design import design
    from setwright.documents.yaml_io import write_text
    from setwright.plan.read import read_any_plan, read_intake
    from setwright.plan.write import write_plan

    person = read_intake(*read_text(intake))
    progress = _progress if sys.stderr.isatty() else None
    kept = read_any_plan(*read_text(keep)) if keep else None
    found = design(person, seconds=seconds, progress=progress, keep=kept)
    if output:
        write_text(Path(output), write_plan(found.plan))
    if as_json:
        emit_json(found)
        return
    from setwright.handout.design_text import design_text
    from setwright.handout.week_text import week_text

    click.echo(week_text(found.plan, found.audit.rehearsal, person))
    click.echo()
    click.echo(design_text(found))
    if output:
        click.echo(f"\nwritten: {output}")


def _progress(words: str) -> None:
    click.echo(words, err=True)
