"""A day in an address: `<date:monday>`, as 2026-09-07. Route files import this module."""

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


register_converter(DateConverter, "date")
