"""What programs send and get."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated, Any, Literal
from uuid import UUID

from ninja import Schema
from pydantic import ConfigDict, Field

Name = Annotated[str, Field(min_length=1, max_length=60, pattern=r"^[^\x00-\x1f]+$")]
Number = Annotated[int, Field(ge=1, le=1_000_000)]


class Strict(Schema):
    """What is sent: unknown fields are refused."""

    model_config = ConfigDict(extra="forbid")


class FaultOut(Schema):
    """One thing wrong in a document: where, what was found, what is allowed."""

    field: str
    found: str
    allowed: str
    line: int | None = None
    column: int | None = None


class Problem(Schema):
    """Why something was not done."""

    detail: str
    faults: list[FaultOut] = Field(default_factory=list)


class Conflict(Schema):
    """Somebody changed it meanwhile.

    Attributes:
        number: that counts now.
        kept_as: number under which what was sent is kept, off the board; None when it is not.
    """

    detail: str
    number: int | None
    kept_as: int | None = None


class ClientIn(Strict):
    """A client to be made."""

    name: Name


class ClientOut(Schema):
    """A client."""

    uuid: UUID
    name: str
    archived: bool
    has_intake: bool


class IntakeOut(Schema):
    """An intake: the number of its version and the document."""

    number: int
    text: str
    saved_at: datetime


class IntakeIn(Strict):
    """An intake to be saved.

    Attributes:
        base: number it was made from; none for the first.
    """

    base: Number | None = None
    text: str = Field(max_length=200_000)


class WeekOut(Schema):
    """A week: which version is on the board, which the client sees."""

    starts: date
    version: int | None
    sent_version: int | None


class PlanOut(WeekOut):
    """A week with its plan, as the document and as data."""

    text: str
    plan: dict[str, Any]


class PlanIn(Strict):
    """A plan to be put on the board of a week.

    Attributes:
        base: number of the version it was made from; none where the week has none.
    """

    base: Number | None = None
    text: str = Field(max_length=400_000)
    what: Annotated[str, Field(max_length=150, pattern=r"^[^\x00-\x1f]*$")] = "put by a program"


class LogOut(Schema):
    """Records of a log in the order they came, and where to go on."""

    records: list[dict[str, Any]]
    next_after: int


class LogIn(Strict):
    """Records to be added, each as a line of a log."""

    records: list[Any] = Field(max_length=2000)


class RefusedOut(Schema):
    """A record that cannot be kept as it is."""

    position: int
    id: str
    why: list[str]


class AppendedOut(Schema):
    """What became of the records."""

    accepted: list[str]
    known: list[str]
    refused: list[RefusedOut]


class DecisionIn(Strict):
    """A proposal decided.

    Attributes:
        week: any day of the week that was reviewed.
        proposal: its id or its number in the review.
    """

    week: date
    proposal: str = Field(min_length=1, max_length=120)
    choice: Literal["accept", "edit", "decline"]
    change: dict[str, Any] = Field(default_factory=dict)
    because: str = Field("", max_length=500)
    instead: bool = False


class DecidedOut(Schema):
    """What a decision did.

    Attributes:
        decision: as kept.
        plan: next week's, or null when no plan changed.
    """

    decision: dict[str, Any]
    plan: dict[str, Any] | None
