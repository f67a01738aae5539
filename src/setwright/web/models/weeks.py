"""Weeks of a client, every version of their plans, and designs under way."""

from __future__ import annotations

import uuid

from django.db import models

from setwright.web.models.accounts import Account
from setwright.web.models.clients import Client


class Week(models.Model):
    """A plan in force from a Monday until the next one begins.

    Attributes:
        starts: the Monday.
        current: version on the board; an edit is refused unless it was made on this one.
        undone: ids of versions taken back, the next to redo last.
        locked: `day/exercise` that a new design keeps as it stands.
        sent: version the client sees; None while the week is a draft.
    """

    uuid = models.UUIDField(default=uuid.uuid4, unique=True, editable=False)
    client = models.ForeignKey(Client, on_delete=models.CASCADE, related_name="weeks")
    starts = models.DateField()
    current = models.ForeignKey(
        "PlanVersion", on_delete=models.SET_NULL, null=True, blank=True, related_name="+"
    )
    undone = models.JSONField(default=list, blank=True)
    locked = models.JSONField(default=list, blank=True)
    sent = models.ForeignKey(
        "PlanVersion", on_delete=models.SET_NULL, null=True, blank=True, related_name="+"
    )
    sent_at = models.DateTimeField(null=True, blank=True)

    class Meta:
        """One week a Monday."""

        constraints = (
            models.UniqueConstraint(fields=["client", "starts"], name="one_week_a_monday"),
        )
        ordering = ("starts",)


class PlanVersion(models.Model):
    """A plan as it stood after one edit; never changed. The text is the document itself.

    Attributes:
        parent: the version that was edited, to which undo returns.
        what: the edit, in a few words.
    """

    week = models.ForeignKey(Week, on_delete=models.CASCADE, related_name="versions")
    number = models.PositiveIntegerField()
    text = models.TextField(max_length=400_000)
    parent = models.ForeignKey("self", on_delete=models.SET_NULL, null=True, related_name="+")
    what = models.CharField(max_length=200)
    made_by = models.ForeignKey(Account, on_delete=models.SET_NULL, null=True, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """One of each number."""

        constraints = (
            models.UniqueConstraint(fields=["week", "number"], name="one_version_a_number"),
        )
        ordering = ("number",)


class DesignJob(models.Model):
    """A design under way: its progress, and its plan or its message at the end."""

    class State(models.TextChoices):
        """Where it stands."""

        RUNNING = "running", "running"
        DONE = "done", "done"
        FAILED = "failed", "failed"
        CANCELLED = "cancelled", "cancelled"

    uuid = models.UUIDField(primary_key=True, default=uuid.uuid4, editable=False)
    week = models.ForeignKey(Week, on_delete=models.CASCADE, related_name="jobs")
    base = models.ForeignKey(PlanVersion, on_delete=models.SET_NULL, null=True, related_name="+")
    asked_by = models.ForeignKey(Account, on_delete=models.SET_NULL, null=True, related_name="+")
    state = models.CharField(max_length=10, choices=State.choices, default=State.RUNNING)
    progress = models.FloatField(default=0.0)
    message = models.TextField(max_length=4000, blank=True)
    begun_at = models.DateTimeField(auto_now_add=True)
    seen_at = models.DateTimeField(auto_now=True)
