"""Kill the workspace's server while phones log and a coach edits, and see what is left.

    python scripts/kill_while_writing.py 50

Writers send sets and plans without a pause and send again what was not answered, as the phone
page does. After every kill the server starts anew on what it left. In the end every set has to be
there once, every answered version of the plan too, and the database has to be whole. With
SETWRIGHT_DATABASE it runs on PostgreSQL.
"""

from __future__ import annotations

import http.client
import json
import os
import random
import signal
import socket
import subprocess
import sys
import tempfile
import threading
import time
from datetime import date
from pathlib import Path
from uuid import UUID

WRITERS = 4
MONDAY = date(2026, 9, 7)
PLAN = """\
setwright: plan/1
title: Edit %d
sessions:
  - name: Whole
    day: monday
    minutes: 45
    exercises:
      - Leg press: 3 x 8-12, RIR 2, rest 120 s
"""


class Practice:
    """Everything the writers share."""

    def __init__(self, port: int, token: str, client: str) -> None:
        self.port, self.client = port, client
        self.headers = {"Authorization": f"Bearer {token}", "Content-Type": "application/json"}
        self.over = threading.Event()
        self.lock = threading.Lock()
        self.sent: set[str] = set()
        self.answered: set[str] = set()
        self.versions: set[int] = set()
        self.lost_answers = 0

    def ask(self, method: str, path: str, data: object) -> tuple[int, dict[str, object]] | None:
        """An answer, or None when the server was not there to the end."""
        connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        try:
            address = f"/api/v1/clients/{self.client}{path}"
            connection.request(method, address, json.dumps(data), self.headers)
            answer = connection.getresponse()
            return answer.status, json.loads(answer.read())
        except (OSError, http.client.HTTPException, ValueError):
            with self.lock:
                self.lost_answers += 1
            time.sleep(0.1)
            return None
        finally:
            connection.close()


def log(practice: Practice, seed: int) -> None:
    """Send sets, each until it is answered."""
    drawn = random.Random(seed)
    while not practice.over.is_set():
        sets = [
            {
                "kind": "set",
                "id": str(UUID(int=drawn.getrandbits(128), version=4)),
                "at": "2026-09-07T18:00:00",
                "exercise": "leg-press",
                "load_kg": 100.0,
                "reps": 10,
            }
            for _ in range(drawn.randint(1, 3))
        ]
        ids = {str(one["id"]) for one in sets}
        with practice.lock:
            practice.sent |= ids
        while True:
            found = practice.ask("POST", "/log", {"records": sets})
            if found is None:
                continue
            status, told = found
            assert status == 200, told
            assert {*told["accepted"], *told["known"]} == ids, told  # type: ignore[misc]
            with practice.lock:
                practice.answered |= ids
            break


def edit(practice: Practice) -> None:
    """Put plan after plan on one week, each on the version that is there."""
    base, number = None, 0
    while not practice.over.is_set():
        number += 1
        sent = {"base": base, "text": PLAN % number}
        found = practice.ask("PUT", f"/weeks/{MONDAY}", sent)
        if found is None:
            continue
        status, told = found
        if status == 409:  # the edit before was kept, but its answer was lost
            base = told["number"]
            continue
        assert status in (200, 201), told
        base = told["version"]
        with practice.lock:
            practice.versions.add(int(str(base)))


def main() -> int:
    """Run, and say what was found; 0 when nothing is lost."""
    kills = int(sys.argv[1]) if len(sys.argv) > 1 else 50
    begun = time.monotonic()
    with tempfile.TemporaryDirectory(prefix="setwright-kills-") as folder:
        practice = _practice(Path(folder))
        drawn = random.Random(1)
        server = _serve(folder, practice.port)
        threads = [
            threading.Thread(target=log, args=(practice, seed)) for seed in range(WRITERS)
        ] + [threading.Thread(target=edit, args=(practice,))]
        for thread in threads:
            thread.start()
        for _ in range(kills):
            time.sleep(drawn.uniform(0.05, 0.6))
            os.kill(server.pid, signal.SIGKILL)
            server.wait()
            server = _serve(folder, practice.port)
        practice.over.set()
        for thread in threads:
            thread.join(60)
        server.send_signal(signal.SIGTERM)
        server.wait(30)
        faults = _faults(practice)
    seconds = time.monotonic() - begun
    told = "; ".join(faults) or "nothing lost, nothing twice, database whole"
    print(f"{kills} kills in {seconds:.0f} s: {len(practice.answered)} sets and "
          f"{len(practice.versions)} versions answered, {practice.lost_answers} requests without "
          f"an answer; {told}")  # fmt: skip
    return 1 if faults else 0


def _practice(folder: Path) -> Practice:
    from setwright.web.server.prepare import migrate, set_up

    set_up(folder)
    migrate()
    from setwright.web.api.tokens import make_token
    from setwright.web.models import Account, Client, Organisation

    gym = Organisation.objects.create(name="Tidewater Hall")
    coach = Account.objects.create(
        organisation=gym, name="Bram", email="bram@example.org", role=Account.Role.OWNER
    )
    client = Client.objects.create(organisation=gym, coach=coach, name="Oda")
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    return Practice(port, make_token(coach, "kills"), str(client.uuid))


def _serve(folder: str, port: int) -> subprocess.Popen[bytes]:
    words = ["-m", "setwright", "serve", "--data", folder, "--port", str(port)]
    server = subprocess.Popen(
        [sys.executable, *words], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    )
    while server.poll() is None:
        try:
            connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
            connection.request("GET", "/health")
            if connection.getresponse().status == 200:
                return server
        except (OSError, http.client.HTTPException):
            time.sleep(0.05)
    raise SystemExit("the server does not start any more")


def _faults(practice: Practice) -> list[str]:
    from django.db import connection

    from setwright.web.models import LogEntry, PlanVersion

    kept = list(LogEntry.objects.values_list("record_id", flat=True))
    versions = set(PlanVersion.objects.values_list("number", flat=True))
    faults = []
    if lost := practice.answered - set(kept):
        faults.append(f"{len(lost)} answered sets are lost")
    if len(kept) != len(set(kept)):
        faults.append("a set is there twice")
    if not set(kept) <= practice.sent:
        faults.append("a set that nobody sent is there")
    if lost_versions := practice.versions - versions:
        faults.append(f"{len(lost_versions)} answered versions are lost")
    if versions != set(range(1, len(versions) + 1)):
        faults.append("a version number is lacking")
    if connection.vendor == "sqlite":
        with connection.cursor() as cursor:
            cursor.execute("PRAGMA integrity_check")
            if (found := cursor.fetchall()) != [("ok",)]:
                faults.append(f"the database is damaged: {found}")
    connection.check_constraints()
    return faults


if __name__ == "__main__":
    sys.exit(main())
