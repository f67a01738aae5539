"""Designs of a week: begun, followed, cancelled."""

from __future__ import annotations

from datetime import date
from uuid import UUID

from django import forms
from django.contrib import messages
from django.http import HttpRequest, HttpResponse
from django.shortcuts import get_object_or_404, redirect, render
from django.urls import reverse
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from setwright.exercises.catalogue import exercise
from setwright.web.board import jobs, locks
from setwright.web.models import DesignJob, Week
from setwright.web.security.access import Who, open_to, who_am_i
from setwright.web.views.board_page import intake_for, plan_for, week_of


class DesignForm(forms.Form):
    """How long the designer may search."""

    seconds = forms.FloatField(min_value=1, max_value=120, initial=10, label="Seconds to search")


@open_to(Who.COACH)
@require_http_methods(["GET", "POST"])
def design(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """What a design would keep and how long it may search; begun by a post."""
    week = week_of(request, client, monday)
    form = DesignForm(request.POST or None)
    if request.method == "POST" and form.is_valid():
        job = jobs.begin(week, who_am_i(request), form.cleaned_data["seconds"])
        if job is not None:
            return redirect("board", week.client_id, week.starts)
        form.add_error(None, jobs.NO_INTAKE)
    plan = plan_for(week)
    kept = locks.kept_part(plan, week.locked) if plan else None
    context = {
        "client": week.client,
        "week": week,
        "form": form,
        "version": week.current,
        "intake": intake_for(week.client),
        "kept": [
            (one.day.capitalize(), [exercise(entry.exercise).name for entry in one.exercises])
            for one in (kept.sessions if kept else ())
        ],
    }
    return render(request, "board/design.html", context, status=422 if form.errors else 200)


@open_to(Who.COACH)
@require_safe
def job(request: HttpRequest, client: UUID, monday: date, job: UUID) -> HttpResponse:
    """How far a design is; a script is sent to the board when it has ended."""
    week = week_of(request, client, monday)
    found = _job(week, job)
    jobs.lost(found)
    running = found.state == DesignJob.State.RUNNING
    if not request.htmx:  # type: ignore[attr-defined]
        return redirect("board", week.client_id, week.starts)
    context = {"client": week.client, "week": week, "job": found}
    response = render(request, "board/job.html", context)
    if not running:
        response["HX-Redirect"] = reverse("board", args=(week.client_id, week.starts))
    return response


@open_to(Who.COACH)
@require_POST
def cancel(request: HttpRequest, client: UUID, monday: date, job: UUID) -> HttpResponse:
    """End a design."""
    week = week_of(request, client, monday)
    jobs.cancel(_job(week, job))
    messages.info(request, "The design is cancelled. The week is as it was.")
    return redirect("board", week.client_id, week.starts)


def _job(week: Week, uuid: UUID) -> DesignJob:
    return get_object_or_404(week.jobs, pk=uuid)
