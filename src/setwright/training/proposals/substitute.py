"""The exercise to take the place of one that hurts, fails or stalls."""

from __future__ import annotations

import re

import numpy as np

from setwright.design.swap import put, swaps
from setwright.documents.errors import DocumentError, Fault
from setwright.exercises import catalogue
from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.training.facts.week import Facts
from setwright.training.proposals.changing import (
    Change,
    refuse,
    text_of,
    whole_of,
    with_entry,
)
from setwright.training.proposals.guard import loads_sore_parts_more

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


def safely_applied(plan: Plan, change: Change, intake: Intake) -> Plan:
    """The plan after an exchange; the plan itself where it cannot be done."""
    try:
        return applied(plan, change, intake)
    except DocumentError:
        # The only exercise of its session: nothing to compare with.
        return plan


def substitute(
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
            after = safely_applied(plan, change, facts.intake)
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
