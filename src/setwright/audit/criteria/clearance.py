"""A licensed professional clears training first where the screening answers ask for it."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Remark
from setwright.plan.limits import clearance

EVIDENCE = ("screen-factors", "scope-no-diagnosis")


@criterion("screening", "screening answers allow training to start", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark for the person; close when nobody was asked."""
    if context.intake is None:
        yield Remark(
            "screening",
            "week",
            "close",
            None,
            "",
            None,
            None,
            EVIDENCE,
            mend=Mend("ask a professional", "the screening questions of an intake"),
            detail=(("because", "no intake, so no screening answers"),),
        )
        return
    needed = clearance(context.intake)
    if needed is None:
        yield Remark("screening", "week", "holds", None, "", None, None, EVIDENCE)
        return
    yield Remark(
        "screening",
        "week",
        "misses",
        None,
        "",
        None,
        None,
        needed.evidence,
        mend=Mend("ask a professional", needed.because),
        detail=(("because", needed.because),),
    )
