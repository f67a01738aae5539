"""What an action of the board answers: the fresh board, a refusal, or what happened meanwhile."""

from __future__ import annotations

from typing import Any

from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse

from setwright.web.forms.board import OrderForm
from setwright.web.models import PlanVersion, Week
from setwright.web.views.board_page import Shown, board_page, intake_for, plan_for, week_of
from setwright.web.views.board_panels import panel_of


def anew(request: HttpRequest, week: Week, said: str, query: str = "") -> HttpResponse:
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


def refused(request: HttpRequest, week: Week, form: OrderForm, error: str) -> HttpResponse:
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


def stale(
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
