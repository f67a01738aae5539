"""The refusal of a posture: what was asked, and what would be possible."""

from __future__ import annotations


class PostureError(ValueError):
    """A posture no body can hold.

    Attributes:
        field: the field of the movement that cannot be met.
        found: what was asked.
        allowed: what would be possible.
    """

    def __init__(self, field: str, found: str, allowed: str) -> None:
        """Keep the three parts beside the message."""
        super().__init__(f"{field}: found {found}, allowed {allowed}")
        self.field, self.found, self.allowed = field, found, allowed

    def __reduce__(self) -> tuple[type[PostureError], tuple[str, str, str]]:
        """So that it comes back whole from another process."""
        return type(self), (self.field, self.found, self.allowed)
