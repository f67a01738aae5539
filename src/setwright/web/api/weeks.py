"""Weeks and their plans."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from django.db import transaction
from django.http import Http404, HttpRequest
from django.shortcuts import get_object_or_404
from ninja import Router, Status

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.plain_data import plain
from setwright.plan.read import read_any_plan
from setwright.web import trail
from setwright.web.api.schemas import Conflict, PlanIn, PlanOut, Problem, WeekOut
from setwright.web.board import history
from setwright.web.engine.folder import plan_of
from setwright.web.models import Client, Week
from setwright.web.security.access import own_client, who_am_i

router = Router(tags=["weeks"])


@router.get("/{uuid:client}/weeks", response={200: list[WeekOut], 404: Problem})
def list_weeks(request: HttpRequest, client: UUID) -> list[dict[str, object]]:
    """Every week, oldest first."""
    found = own_client(request, client).weeks.select_related("current", "sent")
    return [_out(one) for one in found]


@router.get("/{uuid:client}/weeks/{date:monday}", response={200: PlanOut, 404: Problem})
def get_week(request: HttpRequest, client: UUID, monday: date) -> dict[str, object]:
    """The plan on the board of a week."""
    week = get_object_or_404(
        Week.objects.select_related("current", "sent", "client"),
        client=own_client(request, client),
        starts=monday,
    )
    if week.current is None:
        raise Http404
    note = f"week {monday} version {week.current.number}, by a program"
    trail.note(who_am_i(request), week.client, "saw", note)
    return _with_plan(week)


@router.put(
    "/{uuid:client}/weeks/{date:monday}",
    response={200: PlanOut, 201: PlanOut, 404: Problem, 409: Conflict, 422: Problem},
)
def put_week(request: HttpRequest, client: UUID, monday: date, sent: PlanIn) -> Status[object]:
    """Put a plan on the board of a week, made from the version that is there.

    When somebody changed the week meanwhile, what was sent is kept as a version off the board.
    """
    coach, found = who_am_i(request), own_client(request, client)
    if monday.weekday() != 0:
        raise DocumentError("week", (Fault("monday", f"a {monday:%A}", "a Monday"),))
    plan = read_any_plan(sent.text, "plan")
    with transaction.atomic():
        Client.objects.select_for_update().get(pk=found.pk)
        week, fresh = Week.objects.get_or_create(client=found, starts=monday)
        if sent.base is not None and not week.versions.filter(number=sent.base).exists():
            transaction.set_rollback(fresh)
            number = week.current.number if week.current else None
            return Status(
                409, {"detail": "there is no such version to start from", "number": number}
            )
        made = history.put(week, sent.base, coach, plan, sent.what)
    week.refresh_from_db()
    if not made.current:
        assert week.current is not None
        return Status(
            409,
            {
                "detail": "the week was changed meanwhile",
                "number": week.current.number,
                "kept_as": made.version.number,
            },
        )
    return Status(201 if fresh else 200, _with_plan(week))


def _out(week: Week) -> dict[str, object]:
    return {
        "starts": week.starts,
        "version": week.current.number if week.current else None,
        "sent_version": week.sent.number if week.sent else None,
    }


def _with_plan(week: Week) -> dict[str, object]:
    assert week.current is not None
    text = week.current.text
    return {**_out(week), "text": text, "plan": plain(plan_of(text))}
