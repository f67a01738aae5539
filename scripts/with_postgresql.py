"""Run a command with a PostgreSQL server of its own, which goes away with it.

    python scripts/with_postgresql.py python -m pytest tests/web

The command finds the server in SETWRIGHT_TEST_DATABASE. It listens on a socket in a temporary
folder and nowhere else. PostgreSQL does not run as root, so root starts it as another user.
"""

from __future__ import annotations

import os
import pwd
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

FAST = {"listen_addresses": "", "fsync": "off", "full_page_writes": "off", "max_connections": "60"}
USERS = ("postgres", "nobody")


def main() -> int:
    """Start, run, stop; the command's own exit status."""
    if not sys.argv[1:]:
        print(__doc__, file=sys.stderr)
        return 2
    folder = Path(tempfile.mkdtemp(prefix="setwright-pg-"))
    user = _user()
    if user is not None:
        os.chown(folder, pwd.getpwnam(user).pw_uid, -1)
    server = None
    try:
        data = folder / "data"
        _run(user, "initdb", "-D", data, "-U", "setwright", "-A", "trust", "-E", "UTF8", "-N")
        settings = [part for name, value in FAST.items() for part in ("-c", f"{name}={value}")]
        with (folder / "log").open("wb") as log:
            server = subprocess.Popen(
                [_program("postgres"), "-D", data, "-k", folder, *settings],
                user=user, stdout=log, stderr=log, cwd="/",
            )  # fmt: skip
        ready = [_program("pg_isready"), "-h", folder, "-U", "setwright", "-q", "-t", "1"]
        while subprocess.run(ready).returncode != 0:
            if server.poll() is not None:
                print((folder / "log").read_text(), file=sys.stderr)
                return 1
        dsn = f"postgresql://setwright@/postgres?host={folder}"
        return subprocess.run(
            sys.argv[1:], env=os.environ | {"SETWRIGHT_TEST_DATABASE": dsn}
        ).returncode
    finally:
        if server is not None:
            server.send_signal(2)
            server.wait(30)
        shutil.rmtree(folder, ignore_errors=True)


def _user() -> str | None:
    """Somebody else, when this is root."""
    if os.geteuid() != 0:
        return None
    known = {one.pw_name for one in pwd.getpwall()}
    return next(name for name in USERS if name in known)


def _run(user: str | None, name: str, *words: object) -> None:
    line = [_program(name), *map(str, words)]
    done = subprocess.run(line, user=user, cwd="/", capture_output=True, text=True)
    if done.returncode:
        sys.exit(done.stderr)


def _program(name: str) -> str:
    """In the path, or where Debian keeps the servers."""
    if found := shutil.which(name):
        return found
    places = sorted(Path("/usr/lib/postgresql").glob(f"*/bin/{name}"))
    if not places:
        sys.exit(f"{name} is not here: install PostgreSQL (on Debian: apt-get install postgresql)")
    return str(places[-1])


if __name__ == "__main__":
    sys.exit(main())
