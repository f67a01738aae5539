"""How well the next set's repetitions are foretold on an open log of real people.

Usage: python benchmarks/strength_real_logs.py [--data FILE]. The log stays outside the project;
the regressor needs scikit-learn (the `bench` extra).
"""

from __future__ import annotations

import argparse
import importlib.util
import sys
from pathlib import Path

import numpy as np

from setwright.training.constants import setting

sys.path.insert(0, str(Path(__file__).resolve().parent / "real_log"))

from sets_to_failure import DATA, SETTING, all_told, people
from strength_baselines import told_by_baselines
from strength_figures import figures


def line(name: str, got: object, told: object, cover: str = "") -> None:
    """Print one row: errors as foretold and rounded to whole repetitions."""
    off = np.asarray(got) - np.asarray(told)
    whole = np.asarray(got) - np.round(np.asarray(told))
    print(
        f"{name:44s} {np.abs(off).mean():8.3f} {np.abs(whole).mean():8.3f} "
        f"{np.sqrt((off**2).mean()):8.3f} {cover:>8s}"
    )


def main() -> None:
    """Everything in one run."""
    arguments = argparse.ArgumentParser()
    arguments.add_argument("--data", type=Path, default=DATA)
    path = arguments.parse_args().data
    if not path.is_file():
        print("the open log of sets to failure is not beside the project (../shared/data)")
        return
    log = people(path)
    got, baselines = told_by_baselines(log)
    print(f"{len(log)} people, {len(got)} sets after a person's third on a machine")
    print(f"{'':44s} {'MAE':>8s} {'rounded':>8s} {'RMSE':>8s} {'80 % in':>8s}")
    for name, told in baselines.items():
        line(name, got, told)
    if importlib.util.find_spec("sklearn"):
        from strength_regressor import cross_validated

        line("regressor, cross-validated by person", *cross_validated(log))
    else:
        print("regressor: scikit-learn is not installed")
    for name, constants in (
        (f"this estimate, constants for {SETTING}", setting(SETTING)),
        ("this estimate, general constants", setting()),
    ):
        told = all_told(log, constants)
        late = [one for one in told if one.before >= 3]
        inside = f"{100 * np.mean([one.low <= one.got <= one.high for one in late]):.1f}"
        line(name, [one.got for one in late], [one.centre for one in late], inside)
    print("median foretold (a whole number), and more:", figures(all_told(log)))


if __name__ == "__main__":
    main()
