"""The coach's notes, saved; never over what was written meanwhile."""

from __future__ import annotations

from uuid import UUID

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST

from setwright.web import trail
from setwright.web.forms.notes import MOST, NotesForm, state_of
from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i
from setwright.web.views.client import client_context


@open_to(Who.COACH)
@require_POST
def save(request: HttpRequest, client: UUID) -> HttpResponse:
    """Save the notes, or show both versions when they were changed meanwhile."""
    found = own_client(request, client)
    form = NotesForm(request.POST)
    if not form.is_valid():
        wrong = f"Notes hold up to {MOST:,} characters. Nothing was saved."
        return _again(request, found, str(request.POST.get("notes", "")), wrong, 422)
    notes, state = form.cleaned_data["notes"], form.cleaned_data["state"]
    with transaction.atomic():
        now = Client.objects.select_for_update().get(pk=found.pk)
        if state_of(now.notes) != state and now.notes != notes:
            wrong = "The notes were changed meanwhile. Put together what shall stay, then save."
            return _again(request, now, notes, wrong, 409)
        if now.notes != notes:
            now.notes = notes
            now.save(update_fields=["notes"])
            trail.note(who_am_i(request), now, "changed", "notes")
    messages.success(request, "The notes are saved.")
    return redirect(f"{reverse('client', kwargs={'client': found.uuid})}#notes")


def _again(
    request: HttpRequest, client: Client, notes: str, wrong: str, status: int
) -> HttpResponse:
    context = client_context(request, client)
    context |= {"notes": notes, "notes_wrong": wrong, "notes_now": client.notes}
    return render(request, "coach/client.html", context, status=status)
