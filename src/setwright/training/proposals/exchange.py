"""Another exercise for one that hurts or stalls."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.documents.units import load_words
from setwright.exercises import catalogue
from setwright.plan.week import Plan
from setwright.training.facts.attendance import Unable
from setwright.training.facts.week import Facts
from setwright.training.pain import PainCourse
from setwright.training.proposals.changing import (
    Change,
)
from setwright.training.proposals.model import Proposal, compared, proposal_id
from setwright.training.proposals.substitute import applied, safely_applied, substitute

KIND = "exchange"
RANK_PAIN, RANK_FAILED, RANK_STALL = 10, 35, 60
# Days on end without a repetition (common practice).
LEAST_FAILED = 2
STARTS = "A new exercise starts by feel."
FAILED_SOURCES = ("arith-smallest-step",)
PAIN_SOURCES = ("pain-scale", "pain-flare-by-training", "scope-no-diagnosis")
STALL_SOURCES = ("exercise-variation-review-2022",)


def propose(facts: Facts) -> Iterator[Proposal]:
    """Exchanges: every exercise that hurts too much, and the one that stalls worst."""
    if facts.plan is None:
        return
    held = {entry.exercise for one in facts.plan.sessions for entry in one.exercises}
    taken: set[str] = set(held)
    for course in facts.pain:
        if course.exercise in held and course.answer == "stop and exchange":
            proposal = _for_pain(facts, facts.plan, course, taken)
            by = proposal.change.get("by")
            taken |= {by} if isinstance(by, str) else set()
            yield proposal
    for failed in facts.unable:
        if failed.exercise in held and failed.days >= LEAST_FAILED:
            found = substitute(facts, facts.plan, failed.exercise, "preference", taken)
            if found is not None:
                taken.add(found[0])
                yield _for_failure(facts, facts.plan, failed, found[0])
    hurting = {one.exercise for one in facts.pain}
    for stall in facts.stalls:
        if stall.exercise not in held or stall.exercise in hurting:
            continue
        found = substitute(facts, facts.plan, stall.exercise, "preference", taken)
        if found is None:
            continue
        old, new = catalogue.exercise(stall.exercise), catalogue.exercise(found[0])
        change: Change = {"exercise": stall.exercise, "by": found[0]}
        yield Proposal(
            proposal_id(KIND, stall.exercise, facts.monday),
            KIND,
            stall.exercise,
            f"{new.name} in place of {old.name}, which stalls",
            change,
            (
                f"{old.name}: {stall.percent:+.1f} % ({stall.low:+.1f} to {stall.high:+.1f}) in "
                f"{stall.days} days and {stall.outings} outings.",
            ),
            compared(
                facts.plan,
                applied(facts.plan, change, facts.intake),
                facts.intake,
                STARTS,
            ),
            f"{old.name} stays; a stall may also pass by itself, with food, sleep or a lighter "
            "week.",
            STALL_SOURCES,
            float(stall.outings),
            RANK_STALL,
        )
        return


def _for_failure(facts: Facts, plan: Plan, failed: Unable, by: str) -> Proposal:
    old, new = catalogue.exercise(failed.exercise), catalogue.exercise(by)
    change: Change = {"exercise": failed.exercise, "by": by}
    load = load_words(failed.load_kg, plan.unit)
    return Proposal(
        proposal_id(KIND, failed.exercise, facts.monday),
        KIND,
        failed.exercise,
        f"{new.name} in place of {old.name}, of which no repetition can be done",
        change,
        (f"{old.name}: no repetition in any set on the last {failed.days} days, at {load}.",),
        compared(
            plan,
            applied(plan, change, facts.intake),
            facts.intake,
            f"Against the plan as if {old.name} were done. {STARTS}",
        ),
        f"{old.name} stays in the plan, and its sets stay undone.",
        FAILED_SOURCES,
        float(failed.days),
        RANK_FAILED,
    )


def _for_pain(facts: Facts, plan: Plan, course: PainCourse, taken: set[str]) -> Proposal:
    old = catalogue.exercise(course.exercise)
    found = substitute(facts, plan, course.exercise, "pain", taken, course.where)
    by, sets = (None, None) if found is None else found
    change: Change = {"exercise": course.exercise, "by": by, "sets": sets}
    levels = ", ".join(str(level) for level in course.levels[-4:])
    after = safely_applied(plan, change, facts.intake)
    title = (
        f"Leave out {old.name}, which hurts"
        if by is None
        else f"{catalogue.exercise(by).name} in place of {old.name}, which hurts"
        + ("" if sets is None else f", {sets} sets")
    )
    span = course.days[-1] - course.days[0] + 1
    times = f"{len(course.days)} times in {span} days" if span > 1 else "reported once"
    words = "Another movement; what hurts gets no more."
    if by is None:
        words = "No substitute suits that spares what hurts."
    return Proposal(
        proposal_id(KIND, course.exercise, facts.monday),
        KIND,
        course.exercise,
        title,
        change,
        (
            f"{old.name}: pain ({course.where}) {levels} of 10, {times}"
            + (", rising." if course.rising else "."),
        ),
        compared(plan, after, facts.intake, words),
        f"{old.name} stays in the plan, never heavier; the sessions to come leave it out while "
        "pain is above 5 of 10.",
        PAIN_SOURCES,
        float(max(course.levels) * len(course.days)),
        RANK_PAIN,
    )
