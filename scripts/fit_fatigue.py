"""Fit the constants of fatigue to published repetitions across sets.

Run ``python scripts/fit_fatigue.py`` to print the fit and the error of leaving one study out;
add ``--write`` to write src/setwright/rehearsal/coefficients.json.
"""

from __future__ import annotations

import argparse
import dataclasses
import json
from collections.abc import Sequence
from math import erf, exp, pi, sqrt
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

from setwright.rehearsal.coefficients import COEFFICIENTS, FatigueCoefficients
from setwright.rehearsal.fatigue import Fatigue
from setwright.rehearsal.strength import fraction_at, reps_at

HERE = Path(__file__).parent
TARGET = HERE.parent / "src" / "setwright" / "rehearsal" / "coefficients.json"
FITTED = ("lost", "half_reps", "tau_s", "female")
START = (0.7, 2.0, 200.0, 0.7)
LOWEST = (0.1, 0.0, 20.0, 0.2)
HIGHEST = (1.0, 15.0, 1500.0, 1.2)
# Loss turns from squared to absolute at this many repetitions a set, so that no study rules.
SOFT_REPS = 0.3
# How much a set of the lift taxes the whole person, as the catalogue would say.
WHOLE_BODY = {"bench press": 0.4, "leg press": 0.7, "general": 0.3}

Study = dict[str, Any]


def studies() -> list[Study]:
    """The studies of rest_studies.json."""
    text = (HERE / "rest_studies.json").read_text(encoding="utf-8")
    found: list[Study] = json.loads(text)["studies"]
    return found


def mean_capped(mean: float, sd: float, cap: float) -> float:
    """Mean of a normal value that cannot exceed ``cap``."""
    if sd < 1e-6:
        return min(mean, cap)
    z = (cap - mean) / sd
    below = 0.5 * (1 + erf(z / sqrt(2)))
    return cap * (1 - below) + mean * below - sd * exp(-z * z / 2) / sqrt(2 * pi)


def fresh_reps(condition: Study) -> NDArray[np.float64]:
    """Repetitions each set would have if the person were fresh."""
    curve = condition["curve"]
    if "drop" in condition:
        first = float(fraction_at(condition["first"], curve))
        steps = np.arange(condition["number"])
        return reps_at(first * (1 - condition["drop"] * steps), curve)
    if condition["first"] is None:
        return reps_at(np.array(condition["fractions"]), curve)
    # A load called an n-RM allows n repetitions and less than one more.
    more = 0.5 if "cap" in condition else 0.0
    return np.full(len(condition["fractions"]), condition["first"] + more)


def predict(condition: Study, constants: FatigueCoefficients) -> NDArray[np.float64]:
    """Predicted repetitions of each set of a condition."""
    whole = np.array([WHOLE_BODY[condition["curve"]]])
    state = Fatigue(np.ones((1, 1)), whole, condition["sex"], constants)
    cap = condition.get("cap")
    done = []
    for number, fresh in enumerate(fresh_reps(condition)):
        if number:
            state.rest(condition["rest_s"])
        possible = fresh * state.kept(0)
        reps = possible
        if cap is not None:
            spread = constants.between_people * (fresh - possible)
            reps = mean_capped(possible, spread, cap)
        state.work(0, reps, possible - reps)
        done.append(reps)
    return np.array(done)


def errors(study: Study, constants: FatigueCoefficients) -> NDArray[np.float64]:
    """Predicted minus observed, repetitions a set; totals are divided by their sets."""
    found: list[float] = []
    for condition in study["conditions"]:
        sets = predict(condition, constants)
        if "sets" in condition:
            found.extend(sets[1:] - np.array(condition["sets"][1:]))
        elif "total" in condition:
            found.append((sets.sum() - condition["total"]) / len(sets))
        else:
            found.append(sets.mean() - condition["mean"])
    return np.array(found)


def fit(chosen: Sequence[Study]) -> FatigueCoefficients:
    """Constants fitted to the chosen studies, each study with the same weight."""

    def weighted(values: NDArray[np.float64]) -> NDArray[np.float64]:
        constants = with_values(values)
        parts = [errors(study, constants) for study in chosen]
        return np.concatenate([part / sqrt(len(part)) for part in parts])

    answer = least_squares(
        weighted, START, bounds=(LOWEST, HIGHEST), loss="soft_l1", f_scale=SOFT_REPS
    )
    return with_values(answer.x)


def with_values(values: Sequence[float] | NDArray[np.float64]) -> FatigueCoefficients:
    """The committed constants with the fitted ones replaced."""
    fitted = dict(zip(FITTED, (float(value) for value in values), strict=True))
    return dataclasses.replace(COEFFICIENTS.fatigue, **fitted)


def leave_one_out(known: Sequence[Study]) -> dict[str, float]:
    """Mean absolute error of each study, fitted without it and without its group."""
    answer = {}
    for study in known:
        rest = [other for other in known if other["group"] != study["group"]]
        answer[study["id"]] = float(np.abs(errors(study, fit(rest))).mean())
    return answer


def write(constants: FatigueCoefficients, left_out: dict[str, float]) -> None:
    """Put the fitted constants and the error into coefficients.json."""
    data = json.loads(TARGET.read_text(encoding="utf-8"))
    for name in FITTED:
        data["fatigue"][name]["value"] = round(getattr(constants, name), 4)
    data["leave_one_study_out"] = {
        "unit": "mean absolute error, repetitions a set",
        "studies": {name: round(value, 3) for name, value in left_out.items()},
        "mean": round(float(np.mean(list(left_out.values()))), 3),
    }
    TARGET.write_text(json.dumps(data, indent=2, ensure_ascii=False) + "\n", encoding="utf-8")


def main() -> None:
    """Fit, print, and write when asked."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--write", action="store_true", help="write coefficients.json")
    arguments = parser.parse_args()
    known = studies()
    constants = fit(known)
    print("all studies:", {name: round(getattr(constants, name), 3) for name in FITTED})
    left_out = leave_one_out(known)
    print("mean absolute error, repetitions a set: fitted with the study, and without it")
    for study in known:
        inside = np.abs(errors(study, constants)).mean()
        print(f"  {study['id']:<56} {inside:5.2f} {left_out[study['id']]:5.2f}")
    print(
        f"  mean over {len(known)} studies, each left out: {np.mean(list(left_out.values())):.2f}"
    )
    if arguments.write:
        write(constants, left_out)


if __name__ == "__main__":
    main()
