"""`setwright import --as intake`: a client's answers from a form."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.cli.common import emit_json


def import_intake(
    data: bytes, name: str, sheet: str | None, answers: dict[str, str], output: str | None,
    as_json: bool,
) -> None:  # fmt: skip
    """Read a form, write the intake where there is one, and list what is in doubt."""
    from setwright.documents.yaml_io import write_text
    from setwright.handout.plan_import_text import form_text
    from setwright.plan.foreign.form import read_form
    from setwright.plan.write import write_intake

    reading = read_form(data, name, sheet, answers)
    if output is not None:
        if reading.intake is not None:
            write_text(Path(output), write_intake(reading.intake))
        beside = Path(output).with_suffix(".attention.txt")
        if reading.attention or beside.exists():
            write_text(beside, form_text(reading, only_attention=True) + "\n")
    if as_json:
        emit_json(reading)
    else:
        click.echo(form_text(reading))
