"""Another exercise for one that hurts or stalls."""

from __future__ import annotations

import re
from collections.abc import Iterator

import numpy as np

from setwright.design.swap import put, swaps
from setwright.documents.errors import DocumentError, Fault
from setwright.documents.units import load_words
from setwright.exercises import catalogue
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.training.facts.attendance import Unable
from setwright.training.facts.week import Facts
from setwright.training.pain import PainCourse
from setwright.training.proposals.changing import (
    Change,
    refuse,
    text_of,
    whole_of,
    with_entry,
)
from setwright.training.proposals.guard import loads_sore_parts_more
from setwright.training.proposals.model import Proposal, compared, proposal_id

KIND = "exchange"
RANK_PAIN, RANK_FAILED, RANK_STALL = 10, 35, 60
# Days on end without a repetition (common practice).
LEAST_FAILED = 2
STARTS = "A new exercise starts by feel."
FAILED_SOURCES = ("arith-smallest-step",)
# A substitute worth trying loses no more than this share of the week's growth.
MOST_LOST, MOST_LOST_TO_PAIN = 0.05, 0.15
# Weighted sets a week that a substitute may add to the spine.
MOST_SPINE = 0.5
LEAST_LIKE = 0.5
# Of what the exercise that hurts asks of the joint named (common practice: another range or joint).
MOST_DEMAND = 0.5
# Words for places, and the joint in the names of the actions.
JOINTS = {
    "knee": "knee", "knees": "knee", "hip": "hip", "hips": "hip", "groin": "hip",
    "ankle": "ankle", "ankles": "ankle", "back": "trunk", "spine": "trunk", "neck": "neck",
    "shoulder": "shoulder", "shoulders": "shoulder", "elbow": "elbow", "elbows": "elbow",
    "wrist": "wrist", "wrists": "wrist",
}  # fmt: skip
MOST_MINUTES = 5.0
# Substitutes put into the week, the most alike ones.
LOOKED_AT = 40
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
            found = _substitute(facts, facts.plan, failed.exercise, "preference", taken)
            if found is not None:
                taken.add(found[0])
                yield _for_failure(facts, facts.plan, failed, found[0])
    hurting = {one.exercise for one in facts.pain}
    for stall in facts.stalls:
        if stall.exercise not in held or stall.exercise in hurting:
            continue
        found = _substitute(facts, facts.plan, stall.exercise, "preference", taken)
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


def applied(plan: Plan, change: Change, intake: Intake) -> Plan:
    """The plan with another exercise wherever one stood, or without it when ``by`` is empty."""
    old = text_of(change, "exercise")
    by = change.get("by")
    if by in (None, ""):
        return with_entry(plan, old, lambda entry: None)
    name = text_of(change, "by")
    if name not in catalogue.ids():
        raise refuse("by", name, "an exercise id, as in `setwright exercise NAME`")
    # Says so when the plan does not hold it.
    with_entry(plan, old, lambda entry: entry)
    new = put(plan, old, catalogue.exercise(name), intake)
    if new is None:
        fault = Fault("by", repr(name), "an exercise that the session does not hold already")
        raise DocumentError("the change", (fault,))
    if change.get("sets") is None:
        return new
    sets = whole_of(change, "sets", 1, 20)
    return with_entry(new, name, lambda entry: entry.model_copy(update={"sets": sets}))


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
    found = _substitute(facts, plan, course.exercise, "pain", taken, course.where)
    by, sets = (None, None) if found is None else found
    change: Change = {"exercise": course.exercise, "by": by, "sets": sets}
    levels = ", ".join(str(level) for level in course.levels[-4:])
    after = _safely(plan, change, facts.intake)
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
        f"{old.name} stays in the plan, never heavier; `setwright next` leaves it out while pain "
        "is above 5 of 10.",
        PAIN_SOURCES,
        float(max(course.levels) * len(course.days)),
        RANK_PAIN,
    )


def _safely(plan: Plan, change: Change, intake: Intake) -> Plan:
    try:
        return applied(plan, change, intake)
    except DocumentError:
        # The only exercise of its session: nothing to compare with.
        return plan


def _substitute(
    facts: Facts, plan: Plan, exercise: str, avoid: str, taken: set[str], where: str = ""
) -> tuple[str, int | None] | None:
    """The substitute most like the exercise in the parts it serves, then best for the week.

    None that asks more of the spine, of sore parts, or much of the minutes; after pain none that
    asks more than half of what the exercise asked of the joint that was named.

    Returns:
        Its id, and its sets where they are fewer; None when nothing suits.
    """
    old = catalogue.exercise(exercise)
    most_lost = MOST_LOST_TO_PAIN if avoid == "pain" else MOST_LOST
    asked = demand(old, where) * MOST_DEMAND
    alike = sorted(
        (-likeness(exercise, one.id), one.id)
        for one in catalogue.exercises()
        if one.id not in taken
        and (avoid != "pain" or one.pattern != old.pattern)
        and (asked == 0 or demand(one, where) <= asked)
    )
    among = [name for minus, name in alike if -minus >= LEAST_LIKE][:LOOKED_AT]
    ranked = [
        one
        for one in swaps(plan, exercise, avoid=avoid, intake=facts.intake, among=among)
        if one.within_limits
        and one.spine_change <= MOST_SPINE
        and one.minutes_change <= MOST_MINUTES
        and one.growth_change >= -most_lost
    ]
    ranked.sort(
        key=lambda one: (
            -round(likeness(exercise, one.exercise), 1), -one.growth_change, one.exercise
        )
    )  # fmt: skip
    sets = min(
        entry.sets
        for session in plan.sessions
        for entry in session.exercises
        if entry.exercise == exercise
    )
    # After pain a set less may be what keeps sore parts at no more than they have.
    offers: tuple[int | None, ...] = (None, sets - 1) if avoid == "pain" and sets > 1 else (None,)
    for one in ranked:
        for offer in offers:
            change: Change = {"exercise": exercise, "by": one.exercise, "sets": offer}
            after = _safely(plan, change, facts.intake)
            if after is not plan and not loads_sore_parts_more(facts, plan, after):
                return one.exercise, offer
    return None


def likeness(first: str, second: str) -> float:
    """How alike two exercises are in the parts they serve: cosine of their shares, 0 to 1."""
    a, b = (catalogue.shares()[catalogue.row(name)] for name in (first, second))
    size = float(np.linalg.norm(a) * np.linalg.norm(b))
    return float(a @ b) / size if size else 0.0


def demand(exercise: Exercise, where: str) -> float:
    """What an exercise asks of the joint that a place of pain names; 0 when it names none."""
    joints = {JOINTS[word] for word in re.findall("[a-z]+", where.lower()) if word in JOINTS}
    return sum(asked for action, asked in exercise.actions.items() if action.split()[0] in joints)
