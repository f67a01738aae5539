"""Filling an empty workspace with the demo's people."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from importlib.resources import files

from django.db import transaction

from setwright.plan.log_store import line_of
from setwright.plan.write import update_plan
from setwright.training.decisions import Choice, settle
from setwright.training.review import review
from setwright.web.demo.cast import CAST, EMAIL, ON_THE_PHONE, ORGANISATION, OWNER, Part
from setwright.web.demo.diary import diary, first_monday
from setwright.web.engine.append import append_records
from setwright.web.engine.folder import folder_of, intake_of, plan_of
from setwright.web.models import (
    Account,
    Client,
    DecisionEntry,
    IntakeVersion,
    Invitation,
    Organisation,
    PlanVersion,
    Week,
)
from setwright.web.security.tokens import hash_of, new_token

HELD = timedelta(7)


@dataclass(frozen=True)
class Filled:
    """What lets one in.

    Attributes:
        email: of the owner, who coaches everybody.
        phone: token of an invitation, for the phone of one client.
    """

    email: str
    phone: str


@transaction.atomic
def fill(today: date, password: str | None = None) -> Filled:
    """Put the demo's people into an empty workspace.

    Args:
        today: the day to stand on; logs end the day before.
        password: of the owner; without one nobody signs in by a password.
    """
    organisation = Organisation.objects.create(name=ORGANISATION)
    owner = Account.objects.create(
        organisation=organisation,
        name=OWNER,
        email=EMAIL,
        role=Account.Role.OWNER,
    )
    if password is not None:
        owner.set_password(password)
        owner.save()
    phone = ""
    for part in CAST:
        client = _client(part, owner, today)
        if part.name == ON_THE_PHONE:
            phone = _invited(client, owner, today)
    return Filled(EMAIL, phone)


def _client(part: Part, owner: Account, today: date) -> Client:
    archived = datetime.combine(today - timedelta(10), time(9), UTC) if part.archived else None
    client = Client.objects.create(
        organisation=owner.organisation,
        coach=owner,
        name=part.name.capitalize(),
        notes=part.notes,
        archived_at=archived,
        account=_phone(part, owner) if part.weeks else None,
    )
    if part.state == "no intake":
        return client
    intake = _text(part.name)
    IntakeVersion.objects.create(client=client, number=1, text=intake, made_by=owner)
    if part.state == "intake":
        return client
    text = _text(f"{part.name}-week")
    monday = first_monday(part, today)
    _week(client, monday, text, "designed from the intake", part.state == "sent")
    for number in range(1, part.weeks + part.running):
        _week(client, monday + timedelta(7 * number), text, "as the week before", True)
    append_records(client, diary(part, intake_of(intake), plan_of(text), today), client.account)
    if part.decided:
        _decide(client, today, text)
    return client


def _phone(part: Part, owner: Account) -> Account:
    return Account.objects.create(
        organisation=owner.organisation,
        name=part.name.capitalize(),
        role=Account.Role.CLIENT,
        is_active=not part.archived,
    )


def _week(client: Client, monday: date, text: str, what: str, sent: bool) -> None:
    week = Week.objects.create(client=client, starts=monday)
    version = PlanVersion.objects.create(
        week=week, number=1, text=text, what=what, made_by=client.coach
    )
    week.current = version
    if sent:
        week.sent = version
        week.sent_at = datetime.combine(monday - timedelta(1), time(17), UTC)
    week.save()


def _decide(client: Client, today: date, text: str) -> None:
    """Review last week: the first proposal is taken, the others are not; this week goes out."""
    this = today - timedelta(today.weekday())
    last = this - timedelta(7)
    at = datetime.combine(last + timedelta(6), time(19))
    taken, plan = False, None
    while True:
        folder = folder_of(client)
        assert folder is not None
        found = review(folder, last)
        left = [one for one in found.proposals if one.id not in found.decided]
        if not left:
            break
        choice: Choice = "decline" if taken or not left[0].change else "accept"
        done = settle(found, left[0], choice, at, plan, because="" if choice == "accept" else NOT)
        taken, plan = taken or choice == "accept", done.plan or plan
        DecisionEntry.objects.create(
            client=client,
            decision_id=done.decision.id,
            text=line_of(done.decision),
            made_by=client.coach,
        )
        at += timedelta(minutes=1)
    if plan is not None:
        _week(client, this, update_plan(text, plan), "from the review", True)


NOT = "one change at a time"


def _invited(client: Client, owner: Account, today: date) -> str:
    token = new_token()
    Invitation.objects.create(
        organisation=owner.organisation,
        client=client,
        token_hash=hash_of(token),
        made_by=owner,
        expires_at=datetime.combine(today, time(23, 59), UTC) + HELD,
    )
    return token


def _text(name: str) -> str:
    found = files("setwright.web.demo").joinpath("people", f"{name}.yaml")
    return found.read_text(encoding="utf-8")
