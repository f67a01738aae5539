"""What was done, and what the coach decided: appended, never changed."""

from __future__ import annotations

from django.db import models

from setwright.web.models.accounts import Account
from setwright.web.models.clients import Client


class LogEntry(models.Model):
    """One record of a client's log.

    Attributes:
        record_id: UUID made where the set was logged; the same record arrives only once.
        text: the record, one JSON object as in a log file.
        at: when it was done, by the clock on the wall, as in the record.
    """

    client = models.ForeignKey(Client, on_delete=models.CASCADE, related_name="log")
    record_id = models.CharField(max_length=36)
    at = models.CharField(max_length=32)
    text = models.TextField(max_length=4000)
    sent_by = models.ForeignKey(Account, on_delete=models.SET_NULL, null=True, related_name="+")
    received_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """Each record once."""

        constraints = (
            models.UniqueConstraint(fields=["client", "record_id"], name="each_record_once"),
        )
        ordering = ("id",)


class DecisionEntry(models.Model):
    """One proposal decided; the text is the JSON object as in a decisions file."""

    client = models.ForeignKey(Client, on_delete=models.CASCADE, related_name="decisions")
    decision_id = models.CharField(max_length=36)
    text = models.TextField(max_length=8000)
    made_by = models.ForeignKey(Account, on_delete=models.SET_NULL, null=True, related_name="+")
    made_at = models.DateTimeField(auto_now_add=True)

    class Meta:
        """Each decision once."""

        constraints = (
            models.UniqueConstraint(fields=["client", "decision_id"], name="each_decision_once"),
        )
        ordering = ("id",)
