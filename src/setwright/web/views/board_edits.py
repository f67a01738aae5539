"""Edits of the board: orders, undo and redo, locks, and the week sent to the client."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Any
from uuid import UUID

from django.contrib import messages
from django.db import transaction
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.utils import timezone
from django.views.decorators.http import require_POST

from setwright.plan.week import Plan
from setwright.web import trail
from setwright.web.board import history, locks
from setwright.web.board.changing import EditError
from setwright.web.board.days import first_plan
from setwright.web.board.orders import Done, carry_out
from setwright.web.forms.board import FORMS, AddSessionForm, OrderForm, PrescribeForm
from setwright.web.models import PlanVersion, Week
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.views.board_page import Shown, board_page, intake_for, plan_for, week_of
from setwright.web.views.board_panels import panel_of


@open_to(Who.COACH)
@require_POST
def edit(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """One edit: a new version, or a word on why not."""
    week = week_of(request, client, monday)
    do = request.POST.get("do", "")
    if week.current is None and do == "add-session":
        return _first(request, week)
    plan = plan_for(week)
    form = FORMS.get(do, OrderForm)(request.POST)
    if isinstance(form, PrescribeForm) and plan is not None:
        form.unit = plan.unit
    if do not in FORMS or plan is None or not form.is_valid():
        return _refused(request, week, form, "Something typed is not in order.")
    order, intake = form.order(do), intake_for(week.client)
    done: list[Done] = []

    def change(before: Plan) -> tuple[Plan, str]:
        done.append(carry_out(order, before, intake))
        return done[-1].plan, done[-1].said

    try:
        made = history.edit(week, form.cleaned_data["base"], who_am_i(request), change)
    except EditError as fault:
        return _refused(request, week, form, str(fault))
    except PlanVersion.DoesNotExist:
        return _refused(request, week, form, "That version is not there. Reload the page.")
    if not made.current:
        return _stale(request, week, made.since, made.version)
    return _after(request, week, done[-1])


def _first(request: HttpRequest, week: Week) -> HttpResponse:
    """The first session of an empty week."""
    form = AddSessionForm({**request.POST.dict(), "base": "1"})
    if not form.is_valid():
        return _refused(request, week, form, "Choose a day and an exercise.")
    intake = intake_for(week.client)
    try:
        plan = first_plan(
            f"A week for {week.client.name}",
            week.client.name,
            form.cleaned_data["day"],
            form.cleaned_data["new"],
            intake,
        )
    except EditError as fault:
        return _refused(request, week, form, str(fault))
    made = history.put(week, None, who_am_i(request), plan, "the first session")
    if not made.current:
        return _stale(request, week, made.since, made.version)
    return _after(request, week, Done(plan, "The first session is there.", session=0))


def _after(request: HttpRequest, week: Week, done: Done) -> HttpResponse:
    """The board after an edit, open where it was made."""
    query = ""
    if done.at is not None:
        query = f"?at={done.at.session}.{done.at.position}"
    elif done.session is not None:
        query = f"?session={done.session}"
    return _anew(request, week, done.said, query)


def _anew(request: HttpRequest, week: Week, said: str, query: str = "") -> HttpResponse:
    """The board as it stands now: a page to go to, or its fresh part for a script."""
    address = reverse("board", args=(week.client_id, week.starts)) + query
    if not request.htmx:  # type: ignore[attr-defined]
        messages.success(request, said)
        return redirect(address)
    fresh = week_of(request, week.client_id, week.starts)
    asked = dict([query[1:].split("=")]) if query else {}
    panel = panel_of(fresh, plan_for(fresh), intake_for(fresh.client), asked)
    response = board_page(request, fresh, Shown(panel, said))
    response["HX-Replace-Url"] = address
    return response


def _refused(request: HttpRequest, week: Week, form: OrderForm, error: str) -> HttpResponse:
    """The board with what was typed and why it was not done."""
    panel = panel_of(week, plan_for(week), intake_for(week.client), _asked(request), form, error)
    return board_page(request, week, Shown(panel, error, 422))


def _asked(request: HttpRequest) -> dict[str, str]:
    """What was open when an order was sent."""
    posted = request.POST
    if posted.get("at"):
        return {"at": posted["at"]}
    if posted.get("do") == "add-session":
        return {"add": ""}
    return {"session": posted["session"]} if posted.get("session") else {}


def _stale(
    request: HttpRequest,
    week: Week,
    since: tuple[PlanVersion, ...],
    kept: PlanVersion | None = None,
) -> HttpResponse:
    """409: someone changed the week meanwhile; what was asked is kept and can be done anew."""
    fresh = week_of(request, week.client_id, week.starts)
    again = [(key, value) for key, value in request.POST.items()
             if key not in ("base", "csrfmiddlewaretoken")]  # fmt: skip
    context: dict[str, Any] = {
        "client": fresh.client,
        "week": fresh,
        "since": since,
        "kept": kept,
        "again": again,
        "version": fresh.current,
        "action": request.path,
    }
    htmx = bool(request.htmx)  # type: ignore[attr-defined]
    name = "board/stale_part.html" if htmx else "board/stale.html"
    response = render(request, name, context, status=409)
    if htmx:
        response["HX-Retarget"], response["HX-Reswap"] = "#notice", "innerHTML"
    return response


def _step(
    request: HttpRequest,
    client: UUID,
    monday: date,
    take: Callable[[Week, int, Any], PlanVersion | None],
    words: tuple[str, str],
) -> HttpResponse:
    week = week_of(request, client, monday)
    base = request.POST.get("base", "")
    try:
        taken = take(week, int(base) if base.isdecimal() else 0, who_am_i(request))
    except history.StaleError as stale:
        return _stale(request, week, stale.since)
    return _anew(request, week, f"{words[0]}: {taken.what}" if taken else words[1])


@open_to(Who.COACH)
@require_POST
def undo(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Take the last edit back."""
    return _step(request, client, monday, history.undo, ("Undone", "There is nothing to undo."))


@open_to(Who.COACH)
@require_POST
def redo(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Do again what was taken back last."""
    return _step(request, client, monday, history.redo, ("Done again", "Nothing was undone."))


@open_to(Who.COACH)
@require_POST
def lock(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Lock an exercise against a new design, or unlock it; all at once without a key."""
    week = week_of(request, client, monday)
    plan = plan_for(week)
    there = locks.keys(plan) if plan else set()
    wanted = {request.POST["key"]} & there if "key" in request.POST else there
    on = request.POST.get("on") == "yes"
    with transaction.atomic():
        now = history.held(week)
        kept = set(now.locked) & there
        now.locked = sorted(kept | wanted if on else kept - wanted)
        now.save(update_fields=["locked"])
        trail.note(who_am_i(request), now.client, "changed", f"week {monday} locks")
    at = request.POST.get("at", "")
    said = f"{'Locked' if on else 'Unlocked'}: {len(wanted)}"
    return _anew(request, week, said, f"?at={at}" if at else "")


@open_to(Who.COACH)
@require_POST
def send(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Give the client the version that the coach looked at."""
    week = week_of(request, client, monday)
    who, base = who_am_i(request), request.POST.get("base", "")
    with transaction.atomic():
        now = history.held(week)
        current = now.current
        if current is None or str(current.number) != base:
            number = int(base) if base.isdecimal() else 0
            return _stale(request, week, history.since(now, number))
        now.sent, now.sent_at = current, timezone.now()
        now.save(update_fields=["sent", "sent_at"])
        trail.note(who, now.client, "sent", f"week {monday} version {current.number}")
    return _anew(request, week, f"{week.client.name} has version {base} now.")
