"""What everything computed of a client stands on, as a key, in a few queries for all of them."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from uuid import UUID

from django.db.models import Max

from setwright.web.models import Client, DecisionEntry, IntakeVersion, LogEntry, Week


@dataclass(frozen=True)
class WeekAs:
    """A week as it stands.

    Attributes:
        starts: its Monday.
        current: id of the version on the board, or None.
        sent: id of the version the client sees, or None.
    """

    starts: date
    current: int | None
    sent: int | None


@dataclass(frozen=True)
class Content:
    """Everything of a client that can change, by number.

    Attributes:
        client: uuid.
        intake: number of the intake that counts; 0 before the first.
        log: id of the last record.
        decisions: id of the last decision.
        weeks: oldest first.
    """

    client: UUID
    intake: int
    log: int
    decisions: int
    weeks: tuple[WeekAs, ...]


def contents(clients: Iterable[Client]) -> dict[UUID, Content]:
    """The content of every client, by uuid."""
    ids = [client.uuid for client in clients]
    among = {"client_id__in": ids}
    intakes = _last(
        IntakeVersion.objects.filter(**among).values_list("client").annotate(Max("number"))
    )
    logs = _last(LogEntry.objects.filter(**among).values_list("client").annotate(Max("id")))
    decided = _last(DecisionEntry.objects.filter(**among).values_list("client").annotate(Max("id")))
    weeks: dict[UUID, list[WeekAs]] = {}
    rows = Week.objects.filter(**among).order_by("starts")
    for client, starts, current, sent in rows.values_list("client", "starts", "current", "sent"):
        weeks.setdefault(client, []).append(WeekAs(starts, current, sent))
    return {
        one: Content(
            one,
            intakes.get(one, 0),
            logs.get(one, 0),
            decided.get(one, 0),
            tuple(weeks.get(one, ())),
        )
        for one in ids
    }


def content_of(client: Client) -> Content:
    """The content of one client."""
    return contents([client])[client.uuid]


def _last(rows: Iterable[tuple[UUID, int]]) -> dict[UUID, int]:
    return dict(rows)
