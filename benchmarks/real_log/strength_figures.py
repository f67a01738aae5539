"""Errors and coverage of predicted repetitions."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from sets_to_failure import Told

# Sets after a person's third on a machine.
LATE = 3


def figures(told: Sequence[Told]) -> dict[str, float | int]:
    """Of the sets after a person's third on a machine."""
    late = [one for one in told if one.before >= LATE]
    got = np.array([one.got for one in late])
    off = got - np.array([one.median for one in late])
    raw = got - np.array([one.centre for one in late])
    inside = [one.low <= one.got <= one.high for one in late]
    return {
        "sets": len(late),
        "mean absolute error of the median": round(float(np.abs(off).mean()), 4),
        "root mean square error of the median": round(float(np.sqrt((off**2).mean())), 4),
        "mean absolute error before rounding to whole repetitions": round(
            float(np.abs(raw).mean()), 4
        ),
        "80 % interval covers": round(float(np.mean(inside)), 4),
        "surprise a set": round(float(np.mean([one.surprise for one in late])), 4),
    }
