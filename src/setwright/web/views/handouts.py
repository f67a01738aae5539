"""Files of a week: to print, to fill in, for a calendar, to teach from."""

from __future__ import annotations

from datetime import date
from typing import get_args
from uuid import UUID

from django.http import Http404, HttpRequest, HttpResponse
from django.views.decorators.http import require_safe

from setwright.handout.export import Format
from setwright.handout.teaching.export import Format as Explained
from setwright.web import trail
from setwright.web.clock import today
from setwright.web.engine.folder import intake_text
from setwright.web.security.access import Who, myself, open_to, own_client, who_am_i
from setwright.web.sharing.printed import EXPLAINED_TYPES, TYPES, explained_file, handout_file
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
    return _download(*file, TYPES[_format(kind)])


@open_to(Who.COACH)
@require_safe
def explained(request: HttpRequest, client: UUID, monday: date, shape: str) -> HttpResponse:
    """The week explained: a page or two, or with `?depth=full` every criterion."""
    week = own_week(request, client, monday)
    assert week.current is not None
    depth = request.GET.get("depth", "short")
    if depth not in ("short", "full"):
        raise Http404
    kind = _shape(shape)
    person = own_client(request, client)
    file = explained_file(
        week.current.text,
        intake_text(person),
        kind,
        "full" if depth == "full" else "short",
        monday,
    )
    trail.note(who_am_i(request), person, "took the explanation", f"week {monday}, {kind}, {depth}")
    return _download(*file, EXPLAINED_TYPES[kind])


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
    return _download(*file, TYPES[_format(kind)])


def _format(kind: str) -> Format:
    for one in get_args(Format):
        if one == kind:
            found: Format = one
            return found
    raise Http404


def _shape(shape: str) -> Explained:
    for one in EXPLAINED_TYPES:
        if one == shape:
            return one
    raise Http404


def _download(content: bytes, name: str, media_type: str) -> HttpResponse:
    answer = HttpResponse(content, content_type=media_type)
    answer["Content-Disposition"] = f'attachment; filename="{name}"'
    answer["Cache-Control"] = "private, no-store"
    return answer
