"""`setwright log questions`: lines of imported tables that wait for an answer."""

from __future__ import annotations

from pathlib import Path

import click

from setwright.cli.common import emit_json, json_option
from setwright.cli.log.common import folder_argument

HELP = """List the lines of imported tables that wait for an answer.

Answer them by importing the same file again with --answer; see `setwright log import --help`.

\b
Examples:
  setwright log questions anna
  setwright log questions anna --json
"""


@click.command("questions", help=HELP)
@folder_argument
@json_option
def command(folder: Path, as_json: bool) -> None:
    """List waiting lines."""
    from setwright.handout.import_text import waiting_text
    from setwright.plan.client_folder import check_folder
    from setwright.plan.importing.held import HELD, read_held

    check_folder(folder)
    waiting = read_held(folder / HELD).waiting
    if as_json:
        emit_json({"waiting": waiting})
    else:
        click.echo(waiting_text(waiting))
