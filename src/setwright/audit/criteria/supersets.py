"""Supersets pair exercises whose muscles do not overlap."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Largest share of one exercise's work that may fall on parts the other works too.
MOST_OVERLAP = 0.25
EVIDENCE = ("superset-meta-2025", "practice-superset-rest", "super-10-weeks")


@criterion("supersets", "exercises alternated do not share muscles", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a superset: overlap of the two share vectors, 0 to 1."""
    for group in context.pairs():
        shares = [context.shares(item) for item in group]
        overlap = max(
            float(np.minimum(a, b).sum() / max(min(a.sum(), b.sum()), 1e-9))
            for number, a in enumerate(shares)
            for b in shares[number + 1 :]
        )
        first = group[0]
        verdict = verdict_of(overlap, high=MOST_OVERLAP, margin=0.15)
        names = " and ".join(item.exercise.id for item in group)
        mend = None if verdict == "holds" else Mend("split pair", names)
        yield Remark(
            "supersets",
            f"{names} on {context.plan.sessions[first.session].day}",
            verdict,
            round(overlap, 2),
            "overlap",
            None,
            MOST_OVERLAP,
            EVIDENCE,
            Place(first.session, first.position),
            mend,
        )
