"""Clients and their intakes."""

from __future__ import annotations

from uuid import UUID

from django.db import transaction
from django.http import HttpRequest
from ninja import Router, Status

from setwright.plan.read import read_intake
from setwright.web import trail
from setwright.web.api.schemas import (
    ClientIn,
    ClientOut,
    Conflict,
    IntakeIn,
    IntakeOut,
    Problem,
)
from setwright.web.models import Client, IntakeVersion
from setwright.web.security.access import own_client, who_am_i

router = Router(tags=["clients"])


@router.get("", response=list[ClientOut])
def list_clients(request: HttpRequest) -> list[dict[str, object]]:
    """Every client of the coach, archived ones too."""
    found = Client.objects.filter(coach=who_am_i(request)).order_by("name", "uuid")
    return [_out(one) for one in found.prefetch_related("intakes")]


@router.post("", response={201: ClientOut})
def add_client(request: HttpRequest, sent: ClientIn) -> Status[object]:
    """Add a client."""
    coach = who_am_i(request)
    client = Client.objects.create(organisation=coach.organisation, coach=coach, name=sent.name)
    trail.note(coach, client, "added", "by a program")
    return Status(201, _out(client))


@router.get("/{uuid:client}", response={200: ClientOut, 404: Problem})
def get_client(request: HttpRequest, client: UUID) -> dict[str, object]:
    """One client."""
    return _out(own_client(request, client))


@router.get("/{uuid:client}/intake", response={200: IntakeOut, 404: Problem})
def get_intake(request: HttpRequest, client: UUID) -> Status[object]:
    """The intake that counts."""
    found = own_client(request, client)
    last = found.intakes.last()
    if last is None:
        return Status(404, {"detail": "no intake yet"})
    trail.note(who_am_i(request), found, "saw", f"intake {last.number}, by a program")
    return Status(200, {"number": last.number, "text": last.text, "saved_at": last.made_at})


@router.put(
    "/{uuid:client}/intake",
    response={200: IntakeOut, 201: IntakeOut, 404: Problem, 409: Conflict, 422: Problem},
)
def put_intake(request: HttpRequest, client: UUID, sent: IntakeIn) -> Status[object]:
    """Save an intake: checked as on the command line, and only over the one it was made from."""
    coach, found = who_am_i(request), own_client(request, client)
    read_intake(sent.text, "intake")
    with transaction.atomic():
        Client.objects.select_for_update().get(pk=found.pk)
        last = found.intakes.last()
        number = last.number if last else None
        if number != sent.base:
            return Status(409, {"detail": "the intake was changed meanwhile", "number": number})
        made = IntakeVersion.objects.create(
            client=found, number=(number or 0) + 1, text=sent.text, made_by=coach
        )
        trail.note(coach, found, "changed", f"intake {made.number}, by a program")
    status = 201 if last is None else 200
    return Status(status, {"number": made.number, "text": made.text, "saved_at": made.made_at})


def _out(client: Client) -> dict[str, object]:
    return {
        "uuid": client.uuid,
        "name": client.name,
        "archived": client.archived_at is not None,
        "has_intake": bool(client.intakes.all()),
    }
