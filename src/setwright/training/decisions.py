"""A proposal accepted, edited or declined, and the next week's plan that follows from it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Literal
from uuid import NAMESPACE_URL, uuid5

from pydantic import JsonValue

from setwright.audit.compare import Comparison, compare
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.yaml_io import write_text
from setwright.plan.client_folder import DECISIONS, PLANS, ClientFolder
from setwright.plan.decision import Decision
from setwright.plan.log_store import append_decision
from setwright.plan.read import is_yaml, read_plan
from setwright.plan.week import Plan
from setwright.plan.write import update_plan, write_plan
from setwright.training.agreed import in_force
from setwright.training.proposals.model import Proposal
from setwright.training.proposals.registry import applied, check_change
from setwright.training.review import Review

Choice = Literal["accept", "edit", "decline"]


@dataclass(frozen=True)
class Decided:
    """A decision and what it did.

    Attributes:
        decision: as kept.
        supersedes: the earlier decision on the same proposal, or None.
        plan: next week's plan, or None when no plan changed.
        path: file it was written to, or None.
        comparison: with the plan in force; None when no plan changed.
    """

    decision: Decision
    supersedes: Decision | None
    plan: Plan | None
    path: Path | None
    comparison: Comparison | None


def pick(found: Review, wanted: str) -> Proposal:
    """The proposal meant by its number on the printed review or by its id.

    Raises:
        DocumentError: when there is none.
    """
    for number, one in enumerate(found.proposals, start=1):
        if wanted in (str(number), one.id):
            return one
    offered = ", ".join(f"{n} ({one.id})" for n, one in enumerate(found.proposals, start=1))
    week = found.facts.monday.isoformat()
    allowed = f"one of {offered}" if offered else f"none: the week of {week} has no proposals"
    raise DocumentError("decide", (Fault("proposal", repr(wanted), allowed),))


def decide(
    found: Review,
    proposal: Proposal,
    choice: Choice,
    at: datetime,
    change: Mapping[str, JsonValue] | None = None,
    because: str = "",
    instead: bool = False,
) -> Decided:
    """Keep a decision in the client's folder, and write next week's plan when it changes it.

    The plan is written before the decision: a run cut off between the two leaves a proposal that
    is not decided, and deciding it again ends at the same plan.

    Raises:
        DocumentError: as ``settle``, and when a file cannot be written.
    """
    folder, week = found.facts.client.folder, found.facts.monday
    following = week + timedelta(7)
    written = dict(folder.plans).get(following)
    done = settle(found, proposal, choice, at, written, change, because, instead)
    if done.plan is not None:
        path = folder.path / PLANS / f"{following.isoformat()}.yaml"
        _write(folder, week, path, done.plan)
        done = replace(done, path=path)
    append_decision(folder.path / DECISIONS, done.decision)
    return done


def settle(
    found: Review,
    proposal: Proposal,
    choice: Choice,
    at: datetime,
    written: Plan | None,
    change: Mapping[str, JsonValue] | None = None,
    because: str = "",
    instead: bool = False,
) -> Decided:
    """What a decision is and does; nothing is kept.

    Args:
        found: the review that made the proposal.
        proposal: of it.
        choice: the coach's.
        at: moment of the decision.
        written: the plan that stands for the next week already, sent or not; None without one.
        change: fields to change of the proposal's own; for ``edit``.
        because: the coach's reason.
        instead: take the place of an earlier decision on the same proposal.

    Raises:
        DocumentError: when it was decided before, or the change does not fit.
    """
    folder, week = found.facts.client.folder, found.facts.monday
    earlier = found.decided.get(proposal.id)
    if earlier is not None and not instead:
        said = f"{_WORDS[earlier.choice]} on {earlier.at.date().isoformat()}"
        allowed = "a proposal that is open, or --instead to decide it anew"
        raise DocumentError("decide", (Fault(proposal.id, said, allowed),))
    decision = Decision(
        id=_id(proposal.id, at, len(folder.decisions)),
        at=at,
        week=week,
        proposal=proposal.id,
        kind=proposal.kind,
        subject=proposal.subject,
        weight=round(proposal.weight, 3),
        choice=choice,
        change=_change(proposal, choice, change),
        because=because,
    )
    plan = _next_plan(folder, week, decision, written)
    comparison = None
    if plan is not None:
        assert found.facts.plan is not None
        comparison = compare(found.facts.plan, plan, folder.intake)
    return Decided(decision, earlier, plan, None, comparison)


_WORDS = {"accept": "accepted", "edit": "accepted with changes", "decline": "declined"}


def _id(proposal: str, at: datetime, number: int) -> str:
    return str(uuid5(NAMESPACE_URL, f"setwright:{proposal}:{at.isoformat()}:{number}"))


def _change(
    proposal: Proposal, choice: Choice, change: Mapping[str, JsonValue] | None
) -> dict[str, JsonValue]:
    if choice == "decline":
        return {}
    if choice == "accept":
        if change:
            fault = Fault("change", repr(dict(change)), "edit, when something shall be changed")
            raise DocumentError("decide", (fault,))
        return dict(proposal.change)
    if not change:
        fault = Fault("change", "nothing", f"--change KEY=VALUE with {', '.join(proposal.change)}")
        raise DocumentError("decide", (fault,))
    check_change(proposal.kind, change, proposal.change)
    return {**proposal.change, **change}


def plan_after(base: Plan, decisions: Iterable[Decision], folder: ClientFolder) -> Plan:
    """A plan with every decision applied that changes one.

    Raises:
        DocumentError: when a change does not fit.
    """
    for one in decisions:
        if one.choice != "decline":
            base = applied(base, one.kind, one.change, folder.intake)
    return base


def _next_plan(
    folder: ClientFolder, week: date, decision: Decision, written: Plan | None
) -> Plan | None:
    """Next week's plan; None when it does not change.

    A plan that the coach wrote for that week is changed in place, not replaced.
    """
    base = folder.plan_on(week)
    if base is None:
        return None
    earlier = [one for one in folder.decisions if one.week == week]
    before = plan_after(base, in_force(earlier), folder)
    after = plan_after(base, in_force([*earlier, decision]), folder)
    if after == before:
        return None
    if written is None or written == before:
        return after
    if any(one.proposal == decision.proposal and one.choice != "decline" for one in earlier):
        following = (week + timedelta(7)).isoformat()
        raise DocumentError(
            f"{PLANS}/{following}.yaml",
            (Fault("", "a plan changed by hand since the earlier decision",
                   "a change made in that plan, by hand"),),
        )  # fmt: skip
    return plan_after(written, [decision], folder)


def _write(folder: ClientFolder, week: date, path: Path, plan: Plan) -> None:
    """Write a plan in the manner of the file it comes from; what is written is read back first."""
    source = path
    if not path.is_file():
        starts = [start for start, _ in folder.plans if start <= week]
        source = folder.path / PLANS / f"{starts[-1].isoformat()}.yaml"
    text = source.read_text(encoding="utf-8-sig")
    new = update_plan(text, plan) if is_yaml(text) else write_plan(plan)
    read_plan(new, str(path))
    write_text(path, new)
