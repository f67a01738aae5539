"""The roster: every client with what needs the coach, most urgent first."""

from __future__ import annotations

import time
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from uuid import UUID

from django.db.models import Max, Q
from django.utils import timezone

from setwright.plan.client_folder import ClientFolder
from setwright.plan.intake import DAYS
from setwright.training.pain import RECENT_DAYS
from setwright.web.coach.content import Content, contents
from setwright.web.coach.standing import Around, Group, Need, needs
from setwright.web.engine.folder import folder_of
from setwright.web.memory import Kept
from setwright.web.models import Client, Invitation, LogEntry, TrailEntry

HEADINGS: dict[Group, str] = {
    "now": "Look at first",
    "decide": "To decide",
    "set up": "To set up",
    "none": "Nothing waits",
}
# Written in the trail when a coach opens the review of a week.
LOOKED_AT = "review "


@dataclass(frozen=True)
class Standing:
    """Where a client stands.

    Attributes:
        needs: what needs the coach, most urgent first.
        trained: last day trained, or None.
        due: day of the next session, or None.
        session: its name.
    """

    needs: tuple[Need, ...]
    trained: date | None = None
    due: date | None = None
    session: str = ""


@dataclass(frozen=True)
class Row:
    """A client on the roster.

    Attributes:
        client: who.
        standing: None while it has not been computed.
        troubled: whether pain or a stop sign was reported lately, told before it is computed.
    """

    client: Client
    standing: Standing | None
    troubled: bool = False

    @property
    def group(self) -> Group:
        """Heading the client stands under."""
        if self.standing is None or not self.standing.needs:
            return "none"
        return self.standing.needs[0].group


_STANDINGS: Kept[Standing] = Kept(4096)


def rows(clients: Sequence[Client], today: date, budget_s: float | None = None) -> list[Row]:
    """Clients in order of urgency.

    Those who reported pain or a stop sign lately are computed first.

    Args:
        clients: whose.
        today: the day to stand on.
        budget_s: time after which no further standing is computed, one always; None for no end.
    """
    begun = time.perf_counter()
    known = contents(clients)
    around = arounds(clients, today)
    keys = {one.uuid: (known[one.uuid], around[one.uuid], today) for one in clients}
    found = {one.uuid: _STANDINGS.known(keys[one.uuid]) for one in clients}
    missing = [one for one in clients if found[one.uuid] is None]
    troubled = _troubled(missing, today)
    missing.sort(key=lambda one: one.uuid not in troubled)
    for at, client in enumerate(missing):
        if at and budget_s is not None and time.perf_counter() - begun > budget_s:
            break
        found[client.uuid] = standing_of(client, *keys[client.uuid])
    return sorted(
        (Row(one, found[one.uuid], one.uuid in troubled) for one in clients), key=_urgency
    )


def _troubled(clients: Sequence[Client], today: date) -> set[UUID]:
    """Clients with pain or a stop sign in the records of the last two weeks."""
    if not clients:
        return set()
    since = (today - timedelta(RECENT_DAYS)).isoformat()
    told = Q(text__contains='"pain":') | Q(text__contains='"symptoms":')
    records = LogEntry.objects.filter(told, client__in=clients, at__gte=since)
    return set(records.values_list("client_id", flat=True).distinct().order_by())


def standing_of(client: Client, content: Content, around: Around, today: date) -> Standing:
    """Where one client stands."""
    key = content, around, today
    return _STANDINGS.of(key, lambda: _standing(client, content, around, today))


def _urgency(row: Row) -> tuple[int, str]:
    if row.standing is None:
        return 1000 - row.troubled, row.client.name.casefold()
    first = row.standing.needs[0].rank if row.standing.needs else 500
    return first, row.client.name.casefold()


def _standing(client: Client, content: Content, around: Around, today: date) -> Standing:
    folder = folder_of(client)
    wanted = needs(folder, content, around, today)
    if folder is None:
        return Standing(wanted)
    days = [one.at.date() for one in folder.log.sets() if one.at.date() <= today]
    due, session = _next(folder, today, days[-1] if days else None)
    return Standing(wanted, days[-1] if days else None, due, session)


def _next(folder: ClientFolder, today: date, trained: date | None) -> tuple[date | None, str]:
    """The first session of the plan from today on, or from tomorrow after training today."""
    for ahead in range(0 if trained != today else 1, 14):
        day = today + timedelta(ahead)
        plan = folder.plan_on(day)
        for session in plan.sessions if plan is not None else ():
            if session.day == DAYS[day.weekday()]:
                return day, session.name
    return None, ""


def arounds(clients: Iterable[Client], today: date) -> dict[UUID, Around]:
    """What of every client is no document, by uuid."""
    clients = list(clients)
    ids = [client.uuid for client in clients]
    invited = set(
        Invitation.objects.filter(
            client_id__in=ids, used_at=None, revoked_at=None, expires_at__gt=timezone.now()
        ).values_list("client_id", flat=True)
    )
    this = today - timedelta(today.weekday())
    details = [f"{LOOKED_AT}{monday}" for monday in (this, this - timedelta(7))]
    looks = dict(
        TrailEntry.objects.filter(
            client__in=[str(one) for one in ids], what="saw", detail__in=details
        )
        .values_list("client")
        .annotate(Max("at"))
    )
    found = {}
    for client in clients:
        at = looks.get(str(client.uuid))
        looked = None if at is None else timezone.localtime(at).date()
        found[client.uuid] = Around(client.account_id is not None, client.uuid in invited, looked)
    return found
