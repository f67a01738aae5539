"""Logs, reviews and decisions."""

from __future__ import annotations

import json
from dataclasses import asdict
from datetime import date, timedelta
from typing import Annotated, Any
from uuid import UUID

from django.http import Http404, HttpRequest
from ninja import Router, Status
from pydantic import Field

from setwright.documents.plain_data import plain
from setwright.handout.review_data import review_data
from setwright.training.review import week_to_review
from setwright.web import trail
from setwright.web.api.schemas import (
    AppendedOut,
    Conflict,
    DecidedOut,
    DecisionIn,
    LogIn,
    LogOut,
    Problem,
)
from setwright.web.clock import today, wall_clock
from setwright.web.coach.content import content_of
from setwright.web.coach.next_week import Answer, ChangedMeanwhileError, decide
from setwright.web.coach.reviewed import review_of
from setwright.web.engine.append import append_records
from setwright.web.engine.folder import folder_of
from setwright.web.security.access import own_client, who_am_i

router = Router(tags=["log"])
A_PAGE = 1000
Place = Annotated[int, Field(ge=0, le=2**62)]


@router.get("/{uuid:client}/log", response={200: LogOut, 404: Problem})
def get_log(request: HttpRequest, client: UUID, after: Place = 0) -> dict[str, object]:
    """Records that came after a place, at most 1000; `next_after` is the place to go on from."""
    found = own_client(request, client)
    rows = list(found.log.filter(id__gt=after).values_list("id", "text")[:A_PAGE])
    trail.note(who_am_i(request), found, "saw", "log, by a program")
    return {
        "records": [json.loads(text) for _, text in rows],
        "next_after": rows[-1][0] if rows else after,
    }


@router.post("/{uuid:client}/log", response={200: AppendedOut, 404: Problem})
def append_log(request: HttpRequest, client: UUID, sent: LogIn) -> dict[str, object]:
    """Add records. One that is at fault does not hold up the others; sent twice is kept once."""
    found, coach = own_client(request, client), who_am_i(request)
    appended = append_records(found, sent.records, coach)
    if appended.accepted:
        trail.note(coach, found, "logged", f"{len(appended.accepted)} records, by a program")
    return asdict(appended)


@router.get("/{uuid:client}/review", response={200: dict[str, Any], 404: Problem})
def get_review(request: HttpRequest, client: UUID, week: date | None = None) -> Any:
    """The review of a week: any day of it, or without one the last whose sessions lie behind."""
    found = own_client(request, client)
    folder = folder_of(found)
    if folder is None:
        raise Http404
    monday = _monday(week_to_review(folder, today()) if week is None else week)
    trail.note(who_am_i(request), found, "saw", f"review of {monday}, by a program")
    return plain(review_data(review_of(folder, content_of(found), monday, today())))


@router.get("/{uuid:client}/decisions", response={200: list[dict[str, Any]], 404: Problem})
def get_decisions(request: HttpRequest, client: UUID) -> list[dict[str, Any]]:
    """Every decision, in the order they were taken."""
    found = own_client(request, client)
    return [json.loads(text) for text in found.decisions.values_list("text", flat=True)]


@router.post(
    "/{uuid:client}/decisions",
    response={201: DecidedOut, 404: Problem, 409: Conflict, 422: Problem},
)
def add_decision(request: HttpRequest, client: UUID, sent: DecisionIn) -> Status[object]:
    """Decide on a proposal of a review; what it changes goes on the next week's board."""
    found = own_client(request, client)
    folder, content = folder_of(found), content_of(found)
    if folder is None:
        raise Http404
    reviewed = review_of(folder, content, _monday(sent.week), today())
    answer = Answer(sent.proposal, sent.choice, sent.change, sent.because, sent.instead)
    try:
        done = decide(found, reviewed, content, answer, who_am_i(request), wall_clock())
    except ChangedMeanwhileError:
        return Status(
            409, {"detail": "the client's documents were changed meanwhile", "number": None}
        )
    return Status(201, {"decision": plain(done.decision), "plan": plain(done.plan)})


def _monday(day: date) -> date:
    """The Monday of a week, within the years that a log may tell of."""
    if not 1990 <= day.year <= 2100:
        raise Http404
    return day - timedelta(day.weekday())
