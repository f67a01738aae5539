"""The restart after a break: lighter and shorter, on purpose."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.training.after_break import EVIDENCE
from setwright.training.facts.week import Facts
from setwright.training.proposals.model import Expected, Proposal, proposal_id

KIND = "restart"
RANK = 15
# Most exercises of the plan: one alone that was left out for weeks is no break (common practice).
LEAST_SHARE = 0.5


def propose(facts: Facts) -> Iterator[Proposal]:
    """How the coming week restarts when most exercises come back from a break."""
    if facts.plan is None:
        return
    names = {entry.exercise for one in facts.plan.sessions for entry in one.exercises}
    known = [name for name in names if facts.client.past.outings.get(name)]
    if not facts.back or len(facts.back) < LEAST_SHARE * len(known):
        return
    _, back = max(facts.back, key=lambda row: (row[1].days_off, row[0]))
    yield Proposal(
        proposal_id(KIND, "week", facts.monday),
        KIND,
        "week",
        f"Restart next week: at most {back.most_share:.0%} of the loads, {back.sets_share:.0%} of "
        f"the sets, back in {back.weeks} weeks",
        {},
        (
            f"{back.days_off} days without training; {len(facts.back)} of {len(known)} exercises "
            f"come back from it, week {back.week} of {back.weeks}.",
        ),
        Expected(words="What was lost comes back in about half the time it was away."),
        "The sessions to come keep to the restart all the same; only plan and coach may differ.",
        EVIDENCE,
        float(back.days_off),
        RANK,
    )
