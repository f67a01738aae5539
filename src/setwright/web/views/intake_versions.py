"""The intake as a document, and its versions."""

from __future__ import annotations

from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from setwright.documents.errors import DocumentError
from setwright.web import trail
from setwright.web.coach.intakes import SavedMeanwhileError, differences, keep_text, latest
from setwright.web.engine.folder import intake_of
from setwright.web.forms.intake_text import IntakeTextForm
from setwright.web.models import Account, Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i
from setwright.web.views.intake import saved


@open_to(Who.COACH)
@require_http_methods(["GET", "HEAD", "POST"])
def document(request: HttpRequest, client: UUID) -> HttpResponse:
    """The document itself, pasted or uploaded."""
    found = own_client(request, client)
    now = latest(found)
    if request.method != "POST":
        initial = {"text": now.text if now else "", "base": now.number if now else 0}
        return _text_page(request, found, IntakeTextForm(initial=initial), 200)
    form = IntakeTextForm(request.POST, request.FILES)
    if not form.is_valid():
        return _text_page(request, found, form, 422)
    return _keep_text(request, found, form, who_am_i(request))


def _keep_text(
    request: HttpRequest, client: Client, form: IntakeTextForm, who: Account
) -> HttpResponse:
    text = form.cleaned_data["document"]
    try:
        version = keep_text(client, form.cleaned_data["base"] or 0, who, text)
    except DocumentError as error:
        for fault in error.faults:
            place = "" if fault.line is None else f"Line {fault.line}: "
            what = f"{fault.field}: " if fault.field else ""
            form.add_error("text", f"{place}{what}found {fault.found}. Allowed: {fault.allowed}.")
        return _text_page(request, client, form, 422)
    except SavedMeanwhileError as error:
        again = {"text": text, "base": str(error.version.number)}
        form = IntakeTextForm(again)
        form.is_valid()
        words = (
            f"Version {error.version.number} was saved meanwhile; nothing was overwritten. It "
            "stands below. Save again to put yours in its place."
        )
        form.add_error(None, words)
        return _text_page(request, client, form, 409, error.version.text)
    return saved(request, client, intake_of(version.text), version.number)


def _text_page(
    request: HttpRequest, client: Client, form: IntakeTextForm, status: int, theirs: str = ""
) -> HttpResponse:
    context = {"client": client, "form": form, "theirs": theirs}
    return render(request, "coach/intake_text.html", context, status=status)


@open_to(Who.COACH)
@require_safe
def version(request: HttpRequest, client: UUID, number: int) -> HttpResponse:
    """One version as it was saved, and what it changed."""
    found = own_client(request, client)
    one = get_object_or_404(found.intakes.select_related("made_by"), number=number)
    now, before = latest(found), found.intakes.filter(number=number - 1).first()
    changes = differences(intake_of(before.text), intake_of(one.text)) if before else []
    trail.note(who_am_i(request), found, "saw", f"intake v{number}")
    context = {"client": found, "version": one, "now": now, "changes": changes, "before": before}
    return render(request, "coach/intake_version.html", context)


@open_to(Who.COACH)
@require_POST
def put_back(request: HttpRequest, client: UUID, number: int) -> HttpResponse:
    """An earlier version counts again, as a new one."""
    found = own_client(request, client)
    one = get_object_or_404(found.intakes, number=number)
    now = latest(found)
    try:
        kept = keep_text(found, now.number if now else 0, who_am_i(request), one.text)
    except (DocumentError, SavedMeanwhileError):
        messages.error(request, "That could not be done: the version that counts has changed.")
        return redirect("intake", client=found.uuid)
    return saved(request, found, intake_of(kept.text), kept.number)
