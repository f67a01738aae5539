"""First sets further from failure than last sets; the last set close enough to count."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark, Verdict
from setwright.audit.verdict import verdict_of
from setwright.plan.limits import rir_floor

LAST_MOST = 2.0
FIRST_LEAST = {"compound": 1.0, "isolation": 0.0}
EVIDENCE = (
    "practice-effort-course",
    "rir-meta-regression-2024",
    "proximity-failure-hypertrophy-meta-2023",
)


@criterion("effort-course", "first sets further from failure, last sets close to it", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise: last-set RIR, and whether effort rises over the sets."""
    for item in context.placed:
        first, last = item.entry.rir
        cap = rir_floor(context.intake, item.exercise).rir
        most = max(LAST_MOST, cap)
        verdict: Verdict = verdict_of(last, high=most, margin=1.0)
        mend = None
        if verdict != "holds":
            mend = Mend("lower rir", item.exercise.id, last - most, "repetitions", most)
        elif last > first:
            verdict = "misses" if last - first > 1 else "close"
            mend = Mend("lower rir", item.exercise.id, last - first, "repetitions", first)
        elif item.entry.sets > 1 and first < FIRST_LEAST[item.exercise.kind]:
            verdict = "close"
            need = FIRST_LEAST[item.exercise.kind]
            mend = Mend("raise rir", item.exercise.id, need - first, "repetitions", need)
        yield Remark(
            "effort-course",
            context.subject(item),
            verdict,
            last,
            "RIR on the last set",
            None,
            most,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
            (("first", first), ("cap", cap)),
        )
