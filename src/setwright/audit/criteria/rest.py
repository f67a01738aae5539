"""Rest is long enough for the kind of exercise."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context, Placed
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, MendKind, Place, Remark
from setwright.audit.verdict import verdict_of

FLOOR_S = 60
SMALL_ISOLATION_S = 45
COMPOUND_S = 90
LONGEST_S = 360
# Squats and hinges that tax the whole person earn the longest rests.
HARD_FROM = 0.6
EVIDENCE = (
    "practice-rest",
    "rest-hypertrophy-bayes-meta-2024",
    "rest-1-vs-3-min-trained-trial-2016",
)


def least_rest_s(item: Placed) -> float:
    """Least rest for the kind of exercise, in seconds."""
    if item.entry.superset is not None or item.exercise.kind == "compound":
        return FLOOR_S if item.entry.superset else COMPOUND_S
    return SMALL_ISOLATION_S


@criterion("rest", "at least 60 s, 45 s on small isolations, longer on compounds", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise of more than one set: middle of its rest range."""
    for item in context.placed:
        if item.entry.sets < 2:
            continue
        middle = sum(item.entry.rest_s) / 2
        low = least_rest_s(item)
        verdict = verdict_of(middle, low, LONGEST_S, margin=15)
        mend = None
        if verdict != "holds":
            kind: MendKind = "lengthen rest" if middle < low else "shorten rest"
            wanted = low if middle < low else float(LONGEST_S)
            mend = Mend(kind, item.exercise.id, abs(wanted - middle), "s", wanted)
        yield Remark(
            "rest",
            context.subject(item),
            verdict,
            middle,
            "s",
            low,
            float(LONGEST_S),
            EVIDENCE,
            Place(item.session, item.position),
            mend,
        )
