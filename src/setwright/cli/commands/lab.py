"""`setwright lab`: virtual lifters, to test the estimate and the coaching against."""

from __future__ import annotations

import sys

import click

from setwright.cli.common import emit_json, json_option

HELP = """Test the estimate of strength and the coaching on virtual lifters.

A population that follows other laws than the estimate assumes is held against published figures,
then trains: by its own habit while every next set is foretold (open loop), and under this
project's coaching and fixed progressions (closed loop). The same seed gives the same result.

\b
Examples:
  setwright lab
  setwright lab --lifters 1000 --weeks 16 --jobs 2
  setwright lab --lifters 50 --seed 7 --json
"""


@click.command("lab", help=HELP)
@click.option(
    "--lifters", type=click.IntRange(5, 10_000), default=100, show_default=True, metavar="N",
    help="Virtual lifters; 1000 for the figures in docs/lab.md.",
)  # fmt: skip
@click.option(
    "--weeks", type=click.IntRange(4, 52), default=16, show_default=True, metavar="N",
    help="Weeks each of them trains.",
)  # fmt: skip
@click.option(
    "--seed", type=click.IntRange(0, 2**31 - 1), default=1, show_default=True, metavar="N",
    help="Seed of everything.",
)  # fmt: skip
@click.option(
    "--jobs", type=click.IntRange(1, 2), default=2, show_default=True, metavar="N",
    help="Processes.",
)  # fmt: skip
@json_option
def command(lifters: int, weeks: int, seed: int, jobs: int, as_json: bool) -> None:
    """Run the lab."""
    from setwright.handout.lab_text import lab_text
    from setwright.lab.run import run_lab

    with click.progressbar(length=lifters, label="lifters", file=sys.stderr) as bar:
        report = run_lab(lifters, weeks, seed, jobs, bar.update)
    if as_json:
        emit_json(report)
    else:
        click.echo(lab_text(report))
