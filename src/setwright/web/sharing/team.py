"""Coaches of an organisation: invited, given clients, let go."""

from __future__ import annotations

from datetime import datetime, timedelta

from django.db import transaction

from setwright.web import trail
from setwright.web.models import Account, Client, Invitation
from setwright.web.security.tokens import hash_of, new_token

VALID = timedelta(days=7)


def invite_coach(owner: Account, now: datetime) -> str:
    """Make an invitation for one coach and return its token, which is not kept."""
    token = new_token()
    Invitation.objects.create(
        organisation=owner.organisation,
        token_hash=hash_of(token),
        made_by=owner,
        expires_at=now + VALID,
    )
    return token


def open_coach_invitation(token: str, now: datetime) -> Invitation | None:
    """The invitation of a link that can still be used; None otherwise. Uses up nothing."""
    return (
        Invitation.objects.filter(
            token_hash=hash_of(token),
            client=None,
            used_at=None,
            revoked_at=None,
            expires_at__gt=now,
        )
        .select_related("organisation")
        .first()
    )


def join(
    invitation: Invitation, name: str, email: str, password: str, now: datetime
) -> Account | None:
    """Use an invitation up and make the coach's account; None when somebody was faster."""
    with transaction.atomic():
        free = Invitation.objects.filter(pk=invitation.pk, used_at=None, revoked_at=None)
        if not free.update(used_at=now):
            return None
        return Account.objects.create(
            organisation=invitation.organisation,
            name=name,
            email=email,
            password=password,
            role=Account.Role.COACH,
        )


def move(client: Client, coach: Account, who: Account) -> None:
    """Give a client to another coach of the organisation, who then alone sees what is kept."""
    client.coach = coach
    client.save(update_fields=["coach"])
    trail.note(who, client, "moved to another coach", str(coach.uuid))


def let_go(coach: Account, now: datetime) -> None:
    """Deactivate a coach: no way in any more, by password, session or program."""
    with transaction.atomic():
        coach.is_active = False
        coach.save(update_fields=["is_active"])
        coach.tokens.filter(revoked_at=None).update(revoked_at=now)


def take_back(coach: Account) -> None:
    """Let a coach in again, by the password that was."""
    coach.is_active = True
    coach.save(update_fields=["is_active"])
