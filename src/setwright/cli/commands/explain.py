"""`setwright explain`: why each exercise stands where it stands, or a document to teach from."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Any

import click

from setwright.cli.common import (
    document_argument,
    emit_json,
    intake_option,
    json_option,
    now,
    read_text,
    without_font,
)

HELP = """Say why: each exercise, its place, sets, repetitions, effort, rest and technique.

Plain sentences a coach could teach from, with the sources they stand on.

With --format a document to teach from: whom the week is for, what it is expected to do, every
criterion of the audit with its figure, limit and evidence, pictures of the response and of what
was traded for minutes, and what was left out and why. The depth short keeps it to a page or two.
A Markdown file gets its pictures as SVG files beside it; on standard output they are told in words.

\b
Examples:
  setwright explain plan.yaml
  setwright explain plan.yaml --intake intake.yaml --json
  setwright explain plan.yaml --intake intake.yaml --format pdf -o week.pdf
  setwright explain plan.yaml --format html --depth short -o week.html
  setwright explain plan.yaml --format md -o notes/week.md
"""
FORMATS = ("md", "html", "pdf")


@click.command("explain", help=HELP)
@document_argument("plan")
@intake_option
@click.option("--format", "kind", type=click.Choice(FORMATS), help="Make a document to teach from.")
@click.option(
    "--depth",
    type=click.Choice(["short", "full"]),
    default="full",
    show_default=True,
    help="How much the document says.",
)
@click.option(
    "--paper",
    type=click.Choice(["a4", "letter"]),
    default="a4",
    show_default=True,
    help="Size of the sheet of a PDF.",
)
@click.option(
    "-o",
    "--output",
    "target",
    default="-",
    metavar="FILE",
    type=click.Path(dir_okay=False, allow_dash=True),
    help="Where the document goes; - is standard output. Its suffix says the format, too.",
)
@json_option
def command(
    plan: str, intake_path: str | None, kind: Any, depth: Any, paper: Any, target: str,
    as_json: bool,
) -> None:  # fmt: skip
    """Explain a plan."""
    from setwright.plan.read import read_any_plan, read_intake

    asked = kind or _by_suffix(target)
    if asked and as_json:
        raise click.UsageError("--json and a document are two answers; ask for one of them")
    if asked == "pdf" and target == "-" and sys.stdout.isatty():
        raise click.UsageError("a PDF is not for a terminal; say where it goes with -o FILE")
    week = read_any_plan(*read_text(plan))
    intake = read_intake(*read_text(intake_path)) if intake_path else None
    if asked:
        from setwright.handout.teaching.build import teaching
        from setwright.handout.teaching.export import rendered, write

        document = teaching(week, intake, depth)
        if asked == "pdf":
            from setwright.handout.teaching.pdf import unprintable

            if lacking := unprintable(document):
                click.echo(f"{plan}: {without_font(lacking)}", err=True)
        if target == "-":
            click.echo(rendered(document, asked, paper, now()), nl=False)
        else:
            for path in write(document, asked, paper, now(), Path(target)):
                click.echo(path)
        return
    from setwright.handout.explain import explain, explained_text

    sessions = explain(week, intake)
    if as_json:
        emit_json(sessions)
    else:
        click.echo(explained_text(sessions, intake))


def _by_suffix(target: str) -> Any:
    """The format that the name of a file asks for; None for standard output."""
    if target == "-":
        return None
    suffix = Path(target).suffix.lower().removeprefix(".")
    if suffix not in FORMATS:
        raise click.UsageError(f"{target}: say --format, or end the name in .md, .html or .pdf")
    return suffix
