"""The doses of a week as arrays, one row a dose, and what each is worth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.exercises import catalogue
from setwright.response.curves import set_quality
from setwright.response.factors import CENTRAL, Coefficients
from setwright.response.model import Dose

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class DoseTable:
    """The doses as arrays: D doses, P parts."""

    session: NDArray[np.intp]
    sets: Floats
    reps: Floats
    rir: Floats
    rest_s: Floats
    kept: Floats
    partials: Floats
    compound: NDArray[np.bool_]
    shares: Floats
    lean: Floats
    spread: Floats


def dose_table(doses: Sequence[Dose]) -> DoseTable:
    """The doses as arrays, with the shares of their exercises."""
    rows = [catalogue.row(dose.exercise) for dose in doses]
    shares = catalogue.shares()[rows]
    return DoseTable(
        np.array([dose.session for dose in doses], dtype=np.intp),
        np.array([dose.sets for dose in doses]),
        np.array([dose.reps for dose in doses]),
        np.array([dose.rir for dose in doses]),
        np.array([dose.rest_s for dose in doses]),
        np.array([dose.kept for dose in doses]),
        np.array([float(dose.whole_partials) for dose in doses]),
        np.array([catalogue.exercises()[row].kind == "compound" for row in rows]),
        shares,
        shares * (catalogue.stretch()[rows] - 0.5),
        catalogue.share_spread()[rows] * (shares > 0),
    )


def worth(table: DoseTable, c: Coefficients) -> NDArray[np.floating]:
    """Worth of all sets of each dose besides the shares, shape (D,) or (draws, D)."""
    one_set = set_quality(table.reps, table.rir, table.rest_s, table.compound, table.kept, c)
    return np.asarray(one_set * table.sets * (1.0 + c["partials bonus"] * table.partials))


def central_values(table: DoseTable) -> Floats:
    """Effective sets each dose is worth to each part before crowding, shape (D, P)."""
    per_part = table.shares + CENTRAL["stretch slope"] * table.lean
    return np.asarray(worth(table, CENTRAL)[:, None] * per_part)


def by_session(values: Floats, session: NDArray[np.intp], sessions: int) -> Floats:
    """Values of the doses, shape (D, P), summed by session, shape (S, P)."""
    sums = np.zeros((sessions, values.shape[1]))
    np.add.at(sums, session, values)
    return sums
