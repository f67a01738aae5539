"""The week in review: what was done, what it shows, and the proposals decided one by one."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Any, get_args
from uuid import UUID

from django.contrib import messages
from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import redirect, render
from django.urls import reverse
from django.views.decorators.http import require_POST, require_safe

from setwright.documents.errors import DocumentError
from setwright.handout.log_text import exercise_words
from setwright.handout.proposal_text import difference_sentences
from setwright.plan.client_folder import ClientFolder
from setwright.training.decisions import Choice, pick
from setwright.training.review import Review, week_to_review
from setwright.web import trail
from setwright.web.clock import today, wall_clock
from setwright.web.coach import entered_twice, next_week
from setwright.web.coach.changes import LABELS, read_change
from setwright.web.coach.chosen import exercise_names
from setwright.web.coach.compared import compared_with
from setwright.web.coach.content import Content, content_of
from setwright.web.coach.next_week import Answer, ChangedMeanwhileError
from setwright.web.coach.proposal_cards import cards
from setwright.web.coach.reviewed import after_decision, review_of
from setwright.web.coach.roster_rows import LOOKED_AT
from setwright.web.coach.since import reported_since
from setwright.web.coach.week_page import week_page
from setwright.web.engine.folder import folder_of
from setwright.web.models import Client
from setwright.web.security.access import Who, open_to, own_client, who_am_i

MEANWHILE = "Something was changed meanwhile. This is how it stands now; nothing was overwritten."


@dataclass(frozen=True)
class _Sent:
    """What became of a form that was sent.

    Attributes:
        proposal: id, of one that was refused.
        said: what it said.
        errors: why, by field.
        wrong: why, as a whole.
        done: id of a proposal that was decided.
    """

    proposal: str = ""
    said: Mapping[str, str] = field(default_factory=dict)
    errors: Mapping[str, str] = field(default_factory=dict)
    wrong: str = ""
    done: str = ""


@open_to(Who.COACH)
@require_safe
def review_page(request: HttpRequest, client: UUID) -> HttpResponse:
    """The review of one week: by default of the last one whose sessions all lie behind."""
    found = own_client(request, client)
    content, folder = _known(found)
    if folder is None:
        return render(request, "coach/review_none.html", {"client": found})
    monday = _asked(request) or week_to_review(folder, today())
    reviewed = review_of(folder, content, monday, today())
    trail.note(who_am_i(request), found, "saw", f"{LOOKED_AT}{monday}")
    context = _context(found, content, folder, reviewed, _Sent())
    return render(request, "coach/review.html", context)


@open_to(Who.COACH)
@require_POST
def decide(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """A proposal accepted, edited or declined."""
    found = own_client(request, client)
    if monday > today():
        raise Http404
    content, folder = _known(found)
    if folder is None:
        return redirect("intake", client=found.uuid)
    reviewed = review_of(folder, content, monday, today())
    if today() > next_week.open_until(monday):
        over = _Sent(wrong="The week after this one is over: nothing is left to decide here.")
        return _again(request, found, monday, over, 422)
    said = {name: str(value) for name, value in request.POST.items()}
    try:
        answer = _answer(reviewed, said)
        next_week.decide(found, reviewed, content, answer, who_am_i(request), wall_clock())
    except ChangedMeanwhileError:
        sent = _Sent(said.get("proposal", ""), said, {}, MEANWHILE)
        return _again(request, found, monday, sent, 409)
    except DocumentError as error:
        sent = _Sent(said.get("proposal", ""), said, _words(error))
        if sent.proposal not in {one.id for one in reviewed.proposals}:
            sent = _Sent(wrong="That proposal is not there any more. This is how it stands now.")
        return _again(request, found, monday, sent, 422)
    now, decided = _known(found)
    assert decided is not None
    after_decision(reviewed, content, decided, now)
    if request.headers.get("HX-Request"):
        return _again(request, found, monday, _Sent(done=answer.proposal), 200)
    return redirect(f"{_address(found, monday)}#proposals")


@open_to(Who.COACH)
@require_POST
def send(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Let the next week go out."""
    found = own_client(request, client)
    if monday > today():
        raise Http404
    folder = folder_of(found)
    if folder is None:
        return redirect("intake", client=found.uuid)
    if today() > next_week.open_until(monday):
        over = _Sent(wrong="That week is over: it cannot go out any more.")
        return _again(request, found, monday, over, 422)
    expected = request.POST.get("version", "")
    number = int(expected) if expected.isdecimal() and len(expected) < 10 else None
    try:
        week = next_week.send(found, folder, monday, number, who_am_i(request))
    except ChangedMeanwhileError:
        return _again(request, found, monday, _Sent(wrong=MEANWHILE), 409)
    except ValueError:
        wrong = "There is no plan to send yet. Make one on the board first."
        return _again(request, found, monday, _Sent(wrong=wrong), 422)
    messages.success(request, f"The week of {week.starts:%d %B} is out.".replace(" 0", " "))
    return redirect(f"{_address(found, monday)}#next-week")


@open_to(Who.COACH)
@require_POST
def strike(request: HttpRequest, client: UUID, monday: date) -> HttpResponse:
    """Take back one of the sets that were entered twice."""
    found = own_client(request, client)
    if monday > today():
        raise Http404
    record = request.POST.get("record", "")
    struck = entered_twice.strike(found, record, who_am_i(request), wall_clock())
    if struck is None:
        messages.error(request, "That set stands in the log once by now. Nothing was struck.")
    else:
        words = f"{exercise_words(struck.exercise)}, set {struck.number}"
        messages.success(request, f"Struck: {words} of {struck.at:%A at %H:%M}.")
    return redirect(_address(found, monday))


def _words(error: DocumentError) -> dict[str, str]:
    """What is wrong, by field."""
    return {
        fault.field: f"{LABELS.get(fault.field, 'This')}: found {fault.found}. "
        f"Allowed: {fault.allowed}."
        for fault in error.faults
    }


def _answer(reviewed: Review, said: Mapping[str, str]) -> Answer:
    wanted = said.get("choice", "")
    choice: Choice = next((one for one in get_args(Choice) if one == wanted), "decline")
    proposal = pick(reviewed, said.get("proposal", ""))
    if proposal.id in reviewed.decided and "instead" not in said:
        raise ChangedMeanwhileError
    change = read_change(proposal, reviewed.facts.plan, said) if choice == "edit" else {}
    because = said.get("because", "").strip()[:500]
    return Answer(proposal.id, choice, change, because, "instead" in said)


def _again(
    request: HttpRequest, client: Client, monday: date, sent: _Sent, status: int
) -> HttpResponse:
    """The page as it stands now, with what was typed; only its lower part for a script."""
    content, folder = _known(client)
    assert folder is not None
    reviewed = review_of(folder, content, monday, today())
    part = bool(request.headers.get("HX-Request"))
    context = _context(client, content, folder, reviewed, sent, whole=not part)
    template = "coach/review_decisions.html" if part else "coach/review.html"
    return render(request, template, context, status=status)


def _context(
    client: Client,
    content: Content,
    folder: ClientFolder,
    reviewed: Review,
    sent: _Sent,
    whole: bool = True,
) -> dict[str, Any]:
    monday = reviewed.facts.monday
    week = next_week.week_after(client, monday)
    plan = next_week.plan_on_board(week)
    comparison = compared_with(folder, monday, plan)
    rows = cards(reviewed, sent.proposal, sent.said, sent.errors)
    context: dict[str, Any] = {
        "client": client,
        "monday": monday,
        "cards": rows,
        "undecided": sum(card.decision is None for card in rows),
        "just": sent.done,
        "exercises": exercise_names() if any(card.fields for card in rows) else (),
        "may_decide": today() <= next_week.open_until(monday),
        "wrong": sent.wrong,
        "following": monday + timedelta(7),
        "week": week,
        "as_sent": week is not None
        and week.sent_id is not None
        and week.sent_id == week.current_id,
        "differs": difference_sentences(comparison) if comparison is not None else [],
        "has_plan": plan is not None or folder.plan_on(monday) is not None,
    }
    if whole:
        context |= {
            "page": week_page(reviewed),
            "since": reported_since(folder, content, monday, today(), reviewed.facts.symptoms),
            "before": monday - timedelta(7) if folder.plan_on(monday - timedelta(7)) else None,
            "after": monday + timedelta(7) if monday + timedelta(7) <= today() else None,
        }
    return context


def _known(client: Client) -> tuple[Content, ClientFolder | None]:
    """The client's content, read first: what is kept under it is then never older than it."""
    content = content_of(client)
    return content, folder_of(client)


def _asked(request: HttpRequest) -> date | None:
    """Monday of the week asked for; None for none, or for what is no day or lies ahead."""
    try:
        day = date.fromisoformat(request.GET.get("week", ""))
    except ValueError:
        return None
    return day - timedelta(day.weekday()) if day <= today() else None


def _address(client: Client, monday: date) -> str:
    return f"{reverse('review', kwargs={'client': client.uuid})}?week={monday}"
