"""The repetitions planned can really be done at that point of the session."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

EVIDENCE = ("rest-reps-bench-70-percent-2min-2022", "exercise-order-acute-reps-2005")


@criterion("feasible", "the lowest repetitions of the band can be done on every set", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise: the worst set's possible repetitions against the band."""
    for item in context.placed:
        sets = context.rehearsed(item)
        worst = min(sets, key=lambda one: one.possible)
        lowest = float(item.entry.reps[0])
        verdict = verdict_of(worst.possible, low=lowest, margin=1.0)
        mend = None
        if verdict != "holds":
            longer = worst.rest_needed_s - item.entry.rest_s[1]
            if longer > 0:
                mend = Mend("lengthen rest", item.exercise.id, ceil(longer), "s")
            else:
                missing = ceil(10 * (lowest - worst.possible)) / 10
                mend = Mend("change load", item.exercise.id, missing, "repetitions")
        yield Remark(
            "feasible",
            context.subject(item),
            verdict,
            round(worst.possible, 1),
            "repetitions possible",
            lowest,
            None,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
            (("set", float(worst.number)),),
        )
