"""The postures of a movement along its range, balanced over what carries the body."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.movement import ANGLES, FIXED, Movement
from setwright.mechanics.outer import load_forces, support_centre
from setwright.mechanics.skeleton import Skeleton, skeleton
from setwright.mechanics.statics import GRAVITY, weights, wrench
from setwright.mechanics.turns import Array

STEPS: Final = 12
# How far from the declared angle a balanced posture is looked for, and how finely.
GRID_RAD: Final = np.radians(np.arange(-54.0, 54.1, 9.0))
# Lever arm, m, below which the body counts as balanced.
BALANCED_M: Final = 1e-4


def along(frames: int) -> Array:
    """Points of the range, 0 stretched to 1 shortened, (F,)."""
    return np.linspace(0.0, 1.0, frames)


def declared(movement: Movement, range_: Array) -> dict[str, Array]:
    """Every angle at the points of the range, rad, before balancing."""
    found = {}
    for name in ANGLES:
        held = movement.hold.get(name, 0.0)  # type: ignore[call-overload]
        ends = [movement.stretched.get(name), movement.shortened.get(name)]  # type: ignore[call-overload]
        inside = [(one.at, one.posture.get(name)) for one in movement.between]  # type: ignore[call-overload]
        keys = [(0.0, ends[0]), (1.0, ends[1]), *inside]
        if all(value is None for _, value in keys):
            if name.startswith("other ") and name not in movement.hold:
                continue
            ends = [held, held]
        keys = [(float(at), held if value is None else value) for at, value in enumerate(ends)]
        known = sorted([*keys, *((at, value) for at, value in inside if value is not None)])
        degrees = np.interp(range_, [at for at, _ in known], [value for _, value in known])
        found[name] = np.radians(degrees)
    return found


def postures(
    movement: Movement,
    build: Build,
    frames: int = 20,
    stance: Mapping[str, float] | None = None,
) -> tuple[dict[str, Array], Skeleton]:
    """Angles and skeleton along the range; ``stance`` shifts angles by some degrees.

    Raises:
        PostureError: when the body cannot balance in a posture.
    """
    range_ = along(frames)
    angles = declared(movement, range_)
    for name, degrees in (stance or {}).items():
        angles[name] = angles[name] + np.radians(degrees)
    level = movement.foot_flat and {"feet", "foot"} & set(movement.support)
    fixed = bool(set(FIXED) & set(movement.support))
    if movement.balance is None or fixed:
        return _placed(angles, build, movement, bool(level))
    return _balanced(movement, build, angles, range_, bool(level))


def _placed(
    angles: Mapping[str, Array], build: Build, movement: Movement, level: bool
) -> tuple[dict[str, Array], Skeleton]:
    angles = dict(angles)
    if level:
        angles["lean"] = (
            angles["hip flexion"] - angles["knee flexion"] + angles["ankle dorsiflexion"]
        )
    if movement.arms_hang is not None:
        trunk = angles["lean"] + angles["trunk flexion"]
        angles["arm plane"] = np.full_like(trunk, np.pi / 2)
        angles["arm elevation"] = trunk - np.radians(movement.arms_hang) * np.sin(trunk)
    return angles, skeleton(angles, build)


def _balanced(
    movement: Movement, build: Build, angles: dict[str, Array], range_: Array, level: bool
) -> tuple[dict[str, Array], Skeleton]:
    name = str(movement.balance)
    start = angles[name]

    def lever(offset: Array) -> Array:
        """Lever arm with the balancing angle moved by (F,) or (F, N) radians."""
        count = 1 if offset.ndim == 1 else offset.shape[1]
        many = {key: np.repeat(value, count) for key, value in angles.items()}
        many[name] = many[name] + offset.ravel()
        placed = _placed(many, build, movement, level)
        return _lever(movement, build, placed, np.repeat(range_, count)).reshape(offset.shape)

    offsets = np.broadcast_to(GRID_RAD, (len(range_), len(GRID_RAD)))
    levers = lever(offsets)
    # Of several postures that balance, the one nearest to what was declared.
    crosses = levers[:, :-1] * levers[:, 1:] <= 0
    middle = np.abs(offsets[:, :-1] + offsets[:, 1:]) / 2
    cell = np.where(crosses, middle, np.inf).argmin(axis=1)
    rows = np.arange(len(range_))
    low, high = offsets[rows, cell], offsets[rows, cell + 1]
    at_low, at_high = levers[rows, cell], levers[rows, cell + 1]
    lost = ~crosses.any(axis=1)
    if lost.any():
        worst = int(np.flatnonzero(lost)[0])
        near = float(levers[worst, np.abs(levers[worst]).argmin()])
        raise PostureError(
            name,
            f"about {np.degrees(start[worst]):.0f} degrees at "
            f"{100 * range_[worst]:.0f} % of the range",
            f"a posture that balances; the weight stays {abs(near) * 100:.0f} cm "
            f"{'ahead of' if near > 0 else 'behind'} the support",
        )
    found = low
    for _ in range(STEPS):
        found = low - at_low * (high - low) / np.where(at_high == at_low, 1.0, at_high - at_low)
        here = lever(found)
        same = here * at_low > 0
        # Illinois rule: the end that stays loses half its weight, so that both ends close in.
        at_high = np.where(same, at_high / 2, here)
        high = np.where(same, high, found)
        at_low = np.where(same, here, at_low / 2)
        low = np.where(same, found, low)
        if np.abs(here).max() < BALANCED_M:
            break
    return _placed({**angles, name: start + found}, build, movement, level)


def _lever(
    movement: Movement, build: Build, placed: tuple[dict[str, Array], Skeleton], range_: Array
) -> Array:
    """How far ahead of its support the body and its load press, m (F,)."""
    _, body = placed
    mass = build.mass_kg * GRAVITY
    forces = [*weights(body)]
    if not movement.bodyweight or movement.load:
        guess = movement.load_guess * mass
        forces += load_forces(movement, body, build.stature_m, range_, guess)
    total = wrench(forces, len(range_))
    centre = support_centre(movement, body, build.stature_m)
    moment = total[:, 5] - np.cross(centre, total[:, :3])[:, 2]
    lever: Array = -moment / mass
    return lever
