"""The server: a production WSGI server with the migrated database behind it."""

from __future__ import annotations

import logging
import sys
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault
from setwright.web.server.prepare import migrate, set_up

THREADS = 8


def serve(folder: Path, host: str, port: int, demo: bool = False) -> None:
    """Serve the workspace until it is interrupted.

    Args:
        folder: of the workspace.
        host: address to listen on.
        port: to listen on; 0 for any that is free.
        demo: fill it with invented people first.

    Raises:
        DocumentError: when the port or the database cannot be used.
    """
    set_up(folder)
    migrate()
    if demo:
        from setwright.web.demo.open import open_demo

        print(open_demo(), flush=True)
    logging.basicConfig(stream=sys.stderr, level=logging.INFO, format="%(message)s")
    _say(host, port)
    from waitress import create_server

    from setwright.web.wsgi import application

    try:
        server = create_server(
            application,
            host=host,
            port=port,
            threads=THREADS,
            ident=None,
            max_request_body_size=6_000_000,
        )
    except OSError as error:
        fault = Fault("port", f"{port}: {(error.strerror or 'not free').lower()}", "a free port")
        raise DocumentError(f"{host}:{port}", (fault,)) from error
    server.run()


def _say(host: str, port: int) -> None:
    from setwright.web.models import Account
    from setwright.web.server.start_code import start_code

    print(f"The workspace is open at http://{host}:{port}/ (Ctrl-C ends it).", flush=True)
    if not Account.objects.exists():
        print(f"First start: make the owner's account with the code {start_code()}", flush=True)
