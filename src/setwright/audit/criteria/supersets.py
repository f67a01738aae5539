"""Supersets pair exercises whose muscles do not overlap."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Largest share of one exercise's work that may fall on parts the other works too.
MOST_OVERLAP = 0.25
EVIDENCE = ("superset-meta-2025", "practice-superset-rest", "super-10-weeks")


def overlap(one: NDArray[np.float64], other: NDArray[np.float64]) -> float:
    """Share of the smaller exercise's work that falls on parts both train, 0 to 1.

    Args:
        one: shares of an exercise over the parts, shape (P,).
        other: shares of another, shape (P,).
    """
    return float(np.minimum(one, other).sum() / max(min(one.sum(), other.sum()), 1e-9))


@criterion("supersets", "exercises alternated do not share muscles", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a superset: overlap of the two share vectors, 0 to 1."""
    for group in context.pairs():
        shares = [context.shares(item) for item in group]
        largest = max(
            overlap(a, b) for number, a in enumerate(shares) for b in shares[number + 1 :]
        )
        first = group[0]
        verdict = verdict_of(largest, high=MOST_OVERLAP, margin=0.15)
        names = " and ".join(item.exercise.id for item in group)
        mend = None if verdict == "holds" else Mend("split pair", names)
        yield Remark(
            "supersets",
            f"{names} on {context.plan.sessions[first.session].day}",
            verdict,
            round(largest, 2),
            "overlap",
            None,
            MOST_OVERLAP,
            EVIDENCE,
            Place(first.session, first.position),
            mend,
        )
