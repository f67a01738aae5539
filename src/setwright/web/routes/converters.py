"""Values in addresses."""

from __future__ import annotations

from datetime import date


class Monday:
    """A Monday as YYYY-MM-DD; any other day is no such address."""

    regex = r"\d{4}-\d{2}-\d{2}"

    def to_python(self, value: str) -> date:
        """The day.

        Raises:
            ValueError: when it is no Monday, which makes the address one that is not there.
        """
        day = date.fromisoformat(value)
        if day.weekday() != 0:
            raise ValueError
        return day

    def to_url(self, value: date | str) -> str:
        """As it stands in the address."""
        return str(value)
