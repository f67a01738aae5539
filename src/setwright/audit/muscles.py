"""Sets of a muscle from sets of its parts."""

from __future__ import annotations

from functools import cache

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import muscles, parts
from setwright.audit.context import Context


@cache
def parts_of_muscles() -> dict[str, NDArray[np.intp]]:
    """Positions of the directly trained parts of each muscle that has any."""
    found: dict[str, list[int]] = {}
    for position, part in enumerate(parts()):
        if part.trained_directly:
            found.setdefault(part.muscle, []).append(position)
    return {muscle: np.array(columns) for muscle, columns in found.items()}


def muscle_name(muscle: str) -> str:
    """The trade's name of a muscle."""
    return muscles()[muscle].name


def session_sets(context: Context, muscle: str) -> NDArray[np.float64]:
    """Fractional sets of a muscle in each session: those of its most trained part, shape (S,)."""
    columns = parts_of_muscles()[muscle]
    sets: NDArray[np.float64] = context.response.session_sets[:, columns].max(axis=1)
    return sets
