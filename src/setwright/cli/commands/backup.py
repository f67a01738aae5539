"""`setwright backup`: a workspace in one file."""

from __future__ import annotations

from pathlib import Path

import click

HELP = """Write everything of a workspace to FILE; servers may go on meanwhile.

The file restores to the embedded database or to PostgreSQL, whichever it came from. It holds health
data: keep it as you keep the workspace. The workspace's secret is not in it.

\b
Examples:
  setwright backup workspace-2026-09-07.backup
  setwright backup /safe/place/today.backup --data ~/workspace
"""


@click.command("backup", help=HELP)
@click.argument("file", type=click.Path(dir_okay=False, path_type=Path))
@click.option(
    "--data",
    type=click.Path(path_type=Path),
    default=Path("workspace"),
    show_default=True,
    help="Folder of the workspace.",
)
def command(file: Path, data: Path) -> None:
    """Back up."""
    from setwright.web.server.prepare import refuse_missing, set_up

    refuse_missing(data)
    set_up(data)
    from setwright.web.server.backup import backup

    rows = backup(file)
    click.echo(f"{rows:,} rows, read back and whole: {file} ({file.stat().st_size:,} bytes)")
