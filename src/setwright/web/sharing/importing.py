"""An archive made a client of the workspace."""

from __future__ import annotations

from datetime import date, datetime

from django.db import transaction

from setwright.plan.log_store import line_of
from setwright.web.engine.append import MOST, append_records
from setwright.web.models import (
    Account,
    Client,
    DecisionEntry,
    IntakeVersion,
    PlanVersion,
    Week,
)
from setwright.web.sharing.reading import Archived


@transaction.atomic
def keep(archived: Archived, coach: Account, now: datetime) -> Client:
    """Make a new client from an archive; nobody who is there is changed.

    Args:
        archived: as read.
        coach: whose client it becomes.
        now: when its plans count as sent.
    """
    client = Client.objects.create(
        organisation=coach.organisation, coach=coach, name=archived.name, notes=archived.notes
    )
    IntakeVersion.objects.create(client=client, number=1, text=archived.intake, made_by=coach)
    for monday, text in archived.plans.items():
        _week(client, monday, text, now)
    for monday, text in archived.drafts.items():
        _week(client, monday, text, None)
    records = archived.folder.log.records
    for start in range(0, len(records), MOST):
        append_records(client, records[start : start + MOST], coach)
    DecisionEntry.objects.bulk_create(
        DecisionEntry(client=client, decision_id=one.id, text=line_of(one), made_by=coach)
        for one in {one.id: one for one in archived.folder.decisions}.values()
    )
    return client


def _week(client: Client, monday: date, text: str, sent_at: datetime | None) -> None:
    week, made = Week.objects.get_or_create(client=client, starts=monday)
    version = PlanVersion.objects.create(
        week=week,
        number=1 if made else 2,
        text=text,
        parent=week.current,
        what="imported",
        made_by=client.coach,
    )
    week.current = version
    if sent_at is not None:
        week.sent, week.sent_at = version, sent_at
    week.save()
