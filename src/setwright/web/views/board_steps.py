"""What is done to the week as a whole: undo and redo, locks, and sending it to the client."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from typing import Any
from uuid import UUID

from django.db import transaction
from django.http import HttpRequest, HttpResponse
from django.utils import timezone
from django.views.decorators.http import require_POST

from setwright.web import trail
from setwright.web.board import history, locks
from setwright.web.models import PlanVersion, Week
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.views.board_answers import anew, stale
from setwright.web.views.board_page import plan_for, week_of


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
    except history.StaleError as error:
        return stale(request, week, error.since)
    return anew(request, week, f"{words[0]}: {taken.what}" if taken else words[1])


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
    return anew(request, week, said, f"?at={at}" if at else "")


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
            return stale(request, week, history.since(now, number))
        now.sent, now.sent_at = current, timezone.now()
        now.save(update_fields=["sent", "sent_at"])
        trail.note(who, now.client, "sent", f"week {monday} version {current.number}")
    return anew(request, week, f"{week.client.name} has version {base} now.")
