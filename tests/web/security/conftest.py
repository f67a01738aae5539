"""Everybody who may come by, and one of everything they could open."""

from datetime import UTC, date, datetime, timedelta
from importlib.resources import files
from uuid import UUID

import pytest
from django.utils import timezone

from setwright.web.api.tokens import make_token
from setwright.web.assets import version
from setwright.web.engine.append import append_records
from setwright.web.models import (
    Account,
    ApiToken,
    Client,
    DesignJob,
    Invitation,
    Organisation,
    PlanVersion,
    ShareLink,
    Week,
)
from setwright.web.phone.invitations import invite_client
from setwright.web.sharing.links import make_link
from setwright.web.sharing.team import invite_coach

MONDAY = date(2026, 9, 7)


@pytest.fixture
def visitors(practice, owner, coach, other_coach, person):
    """Accounts by what they are to the client; None is somebody who is not signed in."""
    elsewhere = Organisation.objects.create(name="Quarry Hall")
    stranger = Account.objects.create(
        organisation=elsewhere, role="owner", name="Kit", email="kit@example.org", password="x" * 14
    )
    phone = Account.objects.create(organisation=practice, role="client", name="Per")
    Client.objects.create(organisation=practice, coach=other_coach, account=phone, name="Per")
    return {
        "anonymous": None,
        "client": person.account,
        "other client": phone,
        "coach": coach,
        "other coach": other_coach,
        "owner": owner,
        "other owner": stranger,
    }


@pytest.fixture
def things(person, owner, coach, other_coach):
    """What addresses name: by the argument's name, tokens by the route's."""
    text = files("setwright.web.demo").joinpath("people", "oona-week.yaml").read_text("utf-8")
    week = Week.objects.create(client=person, starts=MONDAY)
    first = PlanVersion.objects.create(week=week, number=1, text=text, what="designed")
    week.current = PlanVersion.objects.create(
        week=week, number=2, text=text, what="again", parent=first
    )
    week.sent, week.sent_at = first, datetime(2026, 9, 6, tzinfo=UTC)
    week.save()
    job = DesignJob.objects.create(week=week, state=DesignJob.State.CANCELLED)
    sets = [
        {"kind": "set", "id": str(UUID(int=k + (4 << 76) + (8 << 60))), "load_kg": 100.0 + k,
         "at": f"2026-09-{7 + k:02}T18:00:00", "exercise": "leg-press", "reps": 10, "rir": 2.0}
        for k in range(8)
    ]  # fmt: skip
    append_records(person, sets, person.account)
    now = timezone.now()
    shared = make_link(first, coach, 5, now)
    joining = invite_client(person, coach, False)[0]
    team = invite_coach(owner, now)
    make_token(coach, "program")
    return {
        "client": person.uuid,
        "monday": MONDAY,
        "number": 1,
        "job": job.pk,
        "link": ShareLink.objects.get().uuid,
        "invitation": Invitation.objects.get(client=None).pk,
        "coach": other_coach.uuid,
        "kind": "ics",
        "shape": "html",
        "size": 192,
        "path": "intake.yaml",
        "of_version": version(),
        "phone-module name": "day",
        "client-picture name": "strength",
        "join token": joining,
        "join-team token": team,
        "shared token": shared,
        "shared-picture token": shared,
        "token-revoke token": ApiToken.objects.get().uuid,
        "until": now + timedelta(days=1),
    }
