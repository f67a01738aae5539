"""The week in review: facts, proposals, and what has been decided already."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from setwright.plan.client_folder import ClientFolder
from setwright.plan.decision import Decision
from setwright.plan.intake import DAYS
from setwright.training.agreed import eased_weeks, in_force
from setwright.training.client import client_on
from setwright.training.facts.week import Facts
from setwright.training.proposals.model import Proposal
from setwright.training.proposals.registry import proposals


@dataclass(frozen=True)
class Review:
    """One week of one client.

    Attributes:
        facts: what the log shows.
        proposals: for the time to come, most important first.
        decided: decisions on them, by the id of the proposal.
    """

    facts: Facts
    proposals: tuple[Proposal, ...]
    decided: Mapping[str, Decision]


def review(folder: ClientFolder, week: date, today: date | None = None) -> Review:
    """Review a week.

    Args:
        folder: of the client.
        week: any day of it.
        today: nothing later is looked at; by default the week's Sunday.
    """
    monday = week - timedelta(week.weekday())
    end = monday + timedelta(6)
    day = end if today is None else max(min(end, today), monday)
    facts = Facts(client_on(folder, day), monday, folder.plan_on(monday))
    decided = {one.proposal: one for one in in_force(folder.decisions)}
    found = proposals(facts)
    return Review(facts, found, {one.id: decided[one.id] for one in found if one.id in decided})


def with_decisions(found: Review, decisions: Sequence[Decision]) -> Review:
    """The review after further decisions on it, without computing it anew.

    A decision leaves the review of its week as it was: only the block of weeks may change.

    Args:
        found: the review.
        decisions: all of the client's, the new ones among them.
    """
    client = found.facts.client
    folder = replace(client.folder, decisions=tuple(decisions))
    block = replace(client.block, eased=eased_weeks(decisions))
    known = replace(client, folder=folder, block=block)
    held = {one.proposal: one for one in in_force(decisions)}
    return Review(
        Facts(known, found.facts.monday, found.facts.plan),
        found.proposals,
        {one.id: held[one.id] for one in found.proposals if one.id in held},
    )


def week_to_review(folder: ClientFolder, today: date) -> date:
    """Monday of the last week whose sessions all lie behind: this one once the last is due."""
    monday = today - timedelta(today.weekday())
    plan = folder.plan_on(monday)
    last = 6 if plan is None else max(DAYS.index(one.day) for one in plan.sessions)
    return monday if today >= monday + timedelta(last) else monday - timedelta(7)
