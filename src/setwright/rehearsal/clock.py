"""How long things take: sets by tempo, change-overs, and an interval on the whole.

Figures: findings trans-defaults, set-derived, rep-last-reps-slow and set-one-sided, all common
practice; rep_s and setup_s come from the exercise.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot

from setwright.exercises.model import Exercise
from setwright.plan.week import Entry, Tempo

Z80 = 1.2815515655446004
IN_OUT_S = {"free weight": 12.0, "cable": 8.0, "machine": 8.0, "band": 6.0, "bodyweight": 5.0}
SIDE_SWAP_S = 6.0
WALK_S = 25.0
PARTNER_S = 15.0
# The slow last repetitions of a set to failure add this share of the set.
SLOW_LAST = 0.2
PARTIALS_AFTER = 4
PARTIAL_OF_REP = 0.6
# Standard deviations as shares: pace of repetitions, change-overs (waiting for kit included).
PACE_SD = 0.12
CHANGE_SD = 0.35


def rep_seconds(exercise: Exercise, tempo: Tempo | None) -> float:
    """Seconds of one repetition."""
    if tempo is None:
        return exercise.rep_s
    total = tempo.lowering_s + tempo.stretched_s + tempo.lifting_s + tempo.top_s
    return max(total, 0.5)


def set_seconds(exercise: Exercise, entry: Entry, reps: float, rir: float, last: bool) -> float:
    """Seconds of one working set, both sides of a one-sided exercise included.

    Args:
        exercise: what is lifted.
        entry: tempo and partials.
        reps: full repetitions done.
        rir: repetitions left at the end; near failure the last ones are slow.
        last: the last set, which may have partials after it.
    """
    one = rep_seconds(exercise, entry.tempo)
    if entry.partials == "whole sets":
        one *= PARTIAL_OF_REP
    work = reps * one * (1 + SLOW_LAST / (1 + max(rir, 0.0)))
    if last and entry.partials == "after the last set":
        work += PARTIALS_AFTER * one * PARTIAL_OF_REP
    work += IN_OUT_S[exercise.resistance]
    return 2 * work + SIDE_SWAP_S if exercise.sides == "one" else work


def ramp_seconds(exercise: Exercise, reps: int) -> float:
    """Seconds of one warm-up set."""
    work = reps * exercise.rep_s + IN_OUT_S[exercise.resistance]
    return 2 * work + SIDE_SWAP_S if exercise.sides == "one" else work


def change_seconds(exercise: Exercise) -> float:
    """Seconds to walk to the next exercise and set it up."""
    return WALK_S + exercise.setup_s


@dataclass(frozen=True)
class Spread:
    """80 % interval of a session, s."""

    low_s: float
    high_s: float


def spread(total_s: float, working_s: float, changing_s: float, rest_half_width_s: float) -> Spread:
    """80 % interval of the whole session.

    Args:
        total_s: the estimate.
        working_s: working and warm-up sets; one person's pace is common to all of them.
        changing_s: change-overs.
        rest_half_width_s: half the width of all planned rest ranges together, taken as the
            80 % half-width of the rest.
    """
    rest_sd = rest_half_width_s / Z80
    sd = hypot(hypot(PACE_SD * working_s, CHANGE_SD * changing_s), rest_sd)
    return Spread(max(total_s - Z80 * sd, 0.0), total_s + Z80 * sd)
