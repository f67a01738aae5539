"""Tokens by which a program acts for a coach."""

from __future__ import annotations

from datetime import datetime, timedelta
from uuid import UUID

from django.http import HttpRequest
from django.utils import timezone
from ninja.security import HttpBearer

from setwright.web.models import Account, ApiToken
from setwright.web.security.tokens import hash_of, new_token

SEEN_EVERY = timedelta(minutes=1)


def make_token(account: Account, name: str) -> str:
    """Make a token and return it; only its hash is kept."""
    token = new_token()
    ApiToken.objects.create(account=account, name=name, token_hash=hash_of(token))
    return token


def revoke(account: Account, uuid: UUID, now: datetime) -> bool:
    """End one of an account's tokens; False when there is none such."""
    return bool(account.tokens.filter(uuid=uuid, revoked_at=None).update(revoked_at=now))


def account_of(token: str, now: datetime) -> Account | None:
    """The coach a token acts for; None when it is unknown, revoked or the coach's way is closed."""
    found = (
        ApiToken.objects.select_related("account__organisation")
        .filter(token_hash=hash_of(token), revoked_at=None, account__is_active=True)
        .first()
    )
    if found is None or not found.account.coaches:
        return None
    if found.used_at is None or now - found.used_at > SEEN_EVERY:
        ApiToken.objects.filter(pk=found.pk).update(used_at=now)
    return found.account


class Bearer(HttpBearer):
    """`Authorization: Bearer TOKEN`; sessions of a browser do not count here."""

    def authenticate(self, request: HttpRequest, token: str) -> Account | None:
        """Who asks; the pages' own checks of whose client it is then hold here, too."""
        account = account_of(token, timezone.now())
        if account is not None:
            request.user = account
        return account
