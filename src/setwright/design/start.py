"""A good week to start the search from: remove a little, put the best back, keep what is better."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from setwright.design.problem import Problem
from setwright.design.score import Score

Sets = NDArray[np.int64]
# Removed at a time, and how much worse a week may be and still be gone on from, relative.
REMOVED = (1, 2, 3, 4, 6)
WORSE_AT_FIRST = 6e-3


@dataclass(frozen=True)
class Limits:
    """The model's limits, checked for many changes of one cell at a time."""

    problem: Problem

    @cached_property
    def _rows(self) -> tuple[NDArray[np.float64], ...]:
        options = self.problem.options
        return (
            np.array([round(o.fixed_s) for o in options], dtype=float),
            np.array([round(o.per_set_s) for o in options], dtype=float),
            np.array([np.round(o.spine, 2) for o in options]),
            np.round([o.share for o in options], 2),
        )

    @cached_property
    def _together(self) -> NDArray[np.bool_]:
        """Options that one session must not hold together, shape (O, O)."""
        count = len(self.problem.options)
        found = np.zeros((count, count), dtype=bool)
        for group in self.problem.alike:
            found[np.ix_(group, group)] = True
        np.fill_diagonal(found, False)
        return found

    def room(self, sets: Sets, added: Sets) -> NDArray[np.bool_]:
        """Which cells may grow by ``added`` sets, one at a time, shape (O, D)."""
        p = self.problem
        fixed, per_set, spine, share = self._rows
        used = sets > 0
        seconds = fixed @ used + per_set @ sets
        more = fixed[:, None] * ~used + per_set[:, None] * added
        free = p.fits_day & (p.fixed == 0) & (added > 0) & (sets + added <= p.most_sets)
        free &= seconds + more <= np.floor(60 * p.minutes)
        fresh = ~used
        days = used.sum(axis=1) + p.kept_days
        free &= ~fresh | (days < p.most_days_an_exercise)[:, None]
        free &= ~fresh | (used.sum(axis=0) < p.most_exercises)
        free &= ~fresh | ~(self._together @ used)
        back = np.round(spine @ sets, 9)
        adds = spine[:, None] * added
        # Where what is kept has used a limit up, only what adds nothing to it fits.
        free &= (back + adds <= p.spine_session) | (adds == 0)
        by_day = np.round(sets.T @ share, 9)
        room = np.minimum(p.session_most - by_day, (p.most - by_day.sum(axis=0))[None, :])
        for early, late in p.next_day:
            left = p.two_days_most - by_day[early] - by_day[late]
            left_back = p.spine_two_days - back[early] - back[late]
            for d in (early, late):
                room[d] = np.minimum(room[d], left)
                free[:, d] &= (adds[:, d] <= left_back) | (adds[:, d] == 0)
        room = np.maximum(room, 0.0)
        fits = np.all(share[:, None, :] * added[:, :, None] <= room[None, :, :] + 1e-9, axis=2)
        return np.asarray(free & fits)


def _refill(sets: Sets, limits: Limits, score: Score, banned: NDArray[np.bool_]) -> Sets:
    """Add the set, or the new exercise, that gains most a second until nothing gains."""
    sets = sets.copy()
    least = limits.problem.least_sets
    while True:
        added = np.where(sets > 0, 1, least).astype(np.int64)
        room = limits.room(sets, added) & ~(banned & (sets == 0))
        if not room.any():
            return sets
        gain = np.where(room, score.gains(sets, added), -np.inf)
        rate = gain / score.seconds(sets, added)
        cell = np.unravel_index(int(np.argmax(rate)), rate.shape)
        if gain[cell] <= 0:
            return sets
        sets[cell] += added[cell]


def start(problem: Problem, rounds: int) -> Sets:
    """Search for a good week by removing and refilling.

    Args:
        problem: options, days and limits.
        rounds: removals tried; the same number always gives the same week.

    Returns:
        Sets of each option on each day within every limit of the model, shape (O, D).
    """
    draw = np.random.default_rng(problem.seed)
    limits, score = Limits(problem), Score(problem)
    shape = (len(problem.options), len(problem.minutes))
    none = np.zeros(shape, dtype=bool)
    now = _refill(problem.fixed, limits, score, none)
    value = score.of(now)
    best, highest = now, value
    for number in range(rounds):
        tried, banned = now.copy(), none.copy()
        cells = np.argwhere((now > 0) & (problem.fixed == 0))
        if not len(cells):
            break
        count = min(int(draw.choice(REMOVED)), len(cells))
        for o, d in cells[draw.choice(len(cells), count, replace=False)]:
            whole = draw.random() < 0.6 or tried[o, d] <= problem.least_sets
            tried[o, d] = 0 if whole else tried[o, d] - 1
            banned[o, d] = whole and draw.random() < 0.7
        tried = _refill(tried, limits, score, banned)
        reached = score.of(tried)
        if reached > value - WORSE_AT_FIRST * abs(value) * (1 - number / rounds) ** 2:
            now, value = tried, reached
        if value > highest:
            best, highest = now, value
    for first, second in problem.alike_days:
        if best[:, first].sum() < best[:, second].sum():
            best = best.copy()
            best[:, [first, second]] = best[:, [second, first]]
    return best
