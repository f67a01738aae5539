"""Repetitions stay where growth is sure and effort can be judged."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark, Verdict
from setwright.audit.verdict import verdict_of

FEWEST, MOST = 5, 30
EVIDENCE = (
    "practice-rep-range",
    "low-vs-high-load-meta-2017",
    "load-20-40-60-80-percent-trial-2018",
    "rir-accuracy-meta-2022",
)


@criterion("rep-range", "sets of 5 to 30 repetitions; 5 to 50 can build muscle", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise: the band's ends against 5 and 30."""
    for item in context.placed:
        low, high = item.entry.reps
        verdicts = (
            verdict_of(low, low=FEWEST, margin=1),
            verdict_of(high, high=MOST, margin=20),
        )
        verdict: Verdict = max(verdicts, key=("holds", "close", "misses").index)
        figure = float(low if low < FEWEST else high)
        mend = None
        if low < FEWEST:
            mend = Mend("raise reps", item.exercise.id, FEWEST - low, "repetitions", FEWEST)
        elif high > MOST:
            mend = Mend("lower reps", item.exercise.id, high - MOST, "repetitions", MOST)
        yield Remark(
            "rep-range",
            context.subject(item),
            verdict,
            figure,
            "repetitions",
            float(FEWEST),
            float(MOST),
            EVIDENCE,
            Place(item.session, item.position),
            mend,
        )
