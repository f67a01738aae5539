"""Who saw and changed what."""

from __future__ import annotations

from uuid import UUID

from django.core.paginator import Paginator
from django.db.models import QuerySet
from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_safe

from setwright.web.models import Client, TrailEntry
from setwright.web.security.access import Who, open_to, own_client, who_am_i
from setwright.web.trail import names_of

A_PAGE = 100


@open_to(Who.COACH)
@require_safe
def of_client(request: HttpRequest, client: UUID) -> HttpResponse:
    """The trail of one client, for the coach."""
    found = own_client(request, client)
    entries = TrailEntry.objects.filter(client=str(found.uuid))
    return _page(request, entries, {"client": found})


@open_to(Who.OWNER)
@require_safe
def of_all(request: HttpRequest) -> HttpResponse:
    """The trail of the whole organisation, for the owner."""
    return _page(
        request, TrailEntry.objects.filter(organisation=who_am_i(request).organisation), {}
    )


def _page(
    request: HttpRequest, entries: QuerySet[TrailEntry], context: dict[str, object]
) -> HttpResponse:
    shown = Paginator(entries.order_by("-id"), A_PAGE).get_page(request.GET.get("page"))
    people = names_of(shown)
    about = {one.client for one in shown if one.client}
    clients = {
        str(u): n for u, n in Client.objects.filter(uuid__in=about).values_list("uuid", "name")
    }
    rows = [
        (one, people.get(one.who, "an account that is gone" if "-" in one.who else one.who),
         clients.get(one.client, "someone erased" if one.client else ""))
        for one in shown
    ]  # fmt: skip
    return render(request, "sharing/trail.html", {**context, "rows": rows, "page": shown})
