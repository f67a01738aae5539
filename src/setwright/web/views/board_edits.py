"""Edits of the board: one order, one version."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.views.decorators.http import require_POST

from setwright.plan.week import Plan
from setwright.web.board import history
from setwright.web.board.changing import EditError
from setwright.web.board.days import first_plan
from setwright.web.board.orders import Done, carry_out
from setwright.web.forms.board import FORMS, AddSessionForm, OrderForm, PrescribeForm
from setwright.web.models import PlanVersion, Week
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.views.board_answers import anew, refused, stale
from setwright.web.views.board_page import intake_for, plan_for, week_of


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
        return refused(request, week, form, "Something typed is not in order.")
    order, intake = form.order(do), intake_for(week.client)
    done: list[Done] = []

    def change(before: Plan) -> tuple[Plan, str]:
        done.append(carry_out(order, before, intake))
        return done[-1].plan, done[-1].said

    try:
        made = history.edit(week, form.cleaned_data["base"], who_am_i(request), change)
    except EditError as fault:
        return refused(request, week, form, str(fault))
    except PlanVersion.DoesNotExist:
        return refused(request, week, form, "That version is not there. Reload the page.")
    if not made.current:
        return stale(request, week, made.since, made.version)
    return _after(request, week, done[-1])


def _first(request: HttpRequest, week: Week) -> HttpResponse:
    """The first session of an empty week."""
    form = AddSessionForm({**request.POST.dict(), "base": "1"})
    if not form.is_valid():
        return refused(request, week, form, "Choose a day and an exercise.")
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
        return refused(request, week, form, str(fault))
    made = history.put(week, None, who_am_i(request), plan, "the first session")
    if not made.current:
        return stale(request, week, made.since, made.version)
    return _after(request, week, Done(plan, "The first session is there.", session=0))


def _after(request: HttpRequest, week: Week, done: Done) -> HttpResponse:
    """The board after an edit, open where it was made."""
    query = ""
    if done.at is not None:
        query = f"?at={done.at.session}.{done.at.position}"
    elif done.session is not None:
        query = f"?session={done.session}"
    return anew(request, week, done.said, query)
