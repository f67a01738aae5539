"""`setwright serve`: the workspace in a browser."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import click

HELP = """Open the workspace: a web application for the coach and a phone page for clients.

Everything is kept in one folder, in an embedded database; with SETWRIGHT_DATABASE it is kept in
PostgreSQL instead.

\b
Examples:
  setwright serve
  setwright serve --demo
  setwright serve --data ~/workspace --port 8080
  SETWRIGHT_DATABASE=postgresql://name@localhost/setwright setwright serve
"""


@click.command("serve", help=HELP)
@click.option(
    "--data",
    type=click.Path(path_type=Path),
    help="Folder of the workspace; ./workspace by default, with --demo one that goes away.",
)
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option("--port", type=click.IntRange(0, 65535), default=8700, show_default=True)
@click.option("--demo", is_flag=True, help="Filled with invented people, for looking around.")
def command(data: Path | None, host: str, port: int, demo: bool) -> None:
    """Serve the workspace."""
    from setwright.web.server.serve import serve

    if data is None and demo:
        with TemporaryDirectory(prefix="setwright-demo-", ignore_cleanup_errors=True) as folder:
            serve(Path(folder), host, port, demo)
        return
    serve(data or Path("workspace"), host, port, demo)
