"""A real server of the workspace in a process of its own, that a test can kill and start again."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

HERE = Path(__file__).parent
# Of the file that tells the server to die after the next records are kept, before it answers.
DIES = "die-before-answering"
RUN = """
import os, sys
from pathlib import Path
from setwright.web.server.prepare import set_up, migrate
set_up(); migrate()
from setwright.web.wsgi import application
flag = Path(os.environ["SETWRIGHT_DATA"]) / "%s"
def served(environ, start):
    answer = application(environ, start)
    if environ["PATH_INFO"] == "/today/sync" and flag.exists():
        flag.unlink()
        os._exit(9)
    return answer
from waitress import serve
serve(served, host="127.0.0.1", port=int(sys.argv[1]), threads=4, ident=None, _quiet=True)
"""


class Server:
    """One workspace in a folder, and the process that serves it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        with socket.socket() as probe:
            probe.bind(("127.0.0.1", 0))
            self.port = probe.getsockname()[1]
        self.address = f"http://127.0.0.1:{self.port}"
        self.process: subprocess.Popen[bytes] | None = None

    @property
    def environment(self) -> dict[str, str]:
        """Of every process on this workspace."""
        return {
            **os.environ,
            "SETWRIGHT_DATA": str(self.folder),
            "DJANGO_SETTINGS_MODULE": "setwright.web.settings",
            "PYTHONPATH": str(HERE),
            "OPENBLAS_NUM_THREADS": "1",
        }

    def run(self, code: str, *words: str) -> str:
        """Run Python with the workspace set up, and give what it printed."""
        code = f"from setwright.web.server.prepare import set_up, migrate\nset_up()\nmigrate()\n{code}"
        done = subprocess.run(
            [sys.executable, "-c", code, *words],
            env=self.environment, capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        return done.stdout.strip()

    def start(self) -> None:
        """Serve, and wait until it does."""
        command = [sys.executable, "-c", RUN % DIES, str(self.port)]
        self.process = subprocess.Popen(
            command, env=self.environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
        )
        for _ in range(300):
            try:
                urllib.request.urlopen(f"{self.address}/health", timeout=1).close()
                return
            except (urllib.error.URLError, ConnectionError, TimeoutError):
                time.sleep(0.05)
        raise AssertionError("the server did not start")

    def stop(self) -> None:
        """Kill it at once."""
        if self.process is not None:
            self.process.kill()
            self.process.wait()
            self.process = None

    def die_before_answering(self) -> None:
        """Die after the next records are kept and before the phone hears of it."""
        (self.folder / DIES).touch()

    def died(self) -> None:
        """Wait until it has."""
        assert self.process is not None
        assert self.process.wait(timeout=20) == 9
        self.process = None
