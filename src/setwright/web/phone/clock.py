"""The clock on the wall of the person in the gym."""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta

from django.utils import timezone

COOKIE = "clock"
# No place on earth is further from UTC.
MOST_MINUTES = 14 * 60
_OFFSET = re.compile(r"-?\d{1,3}")


def wall_clock(cookie: str | None, now: datetime | None = None) -> datetime:
    """The time where the person is, to the second, without a zone.

    Args:
        cookie: minutes that UTC is ahead of the person, as the page's script sets it; without
            one, or with a wrong one, UTC counts.
        now: with its zone; the present when not given.
    """
    minutes = int(cookie) if cookie and _OFFSET.fullmatch(cookie) else 0
    if abs(minutes) > MOST_MINUTES:
        minutes = 0
    utc = (now or timezone.now()).astimezone(UTC)
    return (utc - timedelta(minutes=minutes)).replace(tzinfo=None, microsecond=0)
