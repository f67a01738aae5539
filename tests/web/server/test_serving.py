"""The server as a process: it opens, says what it does, and stops when asked."""

import json
import os
import signal
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from contextlib import contextmanager
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[3]


def free_port():
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        return free.getsockname()[1]


@contextmanager
def server(tmp_path, *words):
    port = free_port()
    keep = {key: os.environ[key] for key in ("PATH", "HOME", "LANG") if key in os.environ}
    process = subprocess.Popen(
        [sys.executable, "-m", "setwright", "serve", "--port", str(port), *words],
        env=keep, cwd=tmp_path, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    try:
        for _ in range(1200):
            try:
                urllib.request.urlopen(f"http://127.0.0.1:{port}/health", timeout=20)
                break
            except (urllib.error.URLError, OSError):
                assert process.poll() is None, process.stderr.read()
                time.sleep(0.1)
        yield process, f"http://127.0.0.1:{port}"
    finally:
        process.kill()
        process.wait(20)


def get(address):
    try:
        answer = urllib.request.urlopen(address, timeout=60)
        return answer.status, answer.read().decode()
    except urllib.error.HTTPError as error:
        return error.code, error.read().decode()


def test_it_serves_logs_in_lines_of_json_without_tokens_and_stops_when_asked(tmp_path):
    with server(tmp_path, "--data", "w") as (process, address):
        status, told = get(f"{address}/health")
        assert (status, json.loads(told)["status"]) == (200, "ok")
        assert get(f"{address}/s/very-secret-token?name=Oda")[0] == 404
        process.send_signal(signal.SIGTERM)
        out, log = process.communicate(timeout=60)
    assert process.returncode == 0
    assert "First start" in out
    assert "closed" in out
    lines = [json.loads(line) for line in log.splitlines()]
    requests = [one for one in lines if one["logger"] == "setwright.web.requests"]
    assert {"at", "level", "method", "route", "status", "ms"} <= set(requests[-1])
    assert requests[-1]["route"] == "s/<str:token>"
    assert "very-secret-token" not in log
    assert "Oda" not in log


def test_a_restore_waits_until_no_server_runs_and_files_are_its_users_only(tmp_path, embedded):
    with server(tmp_path, "--data", "workspace", "--demo"):
        done = embedded("-m", "setwright", "backup", "a.backup")
        assert done.returncode == 0, done.stderr
        done = embedded("-m", "setwright", "restore", "a.backup", "--yes")
        assert done.returncode == 2
        assert "a running server" in done.stderr
        modes = [path.stat().st_mode & 0o077 for path in (tmp_path / "workspace").iterdir()]
        assert modes == [0] * len(modes)
    assert embedded("-m", "setwright", "restore", "a.backup", "--yes").returncode == 0


def test_a_port_that_is_taken_is_said_in_words(tmp_path, embedded):
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        done = embedded("-m", "setwright", "serve", "--port", taken.getsockname()[1])
    assert done.returncode == 2
    assert "allowed: a free port" in done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.django_db
def test_five_kills_while_writing_lose_nothing(embedded):
    """On the database that the tests run on; PostgreSQL gets one of its own for it."""
    named = os.environ.get("SETWRIGHT_TEST_DATABASE", "")
    if named:
        import psycopg

        name = f"kills_{os.getpid()}"
        with psycopg.connect(named, autocommit=True) as maintenance:
            maintenance.execute(f"CREATE DATABASE {name}")
        named = named.replace("/postgres?", f"/{name}?")
    script = ROOT / "scripts" / "kill_while_writing.py"
    done = embedded(script, "5", SETWRIGHT_DATABASE=named)
    assert done.returncode == 0, done.stdout + done.stderr
    assert "nothing lost, nothing twice, database whole" in done.stdout
