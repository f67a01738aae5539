"""Who saw and changed what."""

from __future__ import annotations

from django.db import models

from setwright.web.models.accounts import Organisation


class TrailEntry(models.Model):
    """One look at or change of a person's data; kept when the person is erased, without a name.

    Attributes:
        who: uuid of the account, or what acted (`share link`, `command line`).
        client: uuid of the client it was about.
        what: `saw` or a change, in a word or two.
    """

    organisation = models.ForeignKey(Organisation, on_delete=models.CASCADE, related_name="+")
    at = models.DateTimeField(auto_now_add=True, db_index=True)
    who = models.CharField(max_length=60)
    client = models.CharField(max_length=36, blank=True, db_index=True)
    what = models.CharField(max_length=60)
    detail = models.CharField(max_length=200, blank=True)
