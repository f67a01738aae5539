"""Growth of several weeks in the same imagined people, so that their difference has an interval."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import parts
from setwright.response.curves import dose_shape, session_crowding
from setwright.response.factors import Coefficients, drawn, people
from setwright.response.model import Dose
from setwright.response.person import Person, rate
from setwright.response.table import DoseTable, dose_table, worth

Floats32 = NDArray[np.float32]


def paired_growth(
    weeks: Sequence[Sequence[Dose]], person: Person, draws: int = 400, seed: int = 1
) -> tuple[Floats32, ...]:
    """Growth under each week, draw by draw: the same coefficients, person and shares in all.

    What is not known of an exercise's shares is drawn once for the exercise, whatever week it
    stands in; so two weeks differ by what differs in them and by nothing else. (``respond`` draws
    one error a part for the whole week; its intervals are of one week alone.)

    Args:
        weeks: doses by week.
        person: whose response.
        draws: number of draws.
        seed: seed of the draws; the same input gives the same result.

    Returns:
        For each week percent a week, shape (draws, P), in the order of the draws.
    """
    rng = np.random.default_rng(seed)
    c = {name: values[:, None] for name, values in drawn(draws, rng).items()}
    own = rng.permutation(people(draws)).astype(np.float32)[:, None]
    used = sorted({dose.exercise for week in weeks for dose in week})
    shape = (draws, len(parts()))
    errors = {name: rng.standard_normal(shape, dtype=np.float32) for name in used}
    speed = rate(person, c) * own
    return tuple(
        np.asarray(speed * dose_shape(_effective(week, errors, c), c), np.float32) for week in weeks
    )


def _effective(doses: Sequence[Dose], errors: dict[str, Floats32], c: Coefficients) -> Floats32:
    """Effective sets a week under every draw, shape (draws, P)."""
    table: DoseTable = dose_table(doses)
    quality = np.asarray(worth(table, c), np.float32)
    shape = (quality.shape[0], table.shares.shape[1])
    total: Floats32 = np.zeros(shape, np.float32)
    for session in range(int(table.session.max(initial=-1)) + 1):
        sets: Floats32 = np.zeros(shape, np.float32)
        for at in map(int, np.flatnonzero(table.session == session)):
            share = table.shares[at] + c["stretch slope"] * table.lean[at]
            share = share + table.spread[at] * errors[doses[at].exercise]
            sets += quality[:, at, None] * np.asarray(share, np.float32)
        total += session_crowding(np.maximum(sets, 0.0), c)
    return total
