"""People of an invented practice, for every test of the workspace."""

import os
import uuid

import pytest

from setwright.web.models import Account, Client, IntakeVersion, Organisation

INTAKE = """\
setwright: intake/1
name: Oda
experience: intermediate
age_band: 18-39
screening: {active_last_3_months: yes}
days: [monday 60 min, thursday 60 min]
aims: {emphasise: [chest]}
gym: full gym
"""


def pytest_collection_modifyitems(config, items):
    """Leave out of the second run, on PostgreSQL, what would only show the same again.

    That is pages in the browser, and processes that work on an embedded database of their own.
    """
    if not os.environ.get("SETWRIGHT_TEST_DATABASE"):
        return
    same = [
        item
        for item in items
        if "browser" in item.fixturenames
        or ("embedded" in item.fixturenames and item.get_closest_marker("django_db") is None)
    ]
    items[:] = [item for item in items if item not in same]
    config.hook.pytest_deselected(items=same)


@pytest.fixture
def practice(db):
    return Organisation.objects.create(name="Tidewater Hall")


def account(practice, role, name):
    email = None if role == "client" else f"{name.lower()}-{uuid.uuid4().hex[:6]}@example.org"
    password = None if role == "client" else "a long enough pass phrase"
    return Account.objects.create(
        organisation=practice, role=role, name=name, email=email, password=password
    )


@pytest.fixture
def owner(practice):
    return account(practice, "owner", "Runa")


@pytest.fixture
def coach(practice):
    return account(practice, "coach", "Bram")


@pytest.fixture
def other_coach(practice):
    return account(practice, "coach", "Ilse")


@pytest.fixture
def person(practice, coach):
    """A client of the coach, with an intake and an account for the phone."""
    phone = account(practice, "client", "Oda")
    found = Client.objects.create(organisation=practice, coach=coach, account=phone, name="Oda")
    IntakeVersion.objects.create(client=found, number=1, text=INTAKE, made_by=coach)
    return found


@pytest.fixture
def as_coach(client, coach):
    client.force_login(coach)
    return client
