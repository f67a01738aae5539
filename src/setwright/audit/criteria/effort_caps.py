"""Effort stays away from failure where the person's answers or a free bar ask for it."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, MendKind, Place, Remark
from setwright.audit.verdict import verdict_of
from setwright.plan.limits import Floor, rir_floor

# Without an intake nobody has said whether someone stands by.
UNASKED = Floor(
    2.0,
    "a free bar that can pin, if the person lifts alone",
    ("free-bench-alone", "free-squat-alone", "free-ask-setting"),
)
EVIDENCE = (
    "free-bench-alone",
    "free-squat-alone",
    "bp-cap-failure",
    "breath-hold",
    "screen-inactive-well",
    "layoff-load-reset",
    "failure-cost-low",
)


@criterion("effort-caps", "effort stays short of failure where safety asks for it", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise whose effort is capped."""
    for item in context.placed:
        floor = rir_floor(context.intake, item.exercise)
        if context.intake is None and item.exercise.pins_lifter:
            floor = UNASKED
        if floor.rir == 0:
            continue
        least = min(item.entry.rir)
        verdict = verdict_of(least, low=floor.rir)
        if verdict == "misses" and floor is UNASKED:
            verdict = "close"
        kind: MendKind = "use safeties" if "free bar" in floor.because else "raise rir"
        mend = (
            None
            if verdict == "holds"
            else Mend(kind, item.exercise.id, floor.rir - least, "repetitions", floor.rir)
        )
        yield Remark(
            "effort-caps",
            context.subject(item),
            verdict,
            least,
            "RIR",
            floor.rir,
            None,
            floor.evidence,
            Place(item.session, item.position),
            mend,
            (("because", floor.because),),
        )
