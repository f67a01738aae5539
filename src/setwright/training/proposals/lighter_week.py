"""A lighter week, where the log gives a reason for one."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from setwright.plan.week import Plan
from setwright.training.agreed import LIGHTER_WEEK
from setwright.training.block import EASE_RIR, EASE_SETS
from setwright.training.facts.week import Facts
from setwright.training.proposals.changing import Change, monday_in
from setwright.training.proposals.model import Expected, Proposal, proposal_id

# With strength falling or pain, and by the calendar alone.
RANK, RANK_CALENDAR = 20, 45
# Weeks done to no more than this share were light already.
LIGHT_SHARE = 0.6
LIGHT_WEEKS = 2
SOURCES = (
    "deload-survey-2024",
    "deload-week-off-trial-2024",
    "deload-reduced-volume-untrained-2026",
)


def propose(facts: Facts) -> Iterator[Proposal]:
    """A lighter week next week when the log asks for one."""
    if not facts.ease.due or facts.client.block.eased_on(facts.client.day):
        return
    by_calendar = not facts.ease.falling and not facts.ease.painful
    recent = facts.kept[-LIGHT_WEEKS:]
    if by_calendar and any(one.done_sets <= LIGHT_SHARE * one.planned_sets for one in recent):
        return
    following = facts.monday + timedelta(7)
    yield Proposal(
        proposal_id(LIGHTER_WEEK, "week", facts.monday),
        LIGHTER_WEEK,
        "week",
        f"Next week lighter: {EASE_SETS:.0%} of the sets, {EASE_RIR:g} repetitions further from "
        "failure",
        {"week": following.isoformat()},
        facts.ease.because,
        Expected(words="One such week costs next to no growth; strength lost to fatigue returns."),
        "Loads are held where strength falls; the question comes back when more speaks for it.",
        facts.ease.evidence,
        float(len(facts.ease.falling) + len(facts.ease.painful)) + facts.ease.days / 100,
        RANK_CALENDAR if by_calendar else RANK,
    )


def applied(plan: Plan, change: Change, _: object) -> Plan:
    """The plan as it is: the week agreed on is lighter by the block, and the next one is not."""
    monday_in(change, "week")
    return plan
