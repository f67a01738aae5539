"""Files of a week: to print, to fill in, for a calendar."""

from __future__ import annotations

from datetime import date
from typing import get_args
from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from setwright.handout.export import Format
from setwright.web import trail
from setwright.web.clock import today
from setwright.web.engine.folder import intake_text
from setwright.web.security.access import Who, myself, open_to, own_client, who_am_i
from setwright.web.sharing.printed import TYPES, handout_file
from setwright.web.views.share import own_week


@open_to(Who.COACH)
@require_safe
def handout(request: HttpRequest, client: UUID, monday: date, kind: str) -> HttpResponse:
    """A file of a week for the client, or with `?for=coach` for the coach."""
    week = own_week(request, client, monday)
    assert week.current is not None
    reader = request.GET.get("for", "client")
    if reader not in ("client", "coach"):
        raise Http404
    person = own_client(request, client)
    file = handout_file(
        week.current.text,
        intake_text(person),
        _format(kind),
        "coach" if reader == "coach" else "client",
        monday,
    )
    trail.note(who_am_i(request), person, "took a handout", f"week {monday}, {kind}")
    return _download(*file, _format(kind))


@open_to(Who.CLIENT)
@require_safe
def own(request: HttpRequest, kind: str) -> HttpResponse:
    """The week in force, for the client who is signed in."""
    me, day = myself(request), today()
    week = me.weeks.filter(sent__isnull=False, starts__lte=day).select_related("sent").last()
    if week is None or week.sent is None:
        raise Http404
    file = handout_file(week.sent.text, intake_text(me), _format(kind), "client", day)
    trail.note(who_am_i(request), me, "took a handout", f"week {week.starts}, {kind}")
    return _download(*file, _format(kind))


def _format(kind: str) -> Format:
    for one in get_args(Format):
        if one == kind:
            found: Format = one
            return found
    raise Http404


def _download(content: bytes, name: str, kind: Format) -> HttpResponse:
    answer = HttpResponse(content, content_type=TYPES[kind])
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    answer["Cache-Control"] = "private, no-store"
    return answer
