"""`setwright serve`: the workspace in a browser."""

from __future__ import annotations

from pathlib import Path

import click

HELP = """Open the workspace: a web application for the coach and a phone page for clients.

Everything is kept in one folder, in an embedded database; with SETWRIGHT_DATABASE it is kept in
PostgreSQL instead.

\b
Examples:
  setwright serve
  setwright serve --data ~/workspace --port 8080
  SETWRIGHT_DATABASE=postgresql://name@localhost/setwright setwright serve
"""


@click.command("serve", help=HELP)
@click.option(
    "--data",
    type=click.Path(path_type=Path),
    default=Path("workspace"),
    show_default=True,
    help="Folder of the workspace.",
)
@click.option("--host", default="127.0.0.1", show_default=True, help="Address to listen on.")
@click.option("--port", type=click.IntRange(0, 65535), default=8700, show_default=True)
def command(data: Path, host: str, port: int) -> None:
    """Serve the workspace."""
    from setwright.web.server.serve import serve

    serve(data, host, port)
