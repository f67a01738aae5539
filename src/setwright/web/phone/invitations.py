"""Links that let a client in: made by the coach, used once."""

from __future__ import annotations

from datetime import datetime, timedelta

from django.db import transaction
from django.utils import timezone

from setwright.web.models import Account, Client, Invitation
from setwright.web.security.tokens import hash_of, new_token

VALID = timedelta(days=7)


def invite_client(client: Client, coach: Account, sign_out_others: bool) -> tuple[str, datetime]:
    """Make a link for a client and revoke those that were not used.

    A client who has joined keeps the phones that are signed in: the link adds one more. For a
    phone that was lost, ``sign_out_others`` ends every session there is.

    Args:
        client: who is invited.
        coach: who invites.
        sign_out_others: end all sessions of the client.

    Returns:
        The token, which is not kept, and when it expires.
    """
    token, now = new_token(), timezone.now()
    with transaction.atomic():
        Invitation.objects.filter(client=client, used_at=None, revoked_at=None).update(
            revoked_at=now
        )
        made = Invitation.objects.create(
            organisation_id=client.organisation_id,
            client=client,
            token_hash=hash_of(token),
            made_by=coach,
            expires_at=now + VALID,
        )
        if sign_out_others and client.account is not None:
            end_sessions(client.account)
    return token, made.expires_at


def end_sessions(account: Account) -> None:
    """Sign an account without a password out everywhere: sessions hang on its password's text."""
    account.set_unusable_password()
    account.save(update_fields=["password"])


def open_invitation(token: str) -> Invitation | None:
    """The invitation of a link that can still be used; None otherwise. Uses up nothing."""
    return (
        Invitation.objects.filter(
            token_hash=hash_of(token),
            client__isnull=False,
            client__archived_at=None,
            used_at=None,
            revoked_at=None,
            expires_at__gt=timezone.now(),
        )
        .select_related("client__account", "client__coach", "organisation")
        .first()
    )


def use(invitation: Invitation) -> Account | None:
    """Use an invitation up and give the client's account, made when there is none.

    None when somebody else was faster.
    """
    with transaction.atomic():
        free = Invitation.objects.filter(pk=invitation.pk, used_at=None, revoked_at=None)
        if not free.update(used_at=timezone.now()):
            return None
        client = Client.objects.select_for_update().get(invitations=invitation)
        if client.account is None:
            client.account = Account.objects.create(
                organisation_id=client.organisation_id,
                name=client.name,
                role=Account.Role.CLIENT,
            )
            client.save(update_fields=["account"])
        return client.account
