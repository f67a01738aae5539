"""The week board."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from setwright.web import trail
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.views.board_page import Shown, board_page, intake_for, plan_for, week_of
from setwright.web.views.board_panels import panel_of


@open_to(Who.COACH)
@require_safe
def board(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """A week of a client, with what is opened beside it."""
    week = week_of(request, client, monday)
    trail.note(who_am_i(request), week.client, "saw", f"week {monday}")
    panel = panel_of(week, plan_for(week), intake_for(week.client), request.GET.dict())
    return board_page(request, week, Shown(panel))
