"""Decisions kept, the next week's plan that follows from them, and its going out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from django.db import transaction
from django.utils import timezone
from pydantic import JsonValue

from setwright.plan.client_folder import ClientFolder
from setwright.plan.log_store import line_of
from setwright.plan.week import Plan
from setwright.training.decisions import Choice, Decided, pick, settle
from setwright.training.review import Review
from setwright.web import trail
from setwright.web.board import history
from setwright.web.coach.content import Content, content_of
from setwright.web.engine.folder import plan_of
from setwright.web.models import Account, Client, DecisionEntry, Week

CARRIED_ON = "as the week before"


class ChangedMeanwhileError(Exception):
    """Something the coach's page stood on was changed meanwhile; nothing was done."""


@dataclass(frozen=True)
class Answer:
    """What the coach says to a proposal.

    Attributes:
        proposal: id.
        choice: the coach's.
        change: fields changed, for an edit.
        because: the reason.
        instead: in place of an earlier decision.
    """

    proposal: str
    choice: Choice
    change: Mapping[str, JsonValue]
    because: str = ""
    instead: bool = False


def open_until(monday: date) -> date:
    """Last day on which a week can still shape the next one: that week's Sunday."""
    return monday + timedelta(13)


def week_after(client: Client, monday: date) -> Week | None:
    """The week after one, with its versions; None while there is none."""
    rows = client.weeks.select_related("current", "sent")
    return rows.filter(starts=monday + timedelta(7)).first()


def plan_on_board(week: Week | None) -> Plan | None:
    """The plan on the board of a week, sent or not."""
    return None if week is None or week.current is None else plan_of(week.current.text)


def decide(
    client: Client, found: Review, content: Content, answer: Answer, who: Account, at: datetime
) -> Decided:
    """Keep a decision, and put what it changes on the next week's board.

    Args:
        client: whose.
        found: the review that made the proposal.
        content: of the client, that the review was computed from.
        answer: the coach's.
        who: the coach.
        at: by the clock on the wall.

    Raises:
        DocumentError: when it was decided before, or the change does not fit.
        ChangedMeanwhileError: when another decision came in between.
    """
    proposal = pick(found, answer.proposal)
    with transaction.atomic():
        Client.objects.select_for_update().get(pk=client.pk)
        now = content_of(client)
        if (now.intake, now.decisions) != (content.intake, content.decisions):
            raise ChangedMeanwhileError
        monday = found.facts.monday
        week = week_after(client, monday)
        change = answer.change if answer.choice == "edit" else None
        written = plan_on_board(week)
        done = settle(
            found, proposal, answer.choice, at, written, change, answer.because, answer.instead
        )
        if done.plan is not None:
            week = week or Week.objects.create(client=client, starts=monday + timedelta(7))
            base = None if week.current is None else week.current.number
            history.put(week, base, who, done.plan, f"decided: {proposal.title}")
        DecisionEntry.objects.create(
            client=client,
            decision_id=done.decision.id,
            text=line_of(done.decision),
            made_by=who,
        )
        trail.note(who, client, "decided", f"week {monday} proposal {proposal.id}")
    return done


def send(
    client: Client, folder: ClientFolder, monday: date, expected: int | None, who: Account
) -> Week:
    """Let the week after one go out: the client sees it from now on.

    Where nothing was put on its board, the plan in force goes on.

    Args:
        client: whose.
        folder: as the engine knows the client.
        monday: of the week before.
        expected: number of the version that the coach saw; None when there was none.
        who: the coach.

    Raises:
        ChangedMeanwhileError: when the board shows another version by now.
        ValueError: when there is no plan to send.
    """
    starts = monday + timedelta(7)
    with transaction.atomic():
        Client.objects.select_for_update().get(pk=client.pk)
        week = week_after(client, monday)
        number = None if week is None or week.current is None else week.current.number
        if number != expected:
            raise ChangedMeanwhileError
        if week is None or week.current is None:
            plan = folder.plan_on(monday)
            if plan is None:
                raise ValueError("no plan to send")
            week = week or Week.objects.create(client=client, starts=starts)
            week.current = history.put(week, None, who, plan, CARRIED_ON).version
        if week.sent_id != week.current.pk:
            week.sent = week.current
            week.sent_at = timezone.now()
            week.save(update_fields=["sent", "sent_at"])
            trail.note(who, client, "sent", f"week {starts} v{week.current.number}")
    return week
