"""Clients and what a coach knows of them."""

from __future__ import annotations

import uuid

from django.db import models

from setwright.web.models.accounts import Account, Organisation


class Client(models.Model):
    """A person who is coached.

    Attributes:
        coach: the one coach who sees and changes what is kept of the client.
        account: with which the client signs in on the phone, once invited.
        notes: the coach's own; the client does not see them.
    """

    uuid = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    organisation = models.ForeignKey(Organisation, on_delete=models.CASCADE, related_name="clients")
    coach = models.ForeignKey(Account, on_delete=models.PROTECT, related_name="clients")
    account = models.OneToOneField(
        Account, on_delete=models.SET_NULL, null=True, blank=True, related_name="client"
    )
    name = models.CharField(max_length=60)
    notes = models.TextField(max_length=20_000, blank=True)
    made_at = models.DateTimeField(auto_now_add=True)
    archived_at = models.DateTimeField(null=True, blank=True)

    def __str__(self) -> str:
        return self.name


class IntakeVersion(models.Model):
    """An intake as it was saved; the highest number counts. The text is the document itself."""

    client = models.ForeignKey(Client, on_delete=models.CASCADE, related_name="intakes")
    number = models.PositiveIntegerField()
    text = models.TextField(max_length=200_000)
    made_by = models.ForeignKey(Account, on_delete=models.SET_NULL, null=True, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """One of each number."""

        constraints = (
            models.UniqueConstraint(fields=["client", "number"], name="one_intake_a_number"),
        )
        ordering = ("number",)
