"""The fitted constants of the rehearsal, read once from coefficients.json.

The file is written by ``scripts/fit_fatigue.py``; it carries the provenance of every figure.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

from setwright.exercises.model import RepCurve


@dataclass(frozen=True)
class StrengthCoefficients:
    """Constants of the repetition curve and of RIR calls.

    Attributes:
        a: curve constant per class of lift, repetitions.
        sd_at_1rm: between-person SD of repetitions at the 1RM.
        sd_slope: growth of that SD from full to no load, repetitions.
        rir_sd_at_10: SD of a call of 1 RIR in a set of 10 repetitions.
        rir_sd_slope: growth of that SD a repetition.
        rir_sd_least: least SD of any call.
        tempo_exponent: repetitions go with the seconds a repetition to this power.
    """

    a: dict[RepCurve, float]
    sd_at_1rm: float
    sd_slope: float
    rir_sd_at_10: float
    rir_sd_slope: float
    rir_sd_least: float
    tempo_exponent: float


@dataclass(frozen=True)
class FatigueCoefficients:
    """Constants of fatigue.

    Attributes:
        lost: share of repetitions a long set to failure takes away, before any rest.
        half_reps: repetitions at which half of ``lost`` is reached.
        tau_s: time constant of local recovery, s.
        female: fatigue of women over that of men.
        between_people: SD between people of the repetitions lost, as a share of them.
        general_lost: share of repetitions one set to failure of a whole-body exercise takes from
            every later exercise.
        general_tau_s: time constant of general recovery, s.
    """

    lost: float
    half_reps: float
    tau_s: float
    female: float
    between_people: float
    general_lost: float
    general_tau_s: float


@dataclass(frozen=True)
class Coefficients:
    """All of them."""

    strength: StrengthCoefficients
    fatigue: FatigueCoefficients


def _values(block: dict[str, Any]) -> dict[str, Any]:
    return {name: entry["value"] for name, entry in block.items()}


def read(text: str) -> Coefficients:
    """The constants out of the text of a coefficients file."""
    data = json.loads(text)
    return Coefficients(
        StrengthCoefficients(**_values(data["strength"])),
        FatigueCoefficients(**_values(data["fatigue"])),
    )


COEFFICIENTS = read(
    (files("setwright.rehearsal") / "coefficients.json").read_text(encoding="utf-8")
)
