"""`setwright restore`: a workspace out of one file."""

from __future__ import annotations

from pathlib import Path

import click

HELP = """Put the backup FILE in the place of a workspace, whole or not at all.

Servers of the workspace have to be stopped. A workspace with accounts in it is replaced only with
--yes.

\b
Examples:
  setwright restore workspace-2026-09-07.backup
  setwright restore today.backup --data ~/workspace --yes
  SETWRIGHT_DATABASE=postgresql://name@localhost/setwright setwright restore today.backup
"""


@click.command("restore", help=HELP)
@click.argument("file", type=click.Path(exists=True, dir_okay=False, path_type=Path))
@click.option(
    "--data",
    type=click.Path(path_type=Path),
    default=Path("workspace"),
    show_default=True,
    help="Folder of the workspace.",
)
@click.option("--yes", is_flag=True, help="Replace what is there.")
def command(file: Path, data: Path, yes: bool) -> None:
    """Restore."""
    from setwright.web.server.lock import in_use
    from setwright.web.server.prepare import migrate, set_up

    with in_use(data, alone=True):
        set_up(data)
        from setwright.web.server.backup import read_backup
        from setwright.web.server.restore import restore

        kept = read_backup(file.read_bytes(), str(file))
        migrate()
        rows = restore(kept, yes)
    click.echo(f"{rows:,} rows of {kept.made_at:%d %B %Y, %H:%M} UTC are in place")
