"""The intake as a form."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any
from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from setwright.plan.intake import Intake
from setwright.plan.limits import clearance
from setwright.web import trail
from setwright.web.coach.chosen import choices_of_intake
from setwright.web.coach.intakes import SavedMeanwhileError, differences, keep, latest
from setwright.web.engine.folder import intake_of
from setwright.web.forms.intake import NEVER_DIAGNOSES, PersonForm
from setwright.web.forms.intake_document import read_form
from setwright.web.forms.intake_initial import initial_of
from setwright.web.forms.intake_rows import ROWS, Rows, formsets
from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i


@open_to(Who.COACH)
@require_http_methods(["GET", "HEAD", "POST"])
def intake(request: HttpRequest, client: UUID) -> HttpResponse:
    """The form of the intake; sent, it is kept as a new version."""
    found = own_client(request, client)
    if request.method != "POST":
        now = latest(found)
        trail.note(who_am_i(request), found, "saw", "intake")
        filled = {"name": found.name} if now is None else None
        return show_form(request, found, None if now is None else intake_of(now.text), filled)
    more = request.POST.get("more", "")
    person, rows = PersonForm(request.POST), formsets(request.POST, {}, more)
    if more in ROWS:
        return _page(request, found, _unjudged(request), rows, 200)
    read = read_form(person, rows)
    if read is None:
        return _page(request, found, person, rows, 422)
    try:
        version = keep(found, person.cleaned_data["base"] or 0, who_am_i(request), read)
    except SavedMeanwhileError as error:
        # From here on it is a change of their version, made with open eyes.
        sent = request.POST.copy()
        sent["base"] = str(error.version.number)
        found_differences = differences(intake_of(error.version.text), read)
        meanwhile = {"version": error.version, "differences": found_differences}
        return _page(request, found, PersonForm(sent), rows, 409, meanwhile)
    return saved(request, found, read, version.number)


def show_form(
    request: HttpRequest,
    client: Client,
    shown: Intake | None,
    filled: Mapping[str, Any] | None = None,
) -> HttpResponse:
    """The form, with an intake in it that need not have been saved."""
    now = latest(client)
    person, rows = initial_of(shown) if shown is not None else (dict(filled or {}), {})
    person["base"] = 0 if now is None else now.number
    return _page(request, client, PersonForm(initial=person), formsets(None, rows), 200)


def saved(request: HttpRequest, client: Client, kept: Intake, number: int) -> HttpResponse:
    """On to the client's page, with what the screening asks for."""
    messages.success(request, f"The intake is saved (version {number}).")
    wanted = clearance(kept)
    if wanted is not None:
        words = (
            f"Before the first session a licensed professional should clear training: "
            f"{wanted.because}."
        )
        messages.warning(request, words)
    return redirect("client", client=client.uuid)


def _unjudged(request: HttpRequest) -> PersonForm:
    """The person as typed, not yet checked."""
    return PersonForm(initial=request.POST.dict())


def _page(
    request: HttpRequest,
    client: Client,
    person: PersonForm,
    rows: Mapping[str, Rows],
    status: int,
    meanwhile: Mapping[str, Any] | None = None,
) -> HttpResponse:
    context = {
        "client": client,
        "person": person,
        "rows": rows,
        "versions": client.intakes.select_related("made_by").order_by("-number"),
        "never_diagnoses": NEVER_DIAGNOSES,
        "meanwhile": meanwhile,
        "problems": _problems(person, rows) if status == 422 else [],
        **choices_of_intake(),
    }
    return render(request, "coach/intake.html", context, status=status)


def _problems(person: PersonForm, rows: Mapping[str, Rows]) -> list[tuple[str, str, str]]:
    """Id, label and words of every field at fault, in the order of the page."""
    found = [("", "", str(words)) for words in person.non_field_errors()]
    for form in (person, *(row for some in rows.values() for row in some)):
        for field in form:
            anchor = f"{field.id_for_label or field.auto_id}"
            found += [(anchor, str(field.label), str(words)) for words in field.errors]
    return found
