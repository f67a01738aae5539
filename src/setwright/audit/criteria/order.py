"""Compounds and priority muscles first; nothing that tires what comes next."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context, Placed
from setwright.audit.criteria.supersets import MOST_OVERLAP, overlap
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Share of its fresh repetitions an exercise's first set may lose to what came before.
MOST_LOST = 0.2
EVIDENCE = ("exercise-order-meta-2021", "exercise-order-acute-reps-2005", "practice-order")


@criterion("order", "no exercise is tired out by what stands before it", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a compound that follows other work: repetitions its first set loses."""
    for item in context.placed:
        if item.exercise.kind != "compound" or item.position == 0:
            continue
        sets = context.rehearsed(item)
        lost = 1 - sets[0].possible / max(sets[0].fresh, 1.0)
        verdict = verdict_of(lost, high=MOST_LOST, margin=0.1)
        if verdict == "misses" and not _avoidable(context, item):
            verdict = "close"
        mend = None if verdict == "holds" else Mend("move earlier", item.exercise.id)
        yield Remark(
            "order",
            context.subject(item),
            verdict,
            round(lost, 2),
            "of the fresh repetitions lost before the first set",
            None,
            MOST_LOST,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
        )


def _avoidable(context: Context, item: Placed) -> bool:
    """Whether an isolation that works the same parts stands before: then moving it helps."""
    own = context.shares(item)
    return any(
        before.exercise.kind == "isolation"
        and before.position < item.position
        and overlap(context.shares(before), own) > MOST_OVERLAP
        for before in context.of_session(item.session)
    )
