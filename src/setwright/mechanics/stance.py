"""A movement with its feet further apart or closer, hips and toes following."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, Literal

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import Angle, Between, Movement, Posture
from setwright.mechanics.posture import postures
from setwright.mechanics.skeleton import Skeleton, skeleton
from setwright.mechanics.turns import Array

Stance = Literal["narrow", "medium", "wide"]

# How far apart the ankles stand against the declared stance, how much further the toes turn out and
# the shin leans, degrees (common practice).
STANCES: Final[Mapping[str, tuple[float, float, float]]] = {
    "narrow": (0.65, -8.0, 2.0),
    "wide": (1.6, 12.0, -6.0),
}
TURNS: Final[tuple[Angle, Angle]] = ("hip abduction", "hip internal rotation")
# Newton's method finds the hips of a stance; well inside what the leg figures cover.
STEPS: Final = 8
PROBE_RAD: Final = 1e-4
HIPS_DEG: Final = np.array([[-15.0, 43.0], [-38.0, 33.0]])
# No shin is leaned further than this for the sake of a bar.
MOST_SHIN_DEG: Final = 35.0
# Points of the range the key postures are taken from.
FINE: Final = 81


def with_stance(movement: Movement, stance: Stance, build: Build) -> Movement:
    """Hips that set the ankles and toes as the stance wants, at every key posture."""
    if stance == "medium":
        return movement
    apart, outward, lean = STANCES[stance]
    _, usual = postures(movement, build, FINE)
    movement = movement.model_copy(update={"stretched": leaned(movement.stretched, lean)})
    angles, _ = postures(movement, build, FINE)
    keys = sorted({0.0, 0.5, 1.0, *(one.at for one in movement.between)})
    rows = [round(at * (FINE - 1)) for at in keys]
    wanted = _feet(usual)[rows] * [apart, 1.0] + [0.0, np.radians(outward)]
    start = {name: values[rows] for name, values in angles.items()}
    found = dict(zip(keys, np.degrees(_hips(start, wanted, build)), strict=True))

    def moved(at: float, posture: Posture) -> Posture:
        turns = zip(TURNS, found[at], strict=True)
        return {**posture, **{name: round(float(degrees), 2) for name, degrees in turns}}

    between = {one.at: one.posture for one in movement.between}
    inner = tuple(Between(at=at, posture=moved(at, between.get(at, {}))) for at in keys[1:-1])
    stretched = moved(0.0, movement.stretched)
    shortened = moved(1.0, movement.shortened)
    return movement.model_copy(
        update={"stretched": stretched, "shortened": shortened, "between": inner}
    )


def _feet(body: Skeleton) -> Array:
    """How far out the right ankle stands, m, and its toes turn, rad (F, 2)."""
    shank, foot = body.placed["shank right"], body.placed["foot right"]
    return np.stack((shank.far[:, 2], np.arcsin(foot.rotation[:, 2, 0])), axis=-1)


def _hips(angles: Mapping[str, Array], wanted: Array, build: Build) -> Array:
    """Hip abduction and internal rotation, rad (F, 2), that put the foot where it is wanted."""
    turns = np.stack([angles[name] for name in TURNS], axis=-1)

    def feet(tried: Array) -> Array:
        posed = {**angles, **dict(zip(TURNS, tried.T, strict=True))}
        return _feet(skeleton(posed, build))

    for _ in range(STEPS):
        here = feet(turns)
        slope = np.stack(
            [(feet(turns + step) - here) / PROBE_RAD for step in PROBE_RAD * np.eye(2)], axis=-1
        )
        step = np.linalg.solve(slope, (wanted - here)[:, :, None])[:, :, 0]
        turns = np.clip(turns + step, *np.radians(HIPS_DEG).T)
    return turns


def leaned(posture: Posture, degrees: float) -> Posture:
    """A posture with the shin leaned further; knee and ankle alike, so that the thigh stays."""
    if "knee flexion" not in posture or "ankle dorsiflexion" not in posture:
        return posture
    further = min(degrees, MOST_SHIN_DEG - posture["ankle dorsiflexion"])
    changed: Posture = {"knee flexion": posture["knee flexion"] + further,
                        "ankle dorsiflexion": posture["ankle dorsiflexion"] + further}  # fmt: skip
    return {**posture, **changed}
