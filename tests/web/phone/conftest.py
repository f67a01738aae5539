"""Fixtures of the phone's tests."""

import pytest
from phone_practice import as_person, log_bench, plan_text, send_week


@pytest.fixture
def sent(person):
    """The client, with a week whose first session is today's, and a log."""
    send_week(person, plan_text())
    log_bench(person)
    return person


@pytest.fixture
def phone(client, sent):
    """A browser of the client."""
    as_person(client, sent)
    return client
