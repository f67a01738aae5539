"""The page of one client, its pictures and its documents."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any
from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.cache import patch_cache_control
from django.views.decorators.http import require_safe

from setwright.web import trail
from setwright.web.clock import today
from setwright.web.coach import client_page, pictures
from setwright.web.coach.content import Content, content_of
from setwright.web.coach.documents import document, paths
from setwright.web.coach.history_days import history
from setwright.web.coach.reviewed import trained_on
from setwright.web.coach.roster_rows import arounds, standing_of
from setwright.web.engine.folder import folder_of
from setwright.web.forms.notes import state_of
from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i

DAYS_SHOWN = 12
PICTURES = {"strength": pictures.strength_svg, "done": pictures.done_svg}
# A week after which a picture's address has long changed.
KEPT_S = 7 * 24 * 3600


@open_to(Who.COACH)
@require_safe
def client_view(request: HttpRequest, client: UUID) -> HttpResponse:
    """Everything of a client on one page."""
    found = own_client(request, client)
    trail.note(who_am_i(request), found, "saw", "client page")
    return render(request, "coach/client.html", client_context(request, found))


def client_context(request: HttpRequest, client: Client) -> dict[str, Any]:
    """What the client's page shows."""
    content, day = content_of(client), today()
    folder = folder_of(client)
    around = arounds([client], day)[client.uuid]
    standing = standing_of(client, content, around, day)
    context: dict[str, Any] = {
        "client": client,
        "standing": standing,
        "around": around,
        "weeks": client_page.week_rows(content.weeks, day),
        "documents": paths(content),
        "notes": client.notes,
        "notes_state": state_of(client.notes),
        "monday": _board_week(content, day),
    }
    if folder is not None:
        trained = trained_on(folder, content, day)
        days = history(folder.log, folder.intake.unit, day)
        shown = days if "all" in request.GET else days[:DAYS_SHOWN]
        context |= {
            "intake": folder.intake,
            "about": client_page.about(folder.intake),
            "cautions": client_page.cautions(folder.intake),
            "coming": client_page.coming(folder, day, standing.trained),
            "strength": client_page.strength_rows(trained),
            "days": shown,
            "days_more": len(days) - len(shown),
            "picture": _stamp(content, day.toordinal()),
        }
    return context


@open_to(Who.COACH)
@require_safe
def picture(request: HttpRequest, client: UUID, name: str) -> HttpResponse:
    """A picture of the log as SVG."""
    found = own_client(request, client)
    content, draw = content_of(found), PICTURES.get(name)
    folder = folder_of(found)
    if folder is None or draw is None:
        raise Http404
    drawn = draw(trained_on(folder, content, today()), content, today())
    if not drawn:
        raise Http404
    response = HttpResponse(drawn, content_type="image/svg+xml")
    patch_cache_control(response, private=True, max_age=KEPT_S)
    return response


@open_to(Who.COACH)
@require_safe
def file(request: HttpRequest, client: UUID, path: str) -> HttpResponse:
    """One document, as the command line reads it."""
    found = own_client(request, client)
    text = document(found, path)
    if text is None:
        raise Http404
    trail.note(who_am_i(request), found, "exported", path)
    kind = "application/yaml" if path.endswith(".yaml") else "application/jsonl"
    name = path.rpartition("/")[2]
    return HttpResponse(
        text,
        content_type=f"{kind}; charset=utf-8",
        headers={"Content-Disposition": f'attachment; filename="{name}"'},
    )


def _board_week(content: Content, day: date) -> date:
    """The week that the board opens on: the one in force, a draft to come, or this one."""
    monday = day - timedelta(day.weekday())
    begun = [week.starts for week in content.weeks if week.starts <= day]
    return max(begun, default=min((week.starts for week in content.weeks), default=monday))


def _stamp(content: Content, day: int) -> str:
    """Changes when a picture of the log does."""
    return f"{content.intake}-{content.log}-{content.decisions}-{day}"
