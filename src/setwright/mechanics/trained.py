"""How strong a joint is beside the models: measured torques set the size, the models the shares.

The models' muscles are stronger than people are, most of all near extension. For the joints with
measured torque at each angle the group follows the shape of that curve; its size stays that of the
block.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.fibre import fibre_state, fibres
from setwright.mechanics.movement import Block
from setwright.mechanics.paths import load
from setwright.mechanics.turns import Array

# One figure for every muscle of a block brings the models near a trained person; the muscles of a
# block keep the ratios their areas give them.
SIZE: Final[Mapping[Block, float]] = {"leg": 0.9, "trunk": 1.0, "arm": 1.3, "neck": 1.0}

# Strength grows with the cross-section of the body, that is with mass to this power (common
# practice: strength beside body mass); women beside men of the same mass (from memory).
MASS_KG: Final = 75.0
MASS_POWER: Final = 2 / 3
WOMEN: Final[Mapping[Block, float]] = {"leg": 0.8, "trunk": 0.75, "arm": 0.65, "neck": 0.7}


@dataclass(frozen=True)
class Group:
    """Muscles that turn one joint one way, and the torque measured there.

    Attributes:
        parts: beginnings of their part ids.
        coordinate: the joint.
        sense: +1 when they raise the coordinate.
        posture_deg: how the other joints stood.
        torque_nm: by angle in degrees, men of 75 kg and 1.77 m.
    """

    parts: tuple[str, ...]
    coordinate: str
    sense: int
    posture_deg: Mapping[str, float]
    torque_nm: Mapping[float, float]


# Isometric curves of "Maximum voluntary joint torque as a function of joint angle and angular
# velocity: Model development and application to the lower limb", Journal of Biomechanics, 2007,
# 10.1016/j.jbiomech.2007.03.022 (title and DOI from memory); postures of the other joints: memory.
GROUPS: Final = (
    Group(
        ("rectus-femoris", "vastus"),
        "knee flexion",
        -1,
        {"hip flexion": 70.0},
        {20: 117, 30: 153, 45: 192, 60: 211, 75: 207, 90: 181, 105: 135},
    ),
    Group(
        ("gluteus", "adductor", "biceps-femoris-long", "semi", "gracilis", "deep-hip"),
        "hip flexion",
        -1,
        {"knee flexion": 60.0},
        {0: 132, 30: 194, 45: 208, 60: 208, 90: 172},
    ),
    # Two studies contradict each other (strongest at -12 degrees; at 105 in "Re-examination of hip
    # flexion angle-torque characteristics", Isokinetics and Exercise Science, 2024,
    # 10.3233/IES-240003): alike at every angle.
    Group(
        ("psoas", "iliacus", "sartorius", "tensor"),
        "hip flexion",
        1,
        {"knee flexion": 60.0},
        {0: 100, 30: 100, 60: 100, 90: 100, 105: 100},
    ),
)


# Muscles that raise the arm in front: measured 90 N·m with the arm hanging, 69 at 45 degrees (men;
# "Dynamic shoulder flexion strength: for use in occupational risk analysis and clinical
# assessment", read: abstract), modelled 54 and 70.
RAISERS: Final = ("deltoid-anterior", "pectoralis-clavicular", "coracobrachialis")
RAISING: Final = (np.radians([0.0, 45.0]), np.array([1.67, 1.0]))


@cache
def _factors() -> tuple[tuple[Array, Array], ...]:
    """Angles, rad, and measured over modelled torque (mean 1), of every group."""
    paths = load("leg")
    fibre = fibres(paths)
    found = []
    for group in GROUPS:
        angles = np.radians(list(group.torque_nm))
        pose = np.zeros((len(angles), len(paths.coordinates)))
        for name, degrees in group.posture_deg.items():
            pose[:, paths.coordinates.index(name)] = np.radians(degrees)
        place = paths.coordinates.index(group.coordinate)
        pose[:, place] = angles
        lengths, arms = paths.evaluate(pose)
        state = fibre_state(lengths, fibre)
        f0 = np.array([e.f0_n for e in paths.elements])
        torque = (
            np.maximum(group.sense * arms[:, :, place], 0.0) * f0 * (state.force + state.passive)
        )
        factor = np.array(list(group.torque_nm.values())) / torque.sum(axis=1)
        found.append((angles, factor / factor.mean()))
    return tuple(found)


def strength(
    block: Block, parts: tuple[str | None, ...], angles: Mapping[str, Array], build: Build
) -> Array:
    """Factor on the largest force of each element in each posture, (F, M)."""
    frames = len(next(iter(angles.values())))
    whole = SIZE[block] * (build.mass_kg / MASS_KG) ** MASS_POWER
    if build.sex == "female":
        whole *= WOMEN[block]
    found = np.full((frames, len(parts)), whole)
    if block == "arm":
        raising = np.interp(np.abs(angles["arm elevation"]), *RAISING)
        for k, part in enumerate(parts):
            if part in RAISERS:
                found[:, k] *= raising
    if block != "leg":
        return found
    for group, (known, factor) in zip(GROUPS, _factors(), strict=True):
        column = whole * np.interp(angles[group.coordinate], known, factor)
        for k, part in enumerate(parts):
            if part is not None and part.startswith(group.parts):
                found[:, k] = column
    return found
