"""What the lab found, summed up over its lifters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np

from setwright.lab.baselines import BASELINES
from setwright.lab.check import Z95, Check
from setwright.lab.closed_loop import COACHES, ClosedRun
from setwright.lab.open_loop import OpenRun

TARGET_LOWER, TARGET_COVER, TARGET_BIAS = 20.0, (77.0, 83.0), 0.5


@dataclass(frozen=True)
class Figure:
    """A mean over lifters with its 95 % interval."""

    mean: float
    low: float
    high: float


@dataclass(frozen=True)
class Rule:
    """Errors of one way to foretell, repetitions.

    Attributes:
        name: of the way.
        mae: mean absolute error over all judged sets.
        bias: mean of got less foretold.
        median: median absolute error.
        over_three: share of sets off by more than three.
    """

    name: str
    mae: float
    bias: float
    median: float
    over_three: float


@dataclass(frozen=True)
class BiasReport:
    """Bias of calls after six weeks: real less felt reserve, repetitions.

    Attributes:
        error: of the estimate, mean absolute over lifters (each the mean over exercises).
        error_alike: the same when every lifter is told the mean of all.
        error_exercise: of the estimate, mean absolute over exercises of lifters.
        real: mean.
        told: mean.
        likeness: correlation of real and told over exercises of lifters.
    """

    error: float
    error_alike: float
    error_exercise: float
    real: float
    told: float
    likeness: float


@dataclass(frozen=True)
class OpenReport:
    """Open loop.

    Attributes:
        sets: judged.
        rules: the estimate first.
        best: name of the baseline with the least mean absolute error.
        lower: how much lower the estimate's is than the best baseline's, percent.
        lower_by: difference of the errors a lifter, repetitions, paired.
        covered: share of sets inside the 80 % interval, percent.
        covered_whole: the same with ends rounded to whole repetitions.
        width: of the interval, mean, repetitions.
        by_weeks: (weeks, estimate's error, best baseline's, covered %) for each four weeks.
        bias: of calls, after six weeks; None when too few lifters trained so long.
        slips: share of sets logged wrongly, percent.
        slips_doubted: share of those that the estimate doubted, percent.
        right_doubted: share of right sets doubted, percent.
    """

    sets: int
    rules: tuple[Rule, ...]
    best: str
    lower: float
    lower_by: Figure
    covered: float
    covered_whole: float
    width: float
    by_weeks: tuple[tuple[str, float, float, float], ...]
    bias: BiasReport | None
    slips: float
    slips_doubted: float
    right_doubted: float


@dataclass(frozen=True)
class CoachReport:
    """One coach in the closed loop.

    Attributes:
        name: of the coach.
        gained: strength gained, percent.
        beyond: sets beyond capacity, percent of sets.
        failed: sets with a repetition tried in vain, percent of sets.
        left: repetitions really left.
        fraction: load over the 1RM of the moment.
        sets: a lifter.
        ours_more: ours less this one's gain, paired; None for ours.
        ours_beyond: the same of sets beyond capacity, percentage points.
    """

    name: str
    gained: Figure
    beyond: Figure
    failed: float
    left: float
    fraction: float
    sets: float
    ours_more: Figure | None
    ours_beyond: Figure | None


@dataclass(frozen=True)
class LabReport:
    """Everything."""

    lifters: int
    weeks: int
    seed: int
    checks: tuple[Check, ...]
    open_loop: OpenReport
    closed_loop: tuple[CoachReport, ...]


def figure(values: Sequence[float]) -> Figure:
    """Mean and its 95 % interval."""
    got = np.asarray(values, dtype=float)
    half = Z95 * float(got.std(ddof=1)) / sqrt(len(got)) if len(got) > 1 else 0.0
    mean = float(got.mean())
    return Figure(mean, mean - half, mean + half)


def sum_up_open(runs: Sequence[OpenRun]) -> OpenReport:
    """Sum up the open loop over lifters with at least one judged set."""
    errors = np.concatenate([run.errors for run in runs])
    off = np.abs(errors)
    names = ("the estimate", *BASELINES)
    rules = tuple(
        Rule(
            name,
            float(off[:, k].mean()),
            float(errors[:, k].mean()),
            float(np.median(off[:, k])),
            float((off[:, k] > 3.0).mean()),
        )
        for k, name in enumerate(names)
    )
    best = 1 + int(np.argmin([rule.mae for rule in rules[1:]]))
    inside = np.concatenate([run.inside for run in runs])
    week = np.concatenate([run.week for run in runs])
    by_weeks: list[tuple[str, float, float, float]] = []
    for start in range(0, int(week.max()) + 1, 4):
        here = (week >= start) & (week < start + 4)
        if here.any():
            name = f"{start + 1}-{start + 4}"
            mine, theirs = float(off[here, 0].mean()), float(off[here, best].mean())
            by_weeks.append((name, mine, theirs, 100.0 * float(inside[here].mean())))
    differences = [
        float(np.abs(run.errors[:, best]).mean() - np.abs(run.errors[:, 0]).mean())
        for run in runs
        if len(run.errors)
    ]
    slips = sum(run.slips for run in runs)
    sets = sum(run.sets for run in runs)
    return OpenReport(
        len(errors), rules, rules[best].name, 100.0 * (1.0 - rules[0].mae / rules[best].mae),
        figure(differences), 100.0 * float(inside.mean()),
        100.0 * float(np.concatenate([run.inside_whole for run in runs]).mean()),
        float(np.concatenate([run.width for run in runs]).mean()), tuple(by_weeks),
        _bias(runs), 100.0 * slips / sets,
        100.0 * sum(run.odd_slips for run in runs) / max(slips, 1),
        100.0 * sum(run.doubted for run in runs) / max(sets - slips, 1),
    )  # fmt: skip


def _bias(runs: Sequence[OpenRun]) -> BiasReport | None:
    known = [(run.bias_real, run.bias_told) for run in runs if run.bias_of]
    if len(known) < 2:
        return None
    real, told = np.array(known).T
    pairs = np.array([pair for run in runs for pair in run.bias_of.values()])
    return BiasReport(
        float(np.abs(real - told).mean()),
        float(np.abs(real - real.mean()).mean()),
        float(np.abs(pairs[:, 0] - pairs[:, 1]).mean()),
        float(real.mean()),
        float(told.mean()),
        float(np.corrcoef(pairs.T)[0, 1]),
    )


def sum_up_closed(runs: dict[str, Sequence[ClosedRun]]) -> tuple[CoachReport, ...]:
    """Sum up the closed loop; the lifters of all coaches in the same order."""
    gained = {name: np.array([run.gained for run in of]) for name, of in runs.items()}
    beyond = {
        name: np.array([100.0 * run.beyond / max(run.sets, 1) for run in of])
        for name, of in runs.items()
    }
    found = []
    for name in COACHES:
        of = runs[name]
        ours = name == COACHES[0]
        found.append(
            CoachReport(
                name,
                figure(gained[name].tolist()),
                figure(beyond[name].tolist()),
                100.0 * sum(run.failed for run in of) / max(sum(run.sets for run in of), 1),
                float(np.mean([run.left for run in of])),
                float(np.mean([run.fraction for run in of])),
                float(np.mean([run.sets for run in of])),
                None if ours else figure((gained[COACHES[0]] - gained[name]).tolist()),
                None if ours else figure((beyond[COACHES[0]] - beyond[name]).tolist()),
            )
        )
    return tuple(found)
