"""Longer rests where repetitions drop from set to set beyond what is tolerated."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

from setwright.exercises import catalogue
from setwright.plan.week import Entry, Plan
from setwright.rehearsal.rehearse import TOLERATED_LOSS
from setwright.training.facts.week import Facts
from setwright.training.past import Outing
from setwright.training.proposals.changing import Change, refuse, text_of, whole_of, with_entry
from setwright.training.proposals.model import Proposal, compared, proposal_id
from setwright.training.rest import EVIDENCE, LONGER_S, longest_rest_s

KIND = "rest"
# Before more sets of the same exercise.
RANK = 48
# Drops are judged over so many of the last outings, at least two of them (common practice).
OUTINGS, LEAST_OUTINGS = 3, 2
SPAN_DAYS = 28


def propose(facts: Facts) -> Iterator[Proposal]:
    """Longer rest for the exercise that drops most."""
    if facts.plan is None:
        return
    rows = []
    for session in facts.plan.sessions:
        for entry in session.exercises:
            if entry.superset is not None or entry.sets < 2:
                continue
            longest = longest_rest_s(catalogue.exercise(entry.exercise), entry)
            drop = _drop(facts, entry)
            if drop is not None and entry.rest_s[1] + LONGER_S <= longest:
                rows.append((drop[0], entry.exercise, drop[1], entry))
    if not rows:
        return
    drop_share, exercise, outings, entry = max(rows, key=lambda row: (row[0], row[1]))
    low, high = (one + LONGER_S for one in entry.rest_s)
    change: Change = {"exercise": exercise, "rest_least_s": low, "rest_most_s": high}
    name = catalogue.exercise(exercise).name
    yield Proposal(
        proposal_id(KIND, exercise, facts.monday),
        KIND,
        exercise,
        f"Rest {LONGER_S} s longer on {name} ({low} to {high} s)",
        change,
        (
            f"{name}: repetitions at the same load fell by {drop_share:.0%} from the first to the "
            f"last set (median of {outings} outings); {_tolerated(entry.sets):.0%} are usual.",
        ),
        compared(facts.plan, applied(facts.plan, change, None), facts.intake),
        "Later sets keep falling short of the band, or the load comes down.",
        EVIDENCE,
        100 * drop_share,
        RANK,
    )


def applied(plan: Plan, change: Change, _: object) -> Plan:
    """The plan with another rest on an exercise."""
    low = whole_of(change, "rest_least_s", 0, 900)
    high = whole_of(change, "rest_most_s", 0, 900)
    if low > high:
        raise refuse("rest_least_s", low, f"at most rest_most_s, {high}")
    return with_entry(
        plan,
        text_of(change, "exercise"),
        lambda entry: entry.model_copy(update={"rest_s": (low, high)}),
    )


def _tolerated(sets: int) -> float:
    """Share of repetitions whose loss over all sets is tolerated."""
    return float(1 - (1 - TOLERATED_LOSS) ** (sets - 1))


def _drop(facts: Facts, entry: Entry) -> tuple[float, int] | None:
    """Median share lost over the last outings, and how many; None when it is tolerated."""
    recent = [
        one
        for one in facts.client.past.outings.get(entry.exercise, ())[-OUTINGS:]
        if facts.client.day - one.day < SPAN_DAYS
    ]
    drops = [drop for one in recent if (drop := _of(one)) is not None]
    if len(drops) < LEAST_OUTINGS:
        return None
    found = median(drops)
    return (found, len(drops)) if found > _tolerated(entry.sets) else None


def _of(outing: Outing) -> float | None:
    """Share of the repetitions to failure lost from the first to the last set of equal load."""
    first, *_, last = [*outing.sets, outing.sets[-1]]
    if first is last or first.load_kg != last.load_kg or first.reps <= 0:
        return None
    left = [0.0 if one.to_failure else one.rir for one in (first, last)]
    if left[0] is None or left[1] is None:
        return None
    return 1 - (last.reps + left[1]) / (first.reps + left[0])
