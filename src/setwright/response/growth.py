"""From rehearsed sets to fractional sets and expected growth with an interval."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from setwright.anatomy.atlas import parts
from setwright.plan.week import Plan
from setwright.rehearsal.model import Rehearsal
from setwright.response.curves import dose_shape, session_crowding, week_growth
from setwright.response.factors import drawn, people
from setwright.response.model import Dose, WeekResponse
from setwright.response.person import Person, person_of, rate
from setwright.response.table import Floats, by_session, central_values, dose_table, worth

__all__ = ["Person", "central_growth", "doses_of", "loss_without", "person_of", "respond"]

# The 80 % interval.
LOW, HIGH = 0.1, 0.9


def doses_of(plan: Plan, rehearsal: Rehearsal) -> tuple[Dose, ...]:
    """The dose of every exercise of a rehearsed week, in the plan's order.

    Args:
        plan: the week.
        rehearsal: the same week, rehearsed.
    """
    found = []
    for number, (session, lived) in enumerate(zip(plan.sessions, rehearsal.sessions, strict=True)):
        for position, entry in enumerate(session.exercises):
            sets = [one for one in lived.sets if one.entry == position]
            rests = [one.rest_s for one in sets if one.rest_s > 0]
            count = len(sets)
            found.append(
                Dose(
                    session=number,
                    exercise=entry.exercise,
                    sets=float(count),
                    reps=sum(min(one.reps, max(one.possible, 1.0)) for one in sets) / count,
                    rir=sum(max(one.rir_real, 0.0) for one in sets) / count,
                    rest_s=sum(rests) / len(rests) if rests else sum(entry.rest_s) / 2,
                    whole_partials=entry.partials == "whole sets",
                    # A load that cannot be lifted once even fresh keeps nothing.
                    kept=min(
                        sum(one.possible / one.fresh if one.fresh else 0.0 for one in sets) / count,
                        1.0,
                    ),
                )
            )
    return tuple(found)


def central_growth(doses: Sequence[Dose], person: Person, sessions: int) -> Floats:
    """Expected growth at the central coefficients, percent a week, shape (P,)."""
    table = dose_table(doses)
    sums = by_session(central_values(table), table.session, sessions)
    return week_growth(session_crowding(sums).sum(axis=0), person)


def loss_without(doses: Sequence[Dose], person: Person, sessions: int) -> Floats:
    """Growth each part loses when one dose goes and the rest stays, central coefficients.

    Returns:
        Percent a week, shape (D, P).
    """
    table = dose_table(doses)
    values = central_values(table)
    sums = by_session(values, table.session, sessions)
    crowded = session_crowding(sums)
    week = crowded.sum(axis=0)
    without = session_crowding(np.maximum(sums[table.session] - values, 0.0))
    left = week[None, :] - crowded[table.session] + without
    return week_growth(week, person)[None, :] - week_growth(left, person)


def respond(
    doses: Sequence[Dose], person: Person, sessions: int, draws: int = 400, seed: int = 1
) -> WeekResponse:
    """Response of every part to a week.

    Every coefficient, every share and the person's own response are drawn from what is not known
    about them; the result is the median and the 80 % interval over the draws.

    Args:
        doses: working sets by exercise and session.
        person: whose response.
        sessions: sessions in the week, S.
        draws: number of draws.
        seed: seed of the draws; the same input gives the same result.
    """
    table = dose_table(doses)
    raw = table.sets[:, None] * table.shares
    session_sets = by_session(raw, table.session, sessions)
    central = session_crowding(by_session(central_values(table), table.session, sessions)).sum(
        axis=0
    )

    rng = np.random.default_rng(seed)
    c = {name: values[:, None] for name, values in drawn(draws, rng).items()}
    quality = worth(table, c).astype(np.float32)
    # One error a part for the whole week: the same rule judges it in every session.
    error = rng.standard_normal((draws, table.shares.shape[1]), dtype=np.float32)
    week = np.zeros_like(error)
    for number in range(sessions):
        here = table.session == number
        if not here.any():
            continue
        weight = quality[:, here]
        mean = weight @ table.shares[here].astype(np.float32)
        lean = weight @ table.lean[here].astype(np.float32)
        spread = np.sqrt(weight**2 @ (table.spread[here] ** 2).astype(np.float32))
        sets = np.maximum(mean + c["stretch slope"] * lean + spread * error, 0.0)
        week += session_crowding(sets, c)
    own = rng.permutation(people(draws)).astype(np.float32)[:, None]
    growth = rate(person, c) * own * dose_shape(week, c)
    ranked = np.sort(growth, axis=0).astype(np.float64)
    last = draws - 1
    return WeekResponse(
        parts=tuple(part.id for part in parts()),
        session_sets=session_sets,
        weekly_sets=session_sets.sum(axis=0),
        effective_sets=central,
        growth=ranked[round(0.5 * last)],
        growth_low=ranked[round(LOW * last)],
        growth_high=ranked[round(HIGH * last)],
    )
