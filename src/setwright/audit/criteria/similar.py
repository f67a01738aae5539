"""Similar exercises in one session bring diminishing returns."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import combinations

import numpy as np

from setwright.audit.context import Context, Placed
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Likeness of two share vectors (cosine, 0 to 1) of the same kind of exercise.
MOST_ALIKE = 0.93
EVIDENCE = ("practice-redundancy", "exercise-variation-review-2022")


def likeness(context: Context, one: Placed, other: Placed) -> float:
    """Cosine between what two exercises train, 0 to 1."""
    a, b = context.shares(one), context.shares(other)
    return float(a @ b / max(float(np.linalg.norm(a) * np.linalg.norm(b)), 1e-9))


@criterion("similar", "a session does not repeat itself", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a session: its two most alike exercises."""
    for number in range(len(context.plan.sessions)):
        found = [
            (likeness(context, one, other), one, other)
            for one, other in combinations(context.of_session(number), 2)
        ]
        if not found:
            continue
        figure, one, other = max(found, key=lambda row: row[0])
        same = one.exercise.id == other.exercise.id
        verdict = "misses" if same else verdict_of(figure, high=MOST_ALIKE, margin=0.07)
        mend = None if verdict == "holds" else Mend("swap exercise", other.exercise.id)
        yield Remark(
            "similar",
            context.session_subject(number),
            verdict,
            round(figure, 2),
            "likeness",
            None,
            MOST_ALIKE,
            EVIDENCE,
            Place(number, other.position),
            mend,
            (("one", one.exercise.name), ("other", other.exercise.name)),
        )
