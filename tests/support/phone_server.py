"""A real server of the workspace in a process of its own, that a test can kill and start again."""

from __future__ import annotations

import json
import os
import shutil
import socket
import sqlite3
import subprocess
import sys
import time
import urllib.error
import urllib.request
from pathlib import Path

HERE = Path(__file__).parent
# A file that tells the server to die when the next records are kept, before it answers.
DIES = "die-before-answering"
SEED = """
from datetime import timedelta
from django.utils import timezone
from phone_practice import log_bench, plan_text, send_week
from setwright.web.models import Account, Client, IntakeVersion, Invitation, Organisation
from setwright.web.security.tokens import hash_of, new_token
hall = Organisation.objects.create(name="Tidewater Hall")
coach = Account.objects.create(organisation=hall, role="coach", name="Bram",
    email="bram@example.org", password="a long enough pass phrase")
person = Client.objects.create(organisation=hall, coach=coach, name="Oda")
intake = '''setwright: intake/1
name: Oda
experience: intermediate
age_band: 18-39
body_mass_kg: 71
screening: {active_last_3_months: yes}
days: [monday 60 min, thursday 60 min]
aims: {emphasise: [chest]}
gym: full gym
'''
IntakeVersion.objects.create(client=person, number=1, text=intake, made_by=coach)
send_week(person, plan_text())
log_bench(person)
for _ in range(3):
    token = new_token()
    Invitation.objects.create(organisation=hall, client=person, token_hash=hash_of(token),
        made_by=coach, expires_at=timezone.now() + timedelta(days=7))
    print(token)
"""
RUN = """
import os, sys
from pathlib import Path
from setwright.web.server.prepare import set_up
set_up()
from setwright.web.wsgi import application
flag = Path(os.environ["SETWRIGHT_DATA"]) / "die-before-answering"
def served(environ, start):
    answer = application(environ, start)
    if environ["PATH_INFO"] == "/today/sync" and flag.exists():
        flag.unlink()
        os._exit(9)
    return answer
from waitress import serve
serve(served, host="127.0.0.1", port=int(sys.argv[1]), threads=4, ident=None, _quiet=True)
"""
CLIENT = "SELECT text FROM workspace_logentry WHERE at >= ? ORDER BY id"


def free_port() -> int:
    """A port that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


class Server:
    """One workspace in a folder, and the process that serves it."""

    def __init__(self, folder: Path, port: int) -> None:
        self.folder, self.port = folder, port
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

    def run(self, code: str) -> str:
        """Run Python with the workspace set up, and give what it printed."""
        head = "from setwright.web.server.prepare import set_up, migrate\nset_up()\nmigrate()\n"
        done = subprocess.run(
            [sys.executable, "-c", head + code],
            env=self.environment, capture_output=True, text=True, check=False,
        )  # fmt: skip
        assert done.returncode == 0, done.stderr
        return done.stdout.strip()

    def filled(self) -> tuple[str, ...]:
        """Make the invented practice, and give tokens of links that let its client in."""
        return tuple(self.run(SEED).splitlines())

    def copied(self, folder: Path) -> Server:
        """The same workspace in another folder, at the same address: a browser goes by that."""
        shutil.copytree(self.folder, folder)
        return Server(folder, self.port)

    def start(self) -> None:
        """Serve, and wait until it does."""
        self.process = subprocess.Popen(
            [sys.executable, "-c", RUN, str(self.port)],
            env=self.environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        for _ in range(400):
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

    def records(self, since: str) -> list[dict[str, object]]:
        """Records of the log from a day on, as they arrived."""
        with sqlite3.connect(self.folder / "workspace.sqlite3") as database:
            rows = database.execute(CLIENT, (since,)).fetchall()
        return [json.loads(row[0]) for row in rows]

    def change(self, statement: str) -> None:
        """Change the database behind the server's back."""
        with sqlite3.connect(self.folder / "workspace.sqlite3", timeout=20) as database:
            database.execute(statement)
