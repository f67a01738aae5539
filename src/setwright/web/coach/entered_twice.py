"""Sets that were entered twice: each as it stands in the log, and the striking of one."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from uuid import uuid4

from django.db import transaction

from setwright.handout.log_text import record_text
from setwright.plan.log import SetRecord, Withdrawn
from setwright.training.facts.twice import written_twice
from setwright.training.facts.week import Facts
from setwright.web import trail
from setwright.web.engine.append import append_records
from setwright.web.engine.folder import folder_of
from setwright.web.models import Account, Client

BECAUSE = "entered twice"


@dataclass(frozen=True)
class Entered:
    """A set whose number stands twice: the record's id, when and which, and what was done."""

    id: str
    place: str
    words: str


def entered_twice(facts: Facts) -> tuple[Entered, ...]:
    """Such sets of the week, those of one number side by side."""
    unit = facts.client.folder.intake.unit if facts.plan is None else facts.plan.unit
    sets = sorted(facts.twice, key=lambda one: (one.at.date(), one.exercise, one.number or 0))
    return tuple(
        Entered(one.id, f"{one.at:%a %H:%M}, set {one.number}", record_text(one, unit))
        for one in sets
    )


def strike(client: Client, record: str, who: Account, at: datetime) -> SetRecord | None:
    """Take one of such sets back; None, and nothing done, when its number stands once by now.

    Args:
        client: whose.
        record: id of the set.
        who: the coach.
        at: by the clock on the wall.
    """
    with transaction.atomic():
        # One after the other, so that of two sets never both are struck.
        Client.objects.select_for_update().get(pk=client.pk)
        folder = folder_of(client)
        held = () if folder is None else folder.log.standing()
        found = next((one for one in written_twice(held) if one.id == record), None)
        if found is not None:
            back = Withdrawn(id=str(uuid4()), at=at, of=found.id, note=BECAUSE)
            append_records(client, [back], who)
            trail.note(who, client, "struck", "a set entered twice")
    return found
