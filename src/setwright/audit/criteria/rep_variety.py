"""Most sets are in the middle of the range, with some lighter work."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Remark
from setwright.audit.verdict import verdict_of

FEWEST, MOST = 5.0, 15.0
LEAST_SHARE = 0.6
EVIDENCE = ("practice-rep-range", "load-low-25-35-vs-8-12-reps-trained-2015")


@criterion("rep-variety", "most sets at 5 to 15 repetitions, some higher", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark on the week: share of sets whose mean repetitions are 5 to 15."""
    sets = sum(dose.sets for dose in context.doses)
    middle = sum(dose.sets for dose in context.doses if FEWEST <= dose.reps <= MOST)
    bands = {item.entry.reps for item in context.placed}
    share = middle / sets
    verdict = verdict_of(share, low=LEAST_SHARE, margin=0.15)
    if verdict == "holds" and len(bands) < 2 and len(context.placed) > 3:
        verdict = "close"
    mend = None if verdict == "holds" else Mend("change load", "week", None, "repetitions")
    yield Remark(
        "rep-variety",
        "week",
        verdict,
        round(share, 2),
        "share of sets",
        LEAST_SHARE,
        None,
        EVIDENCE,
        mend=mend,
        detail=(("bands", float(len(bands))),),
    )
