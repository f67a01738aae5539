"""Fit the constants of the estimate of strength to the open log of sets to failure.

Usage: python scripts/fit_progress.py [--rounds N]. Writes the fitted entries of
src/setwright/training/progress.json and the figures of a cross-validation by person: each fifth
of the people is predicted with constants fitted to the other four. Nothing of the data itself is
written.
"""

from __future__ import annotations

import argparse
import json
import sys
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
from scipy.optimize import minimize

ROOT = Path(__file__).resolve().parents[1]
sys.path.insert(0, str(ROOT / "benchmarks/real_log"))

from sets_to_failure import DATA, SETTING, Row, all_told, people  # noqa: E402
from strength_figures import figures  # noqa: E402

from setwright.training.constants import Constants, setting  # noqa: E402

TARGET = ROOT / "src/setwright/training/progress.json"
FOLDS = 5
STEP = 0.02
# The constants keep near where they start unless the log says otherwise.
PULL = 0.0005
# Those of them that hold for any person; the others belong to this kind of log.
SHARED = (
    "level_walk",
    "form_sd",
    "form_weeks",
    "day_sd",
    "day_own_sd",
    "set_sd",
    "reps_sd",
    "jump",
    "scatter_prior",
    "scatter_share",
    "scatter_sets",
)
# Where every search starts: round figures (common practice), none of them from this log.
START = {
    "level_walk": 0.01,
    "form_sd": 0.015,
    "form_weeks": 5.0,
    "day_sd": 0.01,
    "day_own_sd": 0.01,
    "set_sd": 0.01,
    "reps_sd": 0.1,
    "jump": 0.25,
    "scatter_prior": 5.0,
    "scatter_share": 0.3,
    "scatter_sets": 8.0,
    "first_reps": 8.0,
    "level_sd": 0.03,
    "follow": 0.5,
    "follow_sd": 0.15,
    "trend_sd": 0.002,
    "early": 0.005,
    "early_sd": 0.01,
    "early_weeks": 1.0,
    "curve_sd": 0.1,
    "curve_class_sd": 0.1,
    "curve_own_sd": 0.1,
}
NAMES = tuple(START)
BASIS = (
    "fitted: maximum likelihood of the repetitions in the open data of 'The effects of "
    "lengthened-partial range of motion resistance training of the limbs on arm and thigh muscle "
    "cross-sectional area: a multi-site cluster trial' (preprint, 2024)"
)


def loss(log: dict[int, list[Row]], constants: Constants) -> float:
    """Mean surprise, in natural units of information, of every set but a machine's first."""
    return float(np.mean([one.surprise for one in all_told(log, constants) if one.before >= 1]))


def fitted(log: dict[int, list[Row]], start: Constants, rounds: int) -> Constants:
    """Constants under which the log surprises least."""
    at_start = np.log([getattr(start, name) for name in NAMES])

    def constants(logs: Any) -> Constants:
        return replace(start, **dict(zip(NAMES, np.exp(logs).tolist(), strict=True)))

    def value(logs: Any) -> float:
        return loss(log, constants(logs)) + PULL * float(((logs - at_start) ** 2).sum())

    def with_slope(logs: Any) -> tuple[float, Any]:
        here = value(logs)
        slope = [(value(logs + STEP * unit) - here) / STEP for unit in np.eye(len(NAMES))]
        return here, np.array(slope)

    bounds = [(one - 3.0, one + 3.0) for one in at_start]
    found = minimize(
        with_slope,
        at_start,
        jac=True,
        method="L-BFGS-B",
        bounds=bounds,
        options={"maxiter": rounds, "maxls": 10},
    )
    return constants(found.x)


def cross_validated(
    log: dict[int, list[Row]], start: Constants, rounds: int
) -> dict[str, float | int]:
    """Figures of sets that were predicted with constants fitted to other people."""
    told = []
    for fold in range(FOLDS):
        rest = {who: rows for who, rows in log.items() if who % FOLDS != fold}
        held = {who: rows for who, rows in log.items() if who % FOLDS == fold}
        told += all_told(held, fitted(rest, start, rounds))
    return figures(told)


def main() -> None:
    """Fit, cross-validate, write."""
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--rounds", type=int, default=15)
    asked = arguments.parse_args()
    if not DATA.is_file():
        sys.exit("the open data is not beside the project (../shared/data): nothing fitted")
    log, start = people(), replace(setting(SETTING), **START)
    best = fitted(log, start, asked.rounds)
    data = json.loads(TARGET.read_text(encoding="utf-8"))
    own = data["kinds of log"][SETTING]["constants"]
    for name in NAMES:
        entry = data["constants"] if name in SHARED else own
        value = float(f"{getattr(best, name):.3g}")
        entry[name] = {"value": value, "unit": entry[name]["unit"], "basis": BASIS}
    data["figures"] = {
        "all people, constants fitted to them": figures(all_told(log, best)),
        "cross-validated by person": cross_validated(log, start, asked.rounds),
    }
    TARGET.write_text(json.dumps(data, indent=2) + "\n", encoding="utf-8")
    print(json.dumps(data["figures"], indent=2))


if __name__ == "__main__":
    main()
