"""`setwright log`: what was done, added set by set or imported from a table, and shown."""

from __future__ import annotations

import sys
from importlib import import_module

import click

SUBCOMMANDS = {"add": "add", "import": "importing", "show": "show", "questions": "questions"}

HELP = """Keep the log of what was done.

It is CLIENT_FOLDER/log.jsonl, one record a line, added to and never rewritten.

\b
Examples:
  setwright log add anna "back squat 100 x 5 @2" --rest 180
  setwright log import anna training-diary.xlsx --preview
  setwright log show anna --since 2026-09-07
  setwright log questions anna
"""


class _Lazy(click.Group):
    def list_commands(self, ctx: click.Context) -> list[str]:
        """Commands in the order of the work."""
        return list(SUBCOMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Find a command by name, or None."""
        if cmd_name not in SUBCOMMANDS:
            return None
        found: click.Command = import_module(f"setwright.cli.log.{SUBCOMMANDS[cmd_name]}").command
        return found


@click.group("log", cls=_Lazy, help=HELP)
def command() -> None:
    """The group of the log's commands."""
    # Names come from other people's files; a terminal that cannot show a letter shows a mark.
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="replace")
