"""Read-only links to one version of a week."""

from __future__ import annotations

from datetime import datetime, timedelta

from django.db.models import QuerySet

from setwright.web.models import Account, PlanVersion, ShareLink, Week
from setwright.web.security.tokens import hash_of, new_token

DAYS_LEAST, DAYS_MOST, DAYS_USUAL = 1, 90, 14


def make_link(version: PlanVersion, who: Account, days: int, now: datetime) -> str:
    """Make a link and return its token, which is not kept.

    Args:
        version: what it shows, whatever becomes of the week.
        who: made it.
        days: until it ends, 1 to 90.
        now: from when the days count.
    """
    token = new_token()
    ShareLink.objects.create(
        version=version,
        token_hash=hash_of(token),
        made_by=who,
        expires_at=now + timedelta(days=days),
    )
    return token


def open_link(token: str, now: datetime) -> ShareLink | None:
    """The link of a token that is neither revoked nor over; None otherwise."""
    return (
        ShareLink.objects.select_related("version__week__client")
        .filter(
            token_hash=hash_of(token),
            revoked_at=None,
            expires_at__gt=now,
            version__week__client__archived_at=None,
        )
        .first()
    )


def links_of(week: Week) -> QuerySet[ShareLink]:
    """Links to any version of a week, the newest first."""
    return (
        ShareLink.objects.filter(version__week=week).select_related("version").order_by("-made_at")
    )
