"""Everything of a person: taken out as an archive, read back, erased."""

from __future__ import annotations

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.utils import timezone
from django.views.decorators.http import require_http_methods, require_safe

from setwright.documents.errors import DocumentError
from setwright.web import trail
from setwright.web.forms.sharing import ArchiveForm, EraseForm
from setwright.web.models import Client
from setwright.web.security.access import Who, myself, open_to, own_client, who_am_i
from setwright.web.sharing.archive import archive_of, folder_name
from setwright.web.sharing.erasing import erase as erase_all
from setwright.web.sharing.importing import keep
from setwright.web.sharing.reading import read_archive


@open_to(Who.COACH)
@require_safe
def documents(request: HttpRequest, client: UUID) -> HttpResponse:
    """What there is of a client, and what can be done with it."""
    found = own_client(request, client)
    context = {"client": found, "weeks": found.weeks.filter(current__isnull=False)}
    return render(request, "sharing/documents.html", context)


@open_to(Who.COACH)
@require_safe
def archive(request: HttpRequest, client: UUID) -> HttpResponse:
    """Everything of a client as one file."""
    found = own_client(request, client)
    trail.note(who_am_i(request), found, "exported", "everything")
    return _download(found)


@open_to(Who.CLIENT)
@require_safe
def own_archive(request: HttpRequest) -> HttpResponse:
    """Everything kept of the client who is signed in; not the coach's own notes."""
    me = myself(request)
    trail.note(who_am_i(request), me, "exported", "everything")
    me.notes = ""
    return _download(me)


@open_to(Who.COACH)
@require_http_methods(["GET", "HEAD", "POST"])
def import_archive(request: HttpRequest) -> HttpResponse:
    """A new client out of an archive."""
    if request.method != "POST":
        return render(request, "sharing/import.html", {"form": ArchiveForm()})
    form = ArchiveForm(request.POST, request.FILES)
    if form.is_valid():
        file = form.cleaned_data["file"]
        try:
            archived = read_archive(file.read(), file.name)
        except DocumentError as error:
            for line in str(error).splitlines()[:20]:
                form.add_error("file", line)
        else:
            coach = who_am_i(request)
            client = keep(archived, coach, timezone.now())
            trail.note(coach, client, "imported", "an archive")
            return redirect("client", client.uuid)
    return render(request, "sharing/import.html", {"form": form}, status=422)


@open_to(Who.COACH)
@require_http_methods(["GET", "HEAD", "POST"])
def erase(request: HttpRequest, client: UUID) -> HttpResponse:
    """Erase a client for good, once the name has been typed."""
    found = own_client(request, client)
    if request.method != "POST":
        return render(request, "sharing/erase.html", {"client": found, "form": EraseForm(found)})
    form = EraseForm(found, request.POST)
    if not form.is_valid():
        return render(request, "sharing/erase.html", {"client": found, "form": form}, status=422)
    clean = erase_all(found, who_am_i(request))
    messages.success(request, ERASED if clean else f"{ERASED} {LATER}")
    return redirect("roster")


ERASED = "Erased: every row, and what stood in the database's files. Older backups still hold it."
LATER = "Others were at work meanwhile; the last traces in the files go when the server stops."


def _download(client: Client) -> HttpResponse:
    now = timezone.now()
    answer = HttpResponse(archive_of(client, now), content_type="application/zip")
    name = f"{folder_name(client)}-{now:%Y-%m-%d}.zip"
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    answer["Cache-Control"] = "private, no-store"
    return answer
