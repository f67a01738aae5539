"""Largest forces of the upper-limb muscles, from volumes of living young adults.

The shoulder model's forces come from one old body and the elbow model's from another; muscles that
share a load must come from one family. The leg model's forces come from volumes of young adults
too, at the same force an area.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.turns import Array

# Force of a muscle's cross-section, N/cm2; the leg model's figure (from memory).
FORCE_N_CM2: Final = 60.0


@dataclass(frozen=True)
class Volume:
    """Volume of one muscle and how its parts divide its force.

    Attributes:
        cm3: one side.
        parts: share of the muscle's force by part.
    """

    cm3: float
    parts: Mapping[str, float]


# Volumes: "Upper limb muscle volumes in adult subjects", Journal of Biomechanics, 2007,
# 10.1016/j.jbiomech.2006.11.011 (partly from memory). Division of the deltoid: mean of the
# thoracoscapular model and an open upper-extremity model, which disagree (0.15, 0.56, 0.29 and
# 0.48, 0.44, 0.08); of the others: the models agree.
VOLUMES: Final = (
    Volume(380.0, {"deltoid-anterior": 0.32, "deltoid-middle": 0.50, "deltoid-posterior": 0.18}),
    Volume(
        290.0,
        {"pectoralis-clavicular": 0.26, "pectoralis-sternal": 0.41, "pectoralis-costal": 0.33},
    ),
    Volume(262.0, {"latissimus-upper": 0.30, "latissimus-lower": 0.70}),
    Volume(33.0, {"teres-major": 1.0}),
    Volume(119.0, {"infraspinatus": 1.0}),
    Volume(28.0, {"teres-minor": 1.0}),
    Volume(50.0, {"supraspinatus": 1.0}),
    Volume(164.0, {"subscapularis": 1.0}),
    Volume(25.0, {"coracobrachialis": 1.0}),
    Volume(
        372.0,
        {"triceps-long-head": 0.35, "triceps-lateral-head": 0.325, "triceps-medial-head": 0.325},
    ),
    Volume(144.0, {"biceps-long-head": 0.55, "biceps-short-head": 0.45}),
    Volume(144.0, {"brachialis": 1.0}),
)


def largest_forces(parts: Sequence[str | None], f0_n: Array, l0_m: Array) -> Array:
    """Largest force of each element, N (M,), after the volumes.

    Args:
        parts: (M,) part of each element.
        f0_n: (M,) the model's largest force, N; divides a part between its elements.
        l0_m: (M,) optimal fibre length, m.
    """
    found = f0_n.copy()
    names = np.array([part or "" for part in parts])
    for muscle in VOLUMES:
        fibre_cm = 0.0
        for part, share in muscle.parts.items():
            rows = np.flatnonzero(names == part)
            fibre_cm += share * 100.0 * float(np.average(l0_m[rows], weights=f0_n[rows]))
        whole = FORCE_N_CM2 * muscle.cm3 / fibre_cm
        for part, share in muscle.parts.items():
            rows = np.flatnonzero(names == part)
            found[rows] = whole * share * f0_n[rows] / f0_n[rows].sum()
    return found
