"""Every kind of proposal, and which of them reach the coach: few, ranked, without contradiction."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from datetime import timedelta
from typing import Final

from setwright.documents.errors import DocumentError
from setwright.plan.decision import Decision
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.training.agreed import LIGHTER_WEEK, in_force
from setwright.training.facts.week import Facts
from setwright.training.proposals import (
    coming_back,
    effort_talk,
    exchange,
    lighter_week,
    missed,
    professional,
    rest,
    sets,
    substitute,
    this_week,
)
from setwright.training.proposals.changing import Change, refuse
from setwright.training.proposals.guard import loads_sore_parts_more
from setwright.training.proposals.model import Proposal, proposal_id

Proposer = Callable[[Facts], Iterable[Proposal]]
Applier = Callable[[Plan, Change, Intake], Plan]

PROPOSERS: Final[tuple[Proposer, ...]] = (
    professional.propose,
    exchange.propose,
    coming_back.propose,
    lighter_week.propose,
    this_week.propose,
    missed.propose,
    sets.propose,
    rest.propose,
    effort_talk.propose,
)
APPLIERS: Final[Mapping[str, Applier]] = {
    exchange.KIND: substitute.applied,
    LIGHTER_WEEK: lighter_week.applied,
    missed.MOVE: missed.move_applied,
    missed.DROP: missed.drop_applied,
    sets.MORE: sets.applied,
    sets.FEWER: sets.applied,
    rest.KIND: rest.applied,
}
MOST = 6
# A decided proposal rests so many weeks, unless what speaks for it has grown by half.
QUIET_WEEKS = 4
GROWN = 1.5
# What a lighter week or a restart makes idle.
LATER: Final = frozenset({sets.MORE, sets.FEWER, rest.KIND})


def proposals(facts: Facts) -> tuple[Proposal, ...]:
    """Proposals for a week, most important first, none against another.

    Those already decided for this very week are among them, so that they can be shown as decided.
    """
    found = sorted(
        (one for propose in PROPOSERS for one in propose(facts)),
        key=lambda one: (one.rank, -one.weight, one.subject),
    )
    kept = [one for one in _agreeing(found) if not _rests(facts, one) and _allowed(facts, one)]
    return tuple(kept[:MOST])


def applied(plan: Plan, kind: str, change: Change, intake: Intake) -> Plan:
    """The plan after a change; a kind that changes no plan leaves it as it is.

    Raises:
        DocumentError: when the change does not fit the plan.
    """
    applier = APPLIERS.get(kind)
    return plan if applier is None else applier(plan, change, intake)


def check_change(kind: str, change: Change, own: Change) -> None:
    """Make sure that an edited change has the fields of the proposal's own and no others.

    Raises:
        DocumentError: when it has not.
    """
    if not own:
        raise refuse("change", dict(change), f"nothing to edit in a proposal to {kind}")
    for field in change:
        if field not in own:
            raise refuse(field, change[field], f"one of {', '.join(own)}")


def _agreeing(found: Iterable[Proposal]) -> Iterator[Proposal]:
    """Leave out what a more important proposal makes wrong or idle."""
    taken: list[Proposal] = []
    for one in found:
        kinds = {other.kind for other in taken}
        stops_all = any(
            other.kind == professional.KIND and other.weight >= professional.STOPS_ALL
            for other in taken
        )
        if stops_all and one.kind != professional.KIND:
            continue
        if {LIGHTER_WEEK, coming_back.KIND} & kinds and _waits(one):
            continue
        if one.kind == LIGHTER_WEEK and coming_back.KIND in kinds:
            continue
        if any(_clash(one, other) for other in taken):
            continue
        taken.append(one)
    return iter(taken)


def _waits(one: Proposal) -> bool:
    if one.kind == exchange.KIND:
        return one.rank == exchange.RANK_STALL
    return one.kind in LATER


def _clash(one: Proposal, other: Proposal) -> bool:
    """Both speak of the same exercise or session of the plan, or pull the same part two ways."""
    mine, theirs = _named(one), _named(other)
    return bool(mine & theirs) or (
        one.subject == other.subject and {one.kind, other.kind} == {sets.MORE, sets.FEWER}
    )


def _named(one: Proposal) -> set[str]:
    if one.kind not in APPLIERS or one.kind == LIGHTER_WEEK:
        return set()
    found = {str(one.change[key]) for key in ("exercise", "by") if one.change.get(key)}
    if one.kind == missed.DROP:
        found.add(str(one.change["session"]))
    if "session" in one.change and one.kind in (sets.MORE, sets.FEWER):
        found.add(str(one.change["session"]))
    return found


def _allowed(facts: Facts, one: Proposal) -> bool:
    """It can be applied, and nothing gets more where it hurts."""
    if facts.plan is None or one.kind not in APPLIERS:
        return True
    try:
        after = applied(facts.plan, one.kind, one.change, facts.intake)
    except DocumentError:
        return False
    return not loads_sore_parts_more(facts, facts.plan, after)


def _rests(facts: Facts, one: Proposal) -> bool:
    """Decided in the weeks before, and no more speaks for it now."""
    if one.kind == professional.KIND:
        return False
    known: dict[str, Decision] = {
        decision.proposal: decision for decision in in_force(facts.client.folder.decisions)
    }
    for back in range(1, QUIET_WEEKS + 1):
        earlier = proposal_id(one.kind, one.subject, facts.monday - timedelta(7 * back))
        decision = known.get(earlier)
        if decision is not None:
            return one.weight < GROWN * max(decision.weight, 1e-9)
    return False
