"""The roster: every client, and what needs a decision."""

from __future__ import annotations

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, who_am_i


@open_to(Who.COACH)
@require_safe
def roster(request: HttpRequest) -> HttpResponse:
    """Clients of the coach who is signed in."""
    clients = Client.objects.filter(coach=who_am_i(request), archived_at=None).order_by("name")
    return render(request, "coach/roster.html", {"clients": clients})
