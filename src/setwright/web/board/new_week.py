"""Weeks that begin: empty, or with a plan that is there already."""

from __future__ import annotations

from datetime import date, timedelta

from django.db import transaction

from setwright.plan.week import Plan
from setwright.web import trail
from setwright.web.board import history
from setwright.web.engine.folder import plan_of
from setwright.web.models import Account, Client, PlanVersion, Week


def next_monday(client: Client, today: date) -> date:
    """The first Monday from today on that has no week yet."""
    monday = today + timedelta(days=-today.weekday() % 7)
    taken = set(client.weeks.filter(starts__gte=monday).values_list("starts", flat=True))
    while monday in taken:
        monday += timedelta(days=7)
    return monday


def begin(
    client: Client, starts: date, who: Account, plan: Plan | None, said: str
) -> tuple[Week, bool]:
    """Make a week, unless one begins on that Monday already.

    Returns:
        The week, and whether it was made now.
    """
    with transaction.atomic():
        week, made = Week.objects.get_or_create(client=client, starts=starts)
        if made:
            trail.note(who, client, "changed", f"week {starts} begun")
            if plan is not None:
                history.put(week, None, who, plan, said)
    return week, made


def copied(source: Week) -> Plan | None:
    """The plan that a copy of a week begins with: what was sent, else what is on the board."""
    version: PlanVersion | None = source.sent or source.current
    return plan_of(version.text) if version else None
