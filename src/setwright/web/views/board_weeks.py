"""Weeks of a client: listed, and begun from a design, a copy, a file, or nothing."""

from __future__ import annotations

import base64
from typing import Any
from uuid import UUID

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_http_methods

from setwright.documents.errors import DocumentError
from setwright.handout.plan_import_text import candidate_words
from setwright.handout.wording import heading
from setwright.plan.shorthand import format_entry
from setwright.web import trail
from setwright.web.board import new_week
from setwright.web.board.imported import Imported, fault_words, imported
from setwright.web.clock import today
from setwright.web.engine.folder import intake_text
from setwright.web.forms.weeks import ImportForm, NewWeekForm
from setwright.web.models import Client, Week
from setwright.web.security.access import Who, open_to, own_client, who_am_i

THERE = "That week is there already; this is it."


@open_to(Who.COACH)
@require_http_methods(["GET", "POST"])
def weeks(request: HttpRequest, client: UUID) -> HttpResponse:
    """Every week of a client, and a new one."""
    found = own_client(request, client)
    form = NewWeekForm(request.POST or None, initial=_initial(found))
    if request.method == "POST" and form.is_valid():
        return _begun(request, found, form)
    if request.method == "GET":
        trail.note(who_am_i(request), found, "saw", "weeks")
    return _page(request, found, form, ImportForm(initial=_initial(found)))


def _begun(request: HttpRequest, client: Client, form: NewWeekForm) -> HttpResponse:
    source, plan, said = form.cleaned_data["source"], None, ""
    if source == "copy":
        earlier = client.weeks.filter(uuid__in=_uuids(request.POST.get("of", ""))).first()
        plan = new_week.copied(earlier) if earlier else None
        if earlier is None or plan is None:
            form.add_error("source", "Choose a week with a plan in it.")
            return _page(request, client, form, ImportForm(initial=_initial(client)))
        said = f"a copy of the week of {earlier.starts}"
    if source == "design" and intake_text(client) is None:
        form.add_error("source", "There is no intake yet to design from.")
        return _page(request, client, form, ImportForm(initial=_initial(client)))
    starts = form.cleaned_data["starts"]
    week, made = new_week.begin(client, starts, who_am_i(request), plan, said)
    if not made:
        messages.warning(request, THERE)
    to = "board-design" if source == "design" and made else "board"
    return redirect(to, client.uuid, week.starts)


@open_to(Who.COACH)
@require_http_methods(["POST"])
def import_week(request: HttpRequest, client: UUID) -> HttpResponse:
    """Show what was understood of a file; take it as a week when the coach says so."""
    found = own_client(request, client)
    form = ImportForm(request.POST, request.FILES)
    if not form.is_valid():
        return _page(request, found, NewWeekForm(initial=_initial(found)), form)
    data, name = form.cleaned_data["data"], form.cleaned_data["name"]
    answers = {
        place.removeprefix("answer "): words.strip()
        for place, words in request.POST.items()
        if place.startswith("answer ") and isinstance(words, str) and words.strip()
    }
    try:
        read = imported(data, name, form.cleaned_data["unit"] or None, answers)
    except DocumentError as error:
        for words in fault_words(error):
            form.add_error(None, words)
        return _page(request, found, NewWeekForm(initial=_initial(found)), form)
    if request.POST.get("take") == "yes" and read.plan is not None:
        said = f"imported from {name}"
        starts = form.cleaned_data["starts"]
        week, made = new_week.begin(found, starts, who_am_i(request), read.plan, said)
        if not made:
            messages.warning(request, THERE)
        return redirect("board", found.uuid, week.starts)
    return _preview(request, found, form, read, answers)


def _preview(
    request: HttpRequest,
    client: Client,
    form: ImportForm,
    read: Imported,
    answers: dict[str, str],
) -> HttpResponse:
    context = {
        "client": client,
        "form": form,
        "read": read,
        "answers": answers,
        "attention": [
            (piece, [candidate_words(one) for one in piece.candidates]) for piece in read.attention
        ],
        "sessions": [
            (heading(one), [format_entry(entry, read.plan.unit) for entry in one.exercises])
            for one in read.plan.sessions
        ]
        if read.plan
        else [],
        "held": base64.b64encode(form.cleaned_data["data"]).decode(),
        "name": form.cleaned_data["name"],
    }
    return render(request, "board/preview.html", context)


def _page(
    request: HttpRequest, client: Client, form: NewWeekForm, importing: ImportForm
) -> HttpResponse:
    rows = client.weeks.select_related("current", "sent").order_by("-starts")
    context: dict[str, Any] = {
        "client": client,
        "weeks": rows,
        "form": form,
        "importing": importing,
        "has_intake": intake_text(client) is not None,
    }
    status = 422 if form.errors or importing.errors else 200
    return render(request, "board/weeks.html", context, status=status)


def _initial(client: Client) -> dict[str, Any]:
    last: Week | None = client.weeks.order_by("-starts").first()
    source = "copy" if last and last.current_id else "design"
    return {"starts": new_week.next_monday(client, today()), "source": source}


def _uuids(text: str) -> list[UUID]:
    try:
        return [UUID(text)]
    except ValueError:
        return []
