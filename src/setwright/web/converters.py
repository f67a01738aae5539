"""Days in addresses: `<date:day>` and `<monday:week>`, as 2026-09-07, for route files to import."""

from __future__ import annotations

from datetime import date

from django.urls import register_converter


class DateConverter:
    """Days as in a plan's file name; anything else is no such page."""

    regex = r"\d{4}-\d{2}-\d{2}"

    def to_python(self, value: str) -> date:
        """From the address."""
        return date.fromisoformat(value)

    def to_url(self, value: date | str) -> str:
        """Into the address."""
        return value if isinstance(value, str) else value.isoformat()


class MondayConverter(DateConverter):
    """The same, of Mondays only."""

    def to_python(self, value: str) -> date:
        """From the address.

        Raises:
            ValueError: when it is no Monday, so that there is no such page.
        """
        day = super().to_python(value)
        if day.weekday() != 0:
            raise ValueError
        return day


register_converter(DateConverter, "date")
register_converter(MondayConverter, "monday")
