"""The constraint model: sets of each exercise on each day for the most weighted growth."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import parts
from setwright.design.options import Option
from setwright.design.problem import Problem
from setwright.design.score import (
    COVERED,
    CROWDING_AT,
    GROWTH_AT,
    SPINE_COST,
    TWICE_TRAINED,
    tangents,
)
from setwright.design.start import start
from setwright.response.curves import session_crowding, week_growth

# The solver's expressions have no types of their own.
Variables = dict[tuple[int, int], Any]
Terms = list[tuple[int, Any]]

# Integers of the model: sets in hundredths, growth in millionths of a percent a week.
SETS, GROWTH = 100, 1_000_000
# Removals tried for the first week, times cells, for each of the solver's seconds.
ROUNDS = 25_000
# Up to this many cells one thread proves the week at once; two would wait for each other.
TINY = 24
# The clock on the wall is only a backstop: cut by it, the same input need not give the same week.
BACKSTOP_S = 30.0
# Ways of the solver that only cost time here; what is left proves (linear relaxation) or improves
# (large neighbourhoods).
IDLE = ("core", "no_lp", "quick_restart_no_lp", "max_lp", "max_lp_sym", "pseudo_costs")


@dataclass(frozen=True)
class Solved:
    """What the search found.

    Attributes:
        sets: sets of each option on each day, shape (O, D).
        objective: weighted growth, what coverage is worth, less spinal cost, percent a week.
        bound: no week of the model can be better than this.
        proven: whether the solver proved the solution optimal.
    """

    sets: NDArray[np.int64]
    objective: float
    bound: float
    proven: bool

    @property
    def gap(self) -> float:
        """How far from the optimum the week can be at most, 0 to 1."""
        if not np.isfinite(self.bound):
            return 1.0
        return max(self.bound - self.objective, 0.0) / max(abs(self.bound), 1e-12)


def solve(problem: Problem, seconds: float, workers: int = 2) -> Solved:
    """Search for the best week.

    Args:
        problem: options, days and limits.
        seconds: time for the search; counted in the solver's own deterministic seconds, so that
            the same input gives the same week.
        workers: threads.
    """
    from ortools.sat.python import cp_model

    model = cp_model.CpModel()
    options, days = problem.options, range(len(problem.minutes))
    fixed = problem.fixed
    sets = {}
    used = {}
    for o in range(len(options)):
        for d in days:
            if not problem.fits_day[o, d]:
                continue
            sets[o, d] = model.new_int_var(0, problem.most_sets, f"sets {o} {d}")
            used[o, d] = model.new_bool_var(f"used {o} {d}")
            if fixed[o, d]:
                sets[o, d] = model.new_constant(int(fixed[o, d]))
                model.add(used[o, d] == 1)
                continue
            model.add(sets[o, d] >= problem.least_sets * used[o, d])
            model.add(sets[o, d] <= problem.most_sets * used[o, d])
        chosen = [used[o, d] for d in days if (o, d) in used]
        most_days = max(problem.most_days_an_exercise - int(problem.kept_days[o]), 0)
        model.add(sum(chosen) <= max(most_days, int((fixed[o] > 0).sum())))
    for d in days:
        here = [o for o in range(len(options)) if (o, d) in sets]
        kept = np.flatnonzero(fixed[:, d])
        kept_s = sum(round(options[o].fixed_s) for o in kept) + sum(
            round(options[o].per_set_s) * int(fixed[o, d]) for o in kept
        )
        model.add(
            sum(
                round(options[o].fixed_s) * used[o, d] + round(options[o].per_set_s) * sets[o, d]
                for o in here
            )
            <= max(int(problem.minutes[d] * 60), kept_s)
        )
        model.add(sum(used[o, d] for o in here) <= max(problem.most_exercises, len(kept)))
        for group in problem.alike:
            held = sum(o in kept for o in group)
            model.add(sum(used[o, d] for o in group if (o, d) in used) <= max(1, held))
        model.add(
            sum(round(SETS * options[o].spine) * sets[o, d] for o in here)
            <= max(int(SETS * problem.spine_session), _kept_spine(problem, d))
        )
    for early, late in problem.next_day:
        model.add(
            sum(
                round(SETS * options[o].spine) * sets[o, d]
                for o in range(len(options))
                for d in (early, late)
                if (o, d) in sets
            )
            <= max(
                int(SETS * problem.spine_two_days),
                _kept_spine(problem, early) + _kept_spine(problem, late),
            )
        )
    for first, second in problem.alike_days:
        model.add(
            sum(sets[o, first] for o in range(len(options)) if (o, first) in sets)
            >= sum(sets[o, second] for o in range(len(options)) if (o, second) in sets)
        )
    terms = _response(model, problem, sets) + _wants(model, problem, sets)
    spine = SPINE_COST * GROWTH * problem.weight_scale
    terms += [(-round(spine * options[o].spine), variable) for (o, _), variable in sets.items()]
    model.maximize(sum(coefficient * variable for coefficient, variable in terms))
    _begin(model, sets, start(problem, round(ROUNDS * seconds / problem.fits_day.size)))

    if len(sets) <= TINY:
        workers = 1
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = workers
    solver.parameters.ignore_subsolvers.extend(IDLE)
    solver.parameters.random_seed = problem.seed
    solver.parameters.interleave_search = workers > 1
    solver.parameters.max_deterministic_time = seconds
    solver.parameters.max_time_in_seconds = BACKSTOP_S + 4 * seconds
    solver.parameters.linearization_level = 2
    status = solver.solve(model)
    if status not in (cp_model.OPTIMAL, cp_model.FEASIBLE):
        return Solved(np.zeros((len(options), len(days)), dtype=np.int64), 0.0, np.inf, False)
    found = np.zeros((len(options), len(days)), dtype=np.int64)
    for (o, d), variable in sets.items():
        found[o, d] = solver.value(variable)
    scale = GROWTH * problem.weight_scale
    return Solved(
        found,
        solver.objective_value / scale,
        solver.best_objective_bound / scale,
        status == cp_model.OPTIMAL,
    )


def _begin(model: Any, sets: Variables, week: NDArray[np.int64]) -> None:
    """Hint a whole week, with every figure that follows from it, if it keeps the limits."""
    from ortools.sat.python import cp_model

    fixed = model.clone()
    for cell, variable in sets.items():
        fixed.add(fixed.get_int_var_from_proto_index(variable.index) == int(week[cell]))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    if solver.solve(fixed) == cp_model.OPTIMAL:
        for index, value in enumerate(solver.response_proto.solution):
            model.add_hint(model.get_int_var_from_proto_index(index), value)


def _kept_spine(problem: Problem, day: int) -> int:
    """Spinal load of what is kept on a day, in hundredths of a set."""
    return sum(
        round(SETS * option.spine) * int(sets)
        for option, sets in zip(problem.options, problem.fixed[:, day], strict=True)
    )


def _column(options: tuple[Option, ...], p: int, *, share: bool) -> list[int]:
    return [round(SETS * float(o.share[p] if share else o.value[p])) for o in options]


def _response(model: Any, problem: Problem, sets: Variables) -> Terms:
    """Weighted growth: crowding within each session, then growth over the week."""
    crowding = tangents(CROWDING_AT, session_crowding)
    growth = tangents(GROWTH_AT, lambda x: week_growth(x, problem.person))
    terms: Terms = []
    days = range(len(problem.minutes))
    for p in np.flatnonzero(problem.weights > 0):
        values = _column(problem.options, int(p), share=False)
        sessions = []
        for d in days:
            here = [(values[o], sets[o, d]) for o in range(len(values)) if (o, d) in sets]
            here = [(value, variable) for value, variable in here if value]
            if not here:
                continue
            total = sum(value * variable for value, variable in here)
            crowded = model.new_int_var(0, 12 * SETS, f"crowded {p} {d}")
            model.add(crowded <= total)
            for slope, intercept in crowding[1:]:
                model.add(
                    1000 * crowded
                    <= round(1000 * slope) * total + round(1000 * SETS * intercept) + 500
                )
            sessions.append(crowded)
        if not sessions:
            continue
        week = sum(sessions) + round(SETS * float(problem.done[p]))
        grown = model.new_int_var(0, 2 * GROWTH, f"growth {p}")
        for slope, intercept in growth:
            model.add(
                grown <= round(slope * GROWTH / SETS) * week + round(intercept * GROWTH) + SETS
            )
        terms.append((round(problem.weight_scale * problem.weights[p]), grown))
    return terms


def _wants(model: Any, problem: Problem, sets: Variables) -> Terms:
    """What reaching every part is worth, and the most a session, two days and a week may hold."""
    terms: Terms = []
    days = range(len(problem.minutes))
    scale = problem.weight_scale * GROWTH
    for p in range(len(parts())):
        shares = _column(problem.options, p, share=True)
        if not any(shares):
            continue
        by_day = [
            sum(shares[o] * sets[o, d] for o in range(len(shares)) if (o, d) in sets) for d in days
        ]
        kept = np.array(shares) @ problem.fixed
        for d in days:
            model.add(by_day[d] <= max(int(SETS * problem.session_most), int(kept[d])))
        model.add(sum(by_day) <= max(int(SETS * problem.most[p]), int(kept.sum())))
        for early, late in problem.next_day:
            two_days = max(int(SETS * problem.two_days_most), int(kept[early] + kept[late]))
            model.add(by_day[early] + by_day[late] <= two_days)
        if problem.least[p] > 0:
            least = int(np.ceil(SETS * problem.least[p]))
            covered = model.new_int_var(0, least, f"covered {p}")
            model.add(covered <= sum(by_day))
            terms.append((round(COVERED * scale * problem.urgency[p] / least), covered))
        if problem.times[p] > 1 and problem.urgency[p] > 1:
            counted = []
            for d in days:
                trained = model.new_bool_var(f"trained {p} {d}")
                model.add(by_day[d] >= SETS * trained)
                counted.append(trained)
            times = model.new_int_var(0, int(problem.times[p]), f"times {p}")
            model.add(times <= sum(counted))
            terms.append((round(TWICE_TRAINED * scale * problem.urgency[p]), times))
    return terms
