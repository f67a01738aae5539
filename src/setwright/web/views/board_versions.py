"""Versions of a week: listed, compared, put back."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.views.decorators.http import require_POST, require_safe

from setwright.anatomy.atlas import part
from setwright.audit.compare import compare
from setwright.handout.compare_text import sentences
from setwright.handout.remark_words import subject_words
from setwright.web import trail
from setwright.web.board import history
from setwright.web.board.differences import differences
from setwright.web.engine.folder import plan_of
from setwright.web.models import PlanVersion, Week
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.views.board_page import intake_for, week_of


@open_to(Who.COACH)
@require_safe
def versions(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Every version of a week, the newest first."""
    week = week_of(request, client, monday)
    trail.note(who_am_i(request), week.client, "saw", f"week {monday} versions")
    rows = week.versions.select_related("made_by", "parent").order_by("-number")
    context = {"client": week.client, "week": week, "rows": rows}
    return render(request, "board/versions.html", context)


@open_to(Who.COACH)
@require_safe
def compared(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Two versions beside each other."""
    week = week_of(request, client, monday)
    first, second = _version(week, request.GET.get("a")), _version(week, request.GET.get("b"))
    trail.note(who_am_i(request), week.client, "saw", f"week {monday} versions compared")
    plans = plan_of(first.text), plan_of(second.text)
    found = compare(*plans, intake_for(week.client))
    names = f"version {first.number}", f"version {second.number}"
    context = {
        "client": week.client,
        "week": week,
        "first": first,
        "second": second,
        "found": found,
        "sentences": sentences(found, *names),
        "changes": differences(*plans),
        "parts": [(part(one.part).name, one) for one in found.parts],
        "remarks": [(subject_words(one.subject), one) for one in found.remarks],
    }
    return render(request, "board/compare.html", context)


@open_to(Who.COACH)
@require_POST
def put_back(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """An earlier version on the board again, as a new one."""
    week = week_of(request, client, monday)
    wanted = _version(week, request.POST.get("version"))
    base = week.current.number if week.current else None
    plan, said = plan_of(wanted.text), f"as in version {wanted.number}"
    made = history.put(week, base, who_am_i(request), plan, said)
    if made.current:
        messages.success(request, f"The board shows the week {said}.")
    else:
        messages.warning(request, "The week was changed meanwhile; look at it first.")
    return redirect("board", week.client_id, week.starts)


def _version(week: Week, number: str | None) -> PlanVersion:
    found = None
    if number and number.isdecimal() and len(number) < 6:
        found = week.versions.select_related("made_by").filter(number=int(number)).first()
    if found is None:
        raise Http404
    return found
