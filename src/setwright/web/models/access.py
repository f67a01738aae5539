"""Ways in besides a password, and how often someone tried."""

from __future__ import annotations

import uuid

from django.db import models

from setwright.web.models.accounts import Account, Organisation
from setwright.web.models.clients import Client
from setwright.web.models.weeks import PlanVersion


class Invitation(models.Model):
    """A link that lets one person in, once. Only the hash of its token is kept.

    Attributes:
        client: the client who is invited; None for a coach.
    """

    organisation = models.ForeignKey(Organisation, on_delete=models.CASCADE, related_name="+")
    client = models.ForeignKey(
        Client, on_delete=models.CASCADE, null=True, blank=True, related_name="invitations"
    )
    token_hash = models.CharField(max_length=64, unique=True)
    made_by = models.ForeignKey(Account, on_delete=models.CASCADE, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)
    expires_at = models.DateTimeField()
    used_at = models.DateTimeField(null=True, blank=True)
    revoked_at = models.DateTimeField(null=True, blank=True)


class ShareLink(models.Model):
    """A read-only link to one version of a week. Only the hash of its token is kept."""

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    version = models.ForeignKey(PlanVersion, on_delete=models.CASCADE, related_name="links")
    token_hash = models.CharField(max_length=64, unique=True)
    made_by = models.ForeignKey(Account, on_delete=models.CASCADE, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)
    expires_at = models.DateTimeField()
    revoked_at = models.DateTimeField(null=True, blank=True)


class ApiToken(models.Model):
    """Lets a program act for one coach. Only the hash of its token is kept."""

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    account = models.ForeignKey(Account, on_delete=models.CASCADE, related_name="tokens")
    name = models.CharField(max_length=60)
    token_hash = models.CharField(max_length=64, unique=True)
    made_at = models.DateTimeField(auto_now_add=True)
    used_at = models.DateTimeField(null=True, blank=True)
    revoked_at = models.DateTimeField(null=True, blank=True)


class Attempt(models.Model):
    """One attempt at something that is counted, such as signing in; swept when it is old."""

    key = models.CharField(max_length=120, db_index=True)
    at = models.DateTimeField(auto_now_add=True, db_index=True)
