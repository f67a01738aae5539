"""Keeping who saw and changed what."""

from __future__ import annotations

import re
from collections.abc import Iterable

from setwright.documents.base import UUID_PATTERN
from setwright.web.models import Account, Client, TrailEntry

_UUID = re.compile(UUID_PATTERN)


def note(who: Account | str, client: Client, what: str, detail: str = "") -> None:
    """Keep that someone saw or changed something of a client.

    Args:
        who: an account, or in words what acted.
        client: whose data it was.
        what: `saw` or a change, in a word or two.
        detail: which page, document or version; never health data.
    """
    TrailEntry.objects.create(
        organisation_id=client.organisation_id,
        who=who if isinstance(who, str) else str(who.uuid),
        client=str(client.uuid),
        what=what,
        detail=detail[:200],
    )


def note_roster(who: Account) -> None:
    """Keep that a coach saw the roster, which says of every client what needs a decision."""
    TrailEntry.objects.create(
        organisation_id=who.organisation_id, who=str(who.uuid), what="saw", detail="roster"
    )


def names_of(entries: Iterable[TrailEntry]) -> dict[str, str]:
    """Names of the accounts in a trail, by uuid; those that are gone are left out."""
    uuids = {one.who for one in entries if _UUID.fullmatch(one.who)}
    accounts = Account.objects.filter(uuid__in=uuids).values_list("uuid", "name")
    return {str(uuid): name for uuid, name in accounts}
