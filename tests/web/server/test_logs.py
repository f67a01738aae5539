"""What stands in the logs, and what never does."""

import io
import json
import logging

import pytest

from setwright.web.server.logs import JsonFormatter


@pytest.fixture
def lines():
    stream = io.StringIO()
    handler = logging.StreamHandler(stream)
    handler.setFormatter(JsonFormatter())
    logger = logging.getLogger()
    level = logger.level
    logger.addHandler(handler)
    logger.setLevel(logging.INFO)
    yield lambda: [json.loads(line) for line in stream.getvalue().splitlines()]
    logger.removeHandler(handler)
    logger.setLevel(level)


def test_a_request_is_a_line_with_its_route_and_not_its_path(client, lines, db):
    client.get("/s/secret-token?name=Oda")
    told = [one for one in lines() if one["logger"] == "setwright.web.requests"]
    assert told[0]["route"] == "s/<str:token>"
    assert told[0]["status"] == 404
    assert "secret-token" not in json.dumps(lines())
    assert "Oda" not in json.dumps(lines())


def test_a_fault_tells_its_kind_and_places_but_not_its_words(client, lines, monkeypatch, person):
    from setwright.web.views import share

    def fails(token, now):
        raise ValueError("Oda has a sore knee")

    monkeypatch.setattr(share, "open_link", fails)
    client.raise_request_exception = False
    assert client.get("/s/secret-token").status_code == 500
    told = json.dumps(lines())
    assert "ValueError" in told
    assert "test_logs.py" in told
    assert "knee" not in told
    assert "secret-token" not in told


def test_health_says_when_the_database_does_not_answer(client, db, monkeypatch):
    from django.db import DatabaseError

    from setwright.web.views import health

    assert client.get("/health").json()["status"] == "ok"

    class Gone:
        def cursor(self):
            raise DatabaseError

    monkeypatch.setattr(health, "connection", Gone())
    answer = client.get("/health")
    assert (answer.status_code, answer.json()["status"]) == (503, "no database")
