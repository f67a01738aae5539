"""A client's own answers, from the table of a form, into the intake's form."""

from __future__ import annotations

import binascii
from base64 import b64decode, b64encode
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_http_methods

from setwright.documents.errors import DocumentError
from setwright.plan.foreign.form import FormReading, read_form
from setwright.web import trail
from setwright.web.forms.intake_text import MOST, AnswersFileForm
from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i
from setwright.web.views.intake import show_form

ANSWER = "answer:"


@open_to(Who.COACH)
@require_http_methods(["GET", "HEAD", "POST"])
def from_answers(request: HttpRequest, client: UUID) -> HttpResponse:
    """Read a form; what is in doubt is asked, and the rest goes into the intake's form unsaved."""
    found = own_client(request, client)
    if request.method != "POST":
        return _page(request, found, AnswersFileForm())
    form = AnswersFileForm(request.POST, request.FILES)
    held = _held(request)
    if held is None and not form.is_valid():
        return _page(request, found, form, status=422)
    name, data = held or (form.cleaned_data["file"].name, form.cleaned_data["file"].read())
    said = {
        key.removeprefix(ANSWER): str(value).strip()
        for key, value in request.POST.items()
        if key.startswith(ANSWER) and str(value).strip()
    }
    try:
        reading = read_form(data, name, None, said)
    except DocumentError as error:
        form = AnswersFileForm()
        wrong = [f"Found {one.found}. Allowed: {one.allowed}." for one in error.faults]
        several = "person" if any("--answer person" in one for one in wrong) else ""
        wrong = [one.replace("--answer person=NAME, one of", "one of") for one in wrong]
        return _page(request, found, form, None, (name, data), wrong, several, 422)
    if "use" in request.POST and reading.intake is not None:
        trail.note(who_am_i(request), found, "read", "answers of a form")
        return show_form(request, found, reading.intake)
    return _page(request, found, AnswersFileForm(), reading, (name, data))


def _held(request: HttpRequest) -> tuple[str, bytes] | None:
    """The file that was sent before and travels with the page."""
    text = request.POST.get("held", "")
    if not text or "file" in request.FILES or len(text) > 2 * MOST:
        return None
    try:
        return str(request.POST.get("held_name", "form.csv"))[:200], b64decode(text, validate=True)
    except (binascii.Error, ValueError):
        return None


def _page(
    request: HttpRequest,
    client: Client,
    form: AnswersFileForm,
    reading: FormReading | None = None,
    file: tuple[str, bytes] | None = None,
    wrong: list[str] | None = None,
    several: str = "",
    status: int = 200,
) -> HttpResponse:
    context = {
        "client": client,
        "form": form,
        "reading": reading,
        "held_name": file[0] if file else "",
        "held": b64encode(file[1]).decode() if file else "",
        "wrong": wrong or [],
        "several": several,
    }
    return render(request, "coach/intake_import.html", context, status=status)
