"""Fixtures of the phone's tests."""

import os
import shutil

import pytest
from phone_device import Phone
from phone_practice import as_person, log_bench, plan_text, send_week
from phone_server import Server, free_port

PROGRAMS = ("chromium", "chromium-browser", "google-chrome")


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


@pytest.fixture(scope="session")
def chromium() -> str:
    """The program that the browser fixture found."""
    return os.environ.get("CHROMIUM") or next(filter(None, map(shutil.which, PROGRAMS)))


@pytest.fixture(scope="session")
def joined(tmp_path_factory, browser, chromium):
    """A workspace, links into it, and the memory of a phone that joined by the first; copied."""
    folder = tmp_path_factory.mktemp("joined")
    (folder / "workspace").mkdir()
    made = Server(folder / "workspace", free_port())
    tokens = made.filled()
    made.start()
    first = Phone(browser.browser_type, folder / "phone", chromium, made.address)
    first.join(tokens[0])
    # Without an orderly end the browser may not have written its cookies yet.
    first.close()
    made.stop()
    return made, tokens, folder / "phone"


@pytest.fixture
def server(joined, tmp_path):
    """A server in its own process."""
    made = joined[0].copied(tmp_path / "workspace")
    made.start()
    yield made
    made.stop()


@pytest.fixture
def tokens(joined):
    """Links; the first one was used."""
    return joined[1]


@pytest.fixture
def phones(browser, chromium, server, tmp_path):
    """Make phones: new ones, or with the memory of another."""
    made = []

    def another(memory=None) -> Phone:
        folder = tmp_path / f"phone-{len(made)}"
        if memory is not None:
            shutil.copytree(memory, folder, ignore=shutil.ignore_patterns("Singleton*"))
        made.append(Phone(browser.browser_type, folder, chromium, server.address))
        return made[-1]

    yield another
    for one in made:
        one.close()


@pytest.fixture
def device(phones, joined):
    """The phone that joined, with the page open."""
    made = phones(joined[2])
    made.look()
    return made
