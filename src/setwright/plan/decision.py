"""What the coach decided about a proposal, and why."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Literal

from pydantic import Field, JsonValue

from setwright.documents.base import Document
from setwright.plan.log import LocalTime, RecordId


class Decision(Document):
    """One proposal decided.

    Attributes:
        id: of this decision.
        at: when it was taken.
        week: Monday of the week that was reviewed.
        proposal: id of the proposal.
        kind: of the proposal.
        subject: what it was about.
        weight: how much spoke for it; a declined one comes back when that has grown.
        choice: taken as it was, taken with changes, or not taken.
        change: the change that holds: the proposal's own, or as the coach edited it.
        because: the coach's reason.
    """

    id: RecordId
    at: LocalTime
    week: date
    proposal: Annotated[str, Field(min_length=1, max_length=120)]
    kind: str = Field("", max_length=60)
    subject: str = Field("", max_length=120)
    weight: float = 0.0
    choice: Literal["accept", "edit", "decline"]
    change: dict[str, JsonValue] = Field(default_factory=dict)
    because: str = Field("", max_length=500)

    def __hash__(self) -> int:
        """By the id, for what changed is no tuple."""
        return hash(self.id)
