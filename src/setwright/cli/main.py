"""`setwright`: the commands, and the one place where errors become messages and exit codes."""

from __future__ import annotations

import os
import sys
from importlib import import_module

import click

from setwright import __version__
from setwright.documents.errors import DocumentError

COMMANDS = (
    "design",
    "audit",
    "rehearse",
    "swap",
    "explain",
    "handout",
    "import",
    "compare",
    "exercise",
    "muscle",
    "sources",
    "log",
    "next",
    "review",
    "decide",
    "strength",
    "lab",
    "serve",
    "backup",
    "restore",
    "demo",
)
# Commands whose name is no name for a module.
MODULES = {"import": "import_file"}
# The matrices here are small: threads of the linear algebra would only wait for each other.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
BAD_INPUT = 2
INTERRUPTED = 130
OUR_FAULT = 70


class LazyCommands(click.Group):
    """Loads a command's module only when that command is called, so that start-up stays short."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Commands in the order of the work, not of the alphabet."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Find a command by name, or None."""
        if cmd_name not in COMMANDS:
            return None
        module = MODULES.get(cmd_name, cmd_name)
        command: click.Command = import_module(f"setwright.cli.commands.{module}").command
        return command


HELP = """Design, rehearse and audit a week of muscle-growth training.

\b
Examples:
  setwright design intake.yaml -o plan.yaml
  setwright audit plan.yaml --intake intake.yaml
  setwright rehearse plan.yaml

Setwright informs a coach; it does not diagnose or treat. Screening questions and cautions are
part of every plan; where they ask for it, a licensed professional decides.
"""


@click.group(cls=LazyCommands, help=HELP, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="setwright")
def commands() -> None:
    """The group of all commands."""


def main() -> None:
    """Run a command; bad input ends with a message and exit status 2, never a traceback."""
    try:
        status = commands.main(standalone_mode=False)
    except DocumentError as error:
        click.echo(str(error), err=True)
        sys.exit(BAD_INPUT)
    except click.ClickException as error:
        error.show()
        sys.exit(BAD_INPUT)
    except (click.Abort, KeyboardInterrupt):
        click.echo("stopped; nothing was written", err=True)
        sys.exit(INTERRUPTED)
    except BrokenPipeError:
        sys.stderr.close()
        sys.exit(0)
    except Exception as error:
        if "SETWRIGHT_DEBUG" in os.environ:
            raise
        click.echo(
            f"setwright failed: {type(error).__name__}: {error}\n"
            "This is a fault of ours, not of your document; nothing was written by halves. "
            "SETWRIGHT_DEBUG=1 shows where it happened.",
            err=True,
        )
        sys.exit(OUR_FAULT)
    sys.exit(status if isinstance(status, int) else 0)
