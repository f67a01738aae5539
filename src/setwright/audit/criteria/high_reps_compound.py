"""Big lower-body lifts are not done for very high repetitions: breath ends the set first."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Above this a set is limited by the whole person, not by one joint.
WHOLE_BODY_FROM = 0.6
MOST = 15.0
LOWER_BODY = frozenset({"squat", "lunge", "hinge"})
EVIDENCE = ("practice-high-reps-compounds",)


@criterion("high-reps-compound", "big lower-body lifts at 15 repetitions or fewer", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a big lower-body lift."""
    for item in context.placed:
        exercise = item.exercise
        if exercise.pattern not in LOWER_BODY or exercise.whole_body < WHOLE_BODY_FROM:
            continue
        high = float(item.entry.reps[1])
        verdict = verdict_of(high, high=MOST, margin=5)
        mend = None
        if verdict != "holds":
            mend = Mend("lower reps", exercise.id, high - MOST, "repetitions", MOST)
        yield Remark(
            "high-reps-compound",
            context.subject(item),
            verdict,
            high,
            "repetitions",
            None,
            MOST,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
        )
