"""How to go on in a week under way after a session was missed."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.exercises import catalogue
from setwright.training.attended import attended
from setwright.training.facts.week import Facts
from setwright.training.missed import catch_up
from setwright.training.proposals.model import Expected, Proposal, proposal_id

KIND = "catch up"
RANK = 25


def propose(facts: Facts) -> Iterator[Proposal]:
    """What to move, add or drop for the rest of this week; next week's plan stays."""
    if facts.plan is None or not facts.under_way:
        return
    client = facts.client
    done = attended(facts.plan, client.past, facts.monday.toordinal())
    # The day looked at is over: what was planned for it and not done is missed.
    found = catch_up(facts.plan, facts.intake, done, client.day + 1)
    if found is None:
        return
    steps = [
        f"{one.session} of {one.from_day.capitalize()} on {one.to_day.capitalize()}"
        for one in found.moves
    ]
    steps += [
        f"{catalogue.exercise(one.exercise).name}, {one.sets} sets, in {one.session}"
        for one in found.added
    ]
    steps += [f"without {one.session} of {one.day.capitalize()}" for one in found.drops]
    missed = [
        one.session for one in facts.sessions if one.done_on is None and one.planned_on <= facts.day
    ]
    subject = ", ".join(missed)
    yield Proposal(
        proposal_id(KIND, subject, facts.monday),
        KIND,
        subject,
        f"This week: {'; '.join(steps)}",
        {},
        (f"Missed so far this week: {subject}.",),
        Expected(words=f"Keeps {found.kept:.0%} of the week's expected growth."),
        "What was missed stays out; one week with less work loses little.",
        found.evidence,
        float(len(missed)),
        RANK,
    )
