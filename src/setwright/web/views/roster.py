"""The roster: every client, and what needs a decision."""

from __future__ import annotations

from uuid import UUID

from django.contrib import messages
from django.db.models import QuerySet
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_POST, require_safe

from setwright.web import trail
from setwright.web.clock import today
from setwright.web.coach.roster_rows import HEADINGS, Row, rows
from setwright.web.forms.client import NewClientForm
from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i

# A page is answered after about so long; what is not computed by then comes in the next answers,
# which a script asks for.
BUDGET_S, NEXT_BUDGET_S = 0.25, 1.0


@open_to(Who.COACH)
@require_safe
def roster(request: HttpRequest) -> HttpResponse:
    """Clients of the coach who is signed in; only the list when a script asks for it."""
    coach = who_am_i(request)
    archived = "archived" in request.GET
    words = request.GET.get("q", "").strip()[:60]
    found = rows(_wanted(coach.clients.all(), words, archived), today(), _budget(request))
    trail.note_roster(coach)
    context = {
        "groups": _grouped(found),
        "waiting": [row for row in found if row.standing is None],
        "shown": len(found),
        "q": words,
        "archived": archived,
        "others": coach.clients.filter(archived_at__isnull=archived).count(),
        "form": NewClientForm(),
    }
    part = request.headers.get("HX-Target") == "clients"
    return render(request, "coach/roster_list.html" if part else "coach/roster.html", context)


@open_to(Who.COACH)
@require_POST
def add(request: HttpRequest) -> HttpResponse:
    """A new client; the intake comes next."""
    coach = who_am_i(request)
    form = NewClientForm(request.POST)
    if not form.is_valid():
        return render(request, "coach/client_add.html", {"form": form}, status=422)
    client = Client.objects.create(
        organisation=coach.organisation, coach=coach, name=form.cleaned_data["name"]
    )
    trail.note(coach, client, "added the client")
    return redirect("intake", client=client.uuid)


@open_to(Who.COACH)
@require_POST
def archive(request: HttpRequest, client: UUID) -> HttpResponse:
    """Put a client away; nothing is lost, and the phone no longer opens."""
    found = own_client(request, client)
    if found.archived_at is None:
        found.archived_at = timezone.now()
        found.save(update_fields=["archived_at"])
        trail.note(who_am_i(request), found, "archived the client")
    messages.success(request, f"{found.name} is archived.")
    return redirect("roster")


@open_to(Who.COACH)
@require_POST
def restore(request: HttpRequest, client: UUID) -> HttpResponse:
    """Bring an archived client back."""
    found = own_client(request, client)
    if found.archived_at is not None:
        found.archived_at = None
        found.save(update_fields=["archived_at"])
        trail.note(who_am_i(request), found, "restored the client")
    messages.success(request, f"{found.name} is on the roster again.")
    return redirect("client", client=found.uuid)


def _wanted(clients: QuerySet[Client], words: str, archived: bool) -> list[Client]:
    clients = clients.filter(archived_at__isnull=not archived).order_by("name")
    return list(clients.filter(name__icontains=words) if words else clients)


def _budget(request: HttpRequest) -> float | None:
    if "all" in request.GET:
        return None
    return NEXT_BUDGET_S if request.headers.get("HX-Request") else BUDGET_S


def _grouped(found: list[Row]) -> list[tuple[str, list[Row]]]:
    done = [row for row in found if row.standing is not None]
    groups = (
        (words, [row for row in done if row.group == name]) for name, words in HEADINGS.items()
    )
    return [(words, some) for words, some in groups if some]
