"""A calendar that the test turns, for the workspace and for the browsers alike."""

from collections.abc import Callable
from datetime import UTC, datetime

import pytest
from playwright.sync_api import Page


class Calendar:
    """The moment it is, until the test says another one."""

    def __init__(self) -> None:
        self.moment = datetime(2026, 9, 7, 8, tzinfo=UTC)

    def __call__(self) -> datetime:
        """As ``django.utils.timezone.now`` is called."""
        return self.moment

    def turn(self, day: int, hour: int) -> None:
        """Go on to an hour of a day of the same month."""
        self.moment = self.moment.replace(day=day, hour=hour)


@pytest.fixture
def calendar(monkeypatch) -> Calendar:
    """The Monday on which everything begins."""
    made = Calendar()
    monkeypatch.setattr("django.utils.timezone.now", made)
    return made


@pytest.fixture
def desk(open_page: Callable[..., Page], live_server) -> Callable[[], Page]:
    """Open the workspace at a desk, signed in as nobody."""

    def opened() -> Page:
        page = open_page()
        page.goto(live_server.url)
        return page

    return opened


@pytest.fixture
def phone(open_page: Callable[..., Page], calendar: Calendar) -> Callable[[str], Page]:
    """Open an address on a phone whose clock shows the same moment."""

    def opened(address: str) -> Page:
        page = open_page(
            viewport={"width": 390, "height": 844}, has_touch=True, timezone_id="Etc/UTC"
        )
        page.clock.install(time=calendar.moment)
        page.goto(address)
        return page

    return opened
