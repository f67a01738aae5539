"""The day and the time that the workspace goes by; the engine has no clock of its own."""

from __future__ import annotations

from datetime import date, datetime

from django.utils import timezone


def today() -> date:
    """The day by the workspace's clock."""
    return timezone.localdate()


def wall_clock() -> datetime:
    """The time as a clock on the wall shows it, to the second."""
    return timezone.localtime().replace(tzinfo=None, microsecond=0)
