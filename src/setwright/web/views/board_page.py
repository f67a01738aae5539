"""The board rendered: whole, or the part of it that a script asked for."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date
from typing import Any
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, render

from setwright.plan.intake import DAYS, Intake
from setwright.plan.week import Plan
from setwright.web.board import locks
from setwright.web.board.columns import columns_of
from setwright.web.board.dose import dose_of
from setwright.web.board.effect import effect_of
from setwright.web.board.figures import report_of
from setwright.web.board.jobs import outcome_of
from setwright.web.board.remarks import remarks_of
from setwright.web.engine.folder import intake_of, intake_text, plan_of
from setwright.web.models import Client, PlanVersion, Week
from setwright.web.security.access import own_client
from setwright.web.views.board_panels import Panel, no_panel


@dataclass(frozen=True)
class Shown:
    """What is shown beside the bare board.

    Attributes:
        panel: the exercise or session looked at.
        said: what was just done, for the live region.
        status: of the answer.
    """

    panel: Panel = field(default_factory=no_panel)
    said: str = ""
    status: int = 200


def week_of(request: HttpRequest, client: UUID, monday: date) -> Week:
    """A week of a client of the coach who is signed in.

    Raises:
        Http404: when it is not there, or somebody else's.
    """
    found = Week.objects.select_related("current", "sent", "client", "current__parent")
    return get_object_or_404(found, client=own_client(request, client), starts=monday)


def intake_for(client: Client) -> Intake | None:
    """The intake that counts; None before the first."""
    text = intake_text(client)
    return None if text is None else intake_of(text)


def plan_for(week: Week) -> Plan | None:
    """The plan on the board; None while the week is empty."""
    return plan_of(week.current.text) if week.current else None


def board_page(request: HttpRequest, week: Week, shown: Shown | None = None) -> HttpResponse:
    """Render the board: its panel alone when a script asked for that."""
    shown = shown or Shown()
    context = context_of(week, shown)
    htmx = bool(getattr(request, "htmx", False))
    target = getattr(request.htmx, "target", None) if htmx else None  # type: ignore[attr-defined]
    name = "board/board.html"
    if htmx:
        name = "board/panel.html" if target in ("panel", "hits") else "board/work.html"
    response = render(request, name, context, status=shown.status)
    if htmx and shown.status == 422:
        response = render(request, "board/panel.html", context, status=422)
        response["HX-Retarget"], response["HX-Reswap"] = "#panel", "innerHTML"
    return response


def context_of(week: Week, shown: Shown) -> dict[str, Any]:
    """What the templates of the board need."""
    job = week.jobs.order_by("-begun_at").first()
    context: dict[str, Any] = {
        "client": week.client,
        "week": week,
        "version": week.current,
        "panel": shown.panel,
        "all_days": DAYS,
        "said": shown.said,
        "undo": week.current if week.current and week.current.parent_id else None,
        "redo": PlanVersion.objects.filter(pk=week.undone[-1]).first() if week.undone else None,
        "job": job,
        "outcome": outcome_of(job),
    }
    plan = plan_for(week)
    if plan is not None:
        intake = intake_for(week.client)
        report = report_of(plan, intake)
        locked = locks.keys(plan) & set(week.locked)
        before = week.current.parent if week.current else None
        old = plan_of(before.text) if before else None
        context |= {
            "plan": plan,
            "effect": effect_of(week.current.what, (old, report_of(old, intake)), (plan, report))
            if old and week.current
            else None,
            "board": columns_of(plan, report, locked),
            "dose": dose_of(report, intake),
            "remarks": remarks_of(report),
            "locked": len(locked),
        }
    return context
