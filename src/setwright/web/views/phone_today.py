"""The client's day: the page, the plain forms on it, and what its script asks for."""

from __future__ import annotations

import json
import uuid
from datetime import datetime
from typing import Any

from django.http import HttpRequest, HttpResponse, HttpResponseBadRequest, JsonResponse
from django.middleware.csrf import get_token
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from setwright.web import trail
from setwright.web.engine.append import Appended, append_records
from setwright.web.engine.folder import folder_of
from setwright.web.models import Client
from setwright.web.phone.clock import COOKIE, wall_clock
from setwright.web.phone.day import Day, day_of
from setwright.web.phone.document import document, table_of, tables
from setwright.web.phone.lines import besides, lines
from setwright.web.phone.plain_form import FieldError, record_of_form
from setwright.web.security.access import Who, myself, open_to, who_am_i
from setwright.web.views.phone_join import SESSION_S

# A session has some thirty sets; a phone that was long without a network has a few sessions.
MOST_RECORDS = 500


@open_to(Who.CLIENT)
@require_safe
def today(request: HttpRequest) -> HttpResponse:
    """The session of today, or what comes next."""
    account, client = who_am_i(request), myself(request)
    if request.session.get_expiry_age() < SESSION_S / 2:
        request.session.set_expiry(SESSION_S)
    trail.note(account, client, "saw", "today")
    return _page(request, client)


@open_to(Who.CLIENT)
@require_POST
def log_record(request: HttpRequest) -> HttpResponse:
    """One record from a plain form."""
    client = myself(request)
    now = _now(request)
    day = _day(client, now)
    unit = "kg" if day is None else day.plan.unit
    data = request.POST.dict()
    try:
        record = record_of_form(data, request.POST.getlist("symptoms"), now, unit)
    except FieldError as error:
        return _page(request, client, str(error), data)
    if client.log.filter(record_id=record["id"]).exists():
        # The button was pressed twice.
        return redirect("today")
    kept = _keep(request, client, [record])
    if kept.refused:
        return _page(request, client, "; ".join(kept.refused[0].why), data)
    return redirect(f"{reverse('today')}#{data.get('place') or 'main'}")


@open_to(Who.CLIENT)
@require_POST
def sync(request: HttpRequest) -> HttpResponse:
    """Records that waited on a phone; only those that are answered for may leave it."""
    client = myself(request)
    try:
        sent = json.loads(request.body)
        records, person = sent["records"], sent["person"]
    except (ValueError, TypeError, KeyError, RecursionError):
        return HttpResponseBadRequest("records and person were expected")
    if not isinstance(records, list) or len(records) > MOST_RECORDS:
        return HttpResponseBadRequest(f"at most {MOST_RECORDS} records were expected")
    if person != str(who_am_i(request).uuid):
        return JsonResponse({"error": "another person is signed in"}, status=409)
    kept = _keep(request, client, records)
    return JsonResponse(
        {
            "accepted": kept.accepted,
            "known": kept.known,
            "refused": [{"id": one.id, "why": list(one.why)} for one in kept.refused],
        }
    )


@open_to(Who.CLIENT)
@require_safe
def day_document(request: HttpRequest) -> HttpResponse:
    """The session document with its tables, for a phone that may soon be without a network."""
    day = _day(myself(request), _now(request))
    found: dict[str, Any] = {**_person(request), "document": None, "tables": {}}
    if day is not None:
        found |= {"document": document(day), "tables": tables(day)}
    return _private(JsonResponse(found))


@open_to(Who.CLIENT)
@require_safe
def next_set(request: HttpRequest) -> HttpResponse:
    """The next set of one exercise of today, from the sets so far, and the table after it."""
    exercise = request.GET.get("exercise", "")
    day = _day(myself(request), _now(request))
    if day is None:
        return JsonResponse({}, status=404)
    places = document(day)["now"]["places"] if day.now is not None else []
    works = [one["other"] if one["done_as"] else one["own"] for one in places]
    found = next((one for one in works if one["exercise"] == exercise), None)
    if found is None:
        return JsonResponse({}, status=404)
    answer = {
        "exercise": exercise,
        "first": found["first"],
        "rows": table_of(day, exercise),
        "records": [one.id for one in day.records],
        "symptoms": list(day.symptoms),
    }
    return _private(JsonResponse(answer))


def _keep(request: HttpRequest, client: Client, records: list[Any]) -> Appended:
    account = who_am_i(request)
    kept = append_records(client, records, account)
    if kept.accepted:
        trail.note(account, client, "logged", f"{len(kept.accepted)} records")
    return kept


def _now(request: HttpRequest) -> datetime:
    return wall_clock(request.COOKIES.get(COOKIE))


def _day(client: Client, now: datetime) -> Day | None:
    folder = folder_of(client)
    return None if folder is None else day_of(folder, now.date())


def _person(request: HttpRequest) -> dict[str, str]:
    return {"person": str(who_am_i(request).uuid), "csrf": get_token(request)}


def _private(response: JsonResponse) -> JsonResponse:
    response["Cache-Control"] = "no-store"
    return response


def _page(
    request: HttpRequest, client: Client, wrong: str = "", typed: dict[str, Any] | None = None
) -> HttpResponse:
    """The page; with what was wrong and what was typed, when a form was not in order."""
    now = _now(request)
    day = _day(client, now)
    context: dict[str, Any] = {
        **_person(request),
        "client": client,
        "today": now.date(),
        "wrong": wrong,
        "typed": typed or {},
        "day": None,
        "logged": [],
        "besides": [],
    }
    if day is not None:
        logged = lines(day.records, day.plan.unit)
        context |= {"day": document(day), "logged": logged, "besides": besides(day, logged)}
    context["fresh_id"] = uuid.uuid4
    response = render(request, "phone/today.html", context, status=422 if wrong else 200)
    response["X-Day"] = now.date().isoformat()
    return response
