"""The server: a production WSGI server with the migrated database behind it."""

from __future__ import annotations

import signal
from pathlib import Path

from setwright.documents.errors import DocumentError, Fault
from setwright.web.server import logs
from setwright.web.server.lock import in_use
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
    with in_use(folder):
        set_up(folder)
        migrate()
        if demo:
            from setwright.web.demo.open import open_demo

            print(open_demo(), flush=True)
        logs.configure()
        _run(host, port)


def _run(host: str, port: int) -> None:
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
    # A name such as localhost may stand for several addresses, each with a socket of its own.
    _say(host, getattr(server, "effective_port", port))
    signal.signal(signal.SIGTERM, _stop)
    # On a signal it takes no more requests and lets those under way end, for 5 s at most.
    server.run()
    print("The workspace is closed.", flush=True)


def _stop(number: int, frame: object) -> None:
    """End as after Ctrl-C, when a supervisor asks for it."""
    raise SystemExit(0)


def _say(host: str, port: int) -> None:
    from setwright.web.models import Account
    from setwright.web.server.start_code import start_code

    print(f"The workspace is open at http://{host}:{port}/ (Ctrl-C ends it).", flush=True)
    if not Account.objects.exists():
        print(f"First start: make the owner's account with the code {start_code()}", flush=True)
