"""`setwright import`: a plan from notes, CSV or XLSX."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from setwright.cli.common import emit_json, json_option
from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.documents.units import Unit
    from setwright.plan.foreign.model import Reading

HELP = """Import a plan that was written for people: notes, CSV or XLSX.

Days as blocks or columns, free headings, sets as `3x8-12` or `3 sets of 10`, effort as RIR or RPE,
supersets by letters or brackets, kg or lb, decimal point or comma. Every line or cell is accounted
for: shown with what was understood and how sure that is. What is not sure is asked on a terminal,
or left in a list beside the plan (PLAN.attention.txt); it is never guessed. Exit status 0 also when
some need attention, with their count; 2 when the file cannot be read.

\b
Examples:
  setwright import notes.txt -o plan.yaml
  setwright import coach.xlsx --sheet "Block 2" --unit lb
  setwright import plan.csv --answer C7=8-12 --answer 12="Back squat 3x8 RIR 2" --json
  setwright import form.csv --as intake -o intake.yaml
"""


@click.command("import", help=HELP)
@click.argument("file", type=click.Path(allow_dash=True))
@click.option("-o", "--output", type=click.Path(), metavar="PLAN.yaml", help="Where the plan goes.")
@click.option("--as", "kind", type=click.Choice(["plan", "intake"]), default="plan",
              show_default=True, help="What the file holds.")  # fmt: skip
@click.option("--sheet", metavar="NAME", help="Read only this sheet of a workbook.")
@click.option("--answer", "answers", multiple=True, metavar="PLACE=WORDS",
              help="What a line or cell means; `skip` leaves it out. May be repeated.")  # fmt: skip
@click.option("--unit", type=click.Choice(["kg", "lb"]), help="Unit of loads without one.")
@click.option("--yes", is_flag=True, help="Ask nothing; replace the output when it exists.")
@json_option
def command(
    file: str,
    output: str | None,
    kind: str,
    sheet: str | None,
    answers: tuple[str, ...],
    unit: Unit | None,
    yes: bool,
    as_json: bool,
) -> None:
    """Import a plan, or an intake from a form."""
    data, name = _bytes(file)
    said = _answers(answers)
    _may_write(output, yes)
    if kind == "intake":
        from setwright.cli.import_intake import import_intake

        import_intake(data, name, sheet, said, output, as_json)
        return
    from setwright.handout.import_preview import preview_text
    from setwright.handout.plan_import_text import (
        attention_text,
        counts_text,
        for_machines,
    )
    from setwright.plan.foreign.importing import import_plan

    reading = import_plan(data, name, sheet, unit, said)
    asking = not yes and not as_json and file != "-" and sys.stdin.isatty() and sys.stdout.isatty()
    if asking and reading.attention:
        click.echo(preview_text(reading))
        reading = _asked(reading, data, name, sheet, unit, said)
    if output is not None:
        _written(reading, output)
    if as_json:
        emit_json(for_machines(reading))
        return
    if not (asking and said):
        click.echo(f"{preview_text(reading)}\n")
    click.echo(counts_text(reading))
    if reading.attention:
        click.echo("\n" + attention_text(reading))


def _asked(
    reading: Reading, data: bytes, name: str, sheet: str | None, unit: Unit | None,
    said: dict[str, str],
) -> Reading:  # fmt: skip
    """Ask about each piece in need of attention, once; what stays unanswered stays in the list."""
    from setwright.handout.plan_import_text import question_text
    from setwright.plan.foreign.importing import import_plan

    seen: set[str] = set()
    while True:
        piece = next((one for one in reading.attention if one.place not in seen), None)
        if piece is None:
            return reading
        seen.add(piece.place)
        click.echo(f"\n{question_text(piece)}")
        words = click.prompt(
            "  a number, other words, skip, or nothing to leave it", default="", show_default=False
        ).strip()
        if not words:
            continue
        chosen = words.isdigit() and 1 <= int(words) <= len(piece.candidates)
        said[piece.place] = piece.candidates[int(words) - 1] if chosen else words
        reading = import_plan(data, name, sheet, unit, said)


def _bytes(path: str) -> tuple[bytes, str]:
    from setwright.documents.table_file import MAX_BYTES

    name = "standard input" if path == "-" else path
    try:
        if path == "-":
            return sys.stdin.buffer.read(MAX_BYTES + 1), name
        with Path(path).open("rb") as file:
            return file.read(MAX_BYTES + 1), name
    except OSError as error:
        reason = (error.strerror or type(error).__name__).lower()
        raise DocumentError(name, (Fault("", reason, "a readable file, or -"),)) from error


def _answers(given: tuple[str, ...]) -> dict[str, str]:
    said = {}
    for one in given:
        place, equals, words = one.partition("=")
        if not equals or not place.strip() or not words.strip():
            allowed = "PLACE=WORDS, for example 12=skip or C7=8-12"
            raise DocumentError("--answer", (Fault("", repr(one), allowed),))
        said[place.strip()] = words.strip()
    return said


def _may_write(output: str | None, yes: bool) -> None:
    if output is None or yes or not Path(output).exists():
        return
    raise DocumentError(output, (Fault("", "a file of this name", "a new name, or --yes"),))


def _written(reading: Reading, output: str) -> None:
    from setwright.documents.yaml_io import write_text
    from setwright.handout.plan_import_text import attention_text
    from setwright.plan.write import write_plan

    target = Path(output)
    if reading.plan is not None:
        write_text(target, write_plan(reading.plan))
    beside = target.with_suffix(".attention.txt")
    if reading.attention or beside.exists():
        write_text(beside, attention_text(reading) + "\n")
