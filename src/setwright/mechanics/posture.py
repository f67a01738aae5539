"""The postures of a movement along its range, balanced over what carries the body."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import ANGLES, FIXED, Movement
from setwright.mechanics.outer import load_forces, support_centre
from setwright.mechanics.turns import Array
from setwright.mechanics.skeleton import Skeleton, skeleton
from setwright.mechanics.statics import GRAVITY, weights, wrench

STEPS: Final = 12
LARGEST_STEP_RAD: Final = 0.35
PROBE_RAD: Final = 1e-4
# Lever arm, m, below which the body counts as balanced.
BALANCED_M: Final = 1e-4
FAR_ENOUGH_M: Final = 5e-3


class PostureError(ValueError):
    """A posture no body can hold.

    Attributes:
        field: the field of the movement that cannot be met.
        found: what was asked.
        allowed: what would be possible.
    """

    def __init__(self, field: str, found: str, allowed: str) -> None:
        """Keep the three parts beside the message."""
        super().__init__(f"{field}: found {found}, allowed {allowed}")
        self.field, self.found, self.allowed = field, found, allowed


def along(frames: int) -> Array:
    """Points of the range, 0 stretched to 1 shortened, (F,)."""
    return np.linspace(0.0, 1.0, frames)


def declared(movement: Movement, range_: Array) -> dict[str, Array]:
    """Every angle at the points of the range, rad, before balancing."""
    found = {}
    for name in ANGLES:
        held = movement.hold.get(name, 0.0)  # type: ignore[call-overload]
        keys = [(0.0, movement.stretched.get(name)), (1.0, movement.shortened.get(name))]  # type: ignore[call-overload]
        keys += [(one.at, one.posture.get(name)) for one in movement.between]  # type: ignore[call-overload]
        known = sorted((at, value) for at, value in keys if value is not None)
        if not known:
            if name.startswith("other ") and name not in movement.hold:
                continue
            known = [(0.0, held)]
        degrees = np.interp(range_, [at for at, _ in known], [value for _, value in known])
        found[name] = np.radians(degrees)
    return found


def postures(
    movement: Movement, build: Build, frames: int = 20
) -> tuple[dict[str, Array], Skeleton]:
    """Angles and skeleton along the range.

    Raises:
        PostureError: when the body cannot balance in a posture.
    """
    range_ = along(frames)
    angles = declared(movement, range_)
    level = movement.foot_flat and {"feet", "foot"} & set(movement.support)
    fixed = bool(set(FIXED) & set(movement.support))
    if movement.balance is None or fixed:
        return _placed(angles, build, bool(level))
    return _balanced(movement, build, angles, range_, bool(level))


def _placed(
    angles: Mapping[str, Array], build: Build, level: bool
) -> tuple[dict[str, Array], Skeleton]:
    angles = dict(angles)
    if level:
        angles["lean"] = (
            angles["hip flexion"] - angles["knee flexion"] + angles["ankle dorsiflexion"]
        )
    return angles, skeleton(angles, build)


def _balanced(
    movement: Movement, build: Build, angles: dict[str, Array], range_: Array, level: bool
) -> tuple[dict[str, Array], Skeleton]:
    name = str(movement.balance)
    start = angles[name]
    # Newton's method on the lever arm of everything that is carried about the support.
    for _ in range(STEPS):
        lever = _lever(movement, build, _placed(angles, build, level), range_)
        if np.abs(lever).max() < BALANCED_M:
            break
        probed = {**angles, name: angles[name] + PROBE_RAD}
        slope = (_lever(movement, build, _placed(probed, build, level), range_) - lever) / PROBE_RAD
        steady = np.where(np.abs(slope) < 1e-3, np.copysign(1e-3, slope), slope)
        step = np.clip(-lever / steady, -LARGEST_STEP_RAD, LARGEST_STEP_RAD)
        angles = {**angles, name: angles[name] + step}
    found = _placed(angles, build, level)
    lever = _lever(movement, build, found, range_)
    worst = int(np.abs(lever).argmax())
    if abs(lever[worst]) > FAR_ENOUGH_M:
        raise PostureError(
            name,
            f"about {np.degrees(start[worst]):.0f} degrees at {100 * range_[worst]:.0f} % of the range",
            f"a posture that balances; the weight stays {abs(lever[worst]) * 100:.0f} cm "
            f"{'ahead of' if lever[worst] > 0 else 'behind'} the support",
        )
    return found


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
