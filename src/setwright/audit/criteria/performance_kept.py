"""The real test of rest: repetitions hold from set to set."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of
from setwright.rehearsal.model import RehearsedSet

# Least share of the first set's possible repetitions that the worst set must keep.
LEAST_KEPT = 0.6
EVIDENCE = (
    "practice-rest",
    "rest-volume-load-matched-trial-2022",
    "rest-percent-loss-bench-5sets-2007",
)


def worst_kept(sets: Sequence[RehearsedSet]) -> tuple[RehearsedSet, float]:
    """The worst later set, and its possible repetitions over those of the first, 0 to 1.

    Args:
        sets: the working sets of one exercise, two or more.
    """
    worst = min(sets[1:], key=lambda one: one.possible)
    return worst, worst.possible / max(sets[0].possible, 1.0)


@criterion("performance-kept", "repetitions hold from the first set to the last", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise of more than one set: worst over first possible repetitions."""
    for item in context.placed:
        sets = context.rehearsed(item)
        if len(sets) < 2:
            continue
        worst, kept = worst_kept(sets)
        verdict = verdict_of(kept, low=LEAST_KEPT, margin=0.1)
        mend = None
        if verdict != "holds":
            more = round(worst.rest_needed_s - sum(item.entry.rest_s) / 2)
            # Where the rest is long enough already, more of it brings nothing back.
            mend = Mend("lengthen rest", item.exercise.id, more, "s") if more > 0 else None
        yield Remark(
            "performance-kept",
            context.subject(item),
            verdict,
            round(kept, 2),
            "of the first set's repetitions",
            LEAST_KEPT,
            None,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
            (("set", float(worst.number)), ("needed_s", round(worst.rest_needed_s))),
        )
