"""What a movement asks of every joint along its range, of the body itself and per unit of load."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.movement import FIXED, Movement
from setwright.mechanics.outer import load_forces, size_along, supports
from setwright.mechanics.posture import along, postures
from setwright.mechanics.pushes import Push, pushes
from setwright.mechanics.shoulder import glenohumeral_slope
from setwright.mechanics.skeleton import Skeleton
from setwright.mechanics.statics import (
    GRAVITY,
    Force,
    contact_forces,
    moments,
    weights,
    wrench,
)
from setwright.mechanics.turns import Array

# Moment, as a share of body weight times one metre, that supports may fail to balance.
UNBALANCED: Final = 0.04
# Segments that press on what carries them and cannot pull; a person sways to make good a pull of
# up to this share of what is carried.
PRESSES: Final = ("foot", "thorax", "pelvis")
PULLS: Final = 0.75


@dataclass(frozen=True)
class Asked:
    """Outer moments along the range; the muscles must give the opposite.

    Attributes:
        range_: (F,) 0 stretched to 1 shortened.
        angles: every angle, rad (F,).
        body: the skeleton.
        own: by coordinate (F,), N·m from the body's own weight.
        load: by coordinate (F,), N·m per unit of load (kg, or N·m for a torque).
        unit: ``kg``, ``N·m`` or ``bodyweights``.
        pressed: (F,) force along the spine at the pelvis from the body's own weight, N.
        pressed_by_load: (F,) the same per unit of load, N.
        pushes: by block, the pushes its hands or feet may add: sideways, and along the feet when
            the other foot, a pad or a bench holds against it.
    """

    range_: Array
    angles: Mapping[str, Array]
    body: Skeleton
    own: Mapping[str, Array]
    load: Mapping[str, Array]
    unit: str
    pressed: Array
    pressed_by_load: Array
    pushes: Mapping[str, tuple[Push, ...]]


def asked(
    movement: Movement,
    build: Build,
    frames: int = 20,
    stance: Mapping[str, float] | None = None,
) -> Asked:
    """Outer moments of a movement for a body; ``stance`` shifts angles by some degrees.

    Raises:
        PostureError: for a posture no body can hold.
    """
    range_ = along(frames)
    angles, body = postures(movement, build, frames, stance)
    slope = glenohumeral_slope(body.blade)
    own_forces = _carried(movement, body, build, list(weights(body)))
    _stands(movement, body, build, range_)
    own = dict(moments(body, angles, own_forces, slope))
    loads = load_forces(movement, body, build.stature_m, range_, GRAVITY)
    load_all = _carried(movement, body, build, loads) if loads else []
    per_load = dict(moments(body, angles, load_all, slope))
    unit = "kg"
    for one in movement.load:
        if one.kind == "torque" and one.about is not None:
            unit = "N·m"
            sides = 1 if movement.side == "one" or one.about.startswith(("trunk", "neck")) else 2
            per_load[one.about] = per_load[one.about] - one.sense * size_along(one, range_) / sides
    if movement.bodyweight:
        # The body and what it carries grow heavier together until the set is near its limit.
        unit = "bodyweights"
        carried = movement.load_guess * build.mass_kg if movement.load else 0.0
        own = {name: own[name] + carried * per_load[name] for name in own}
        per_load, own = own, {name: np.zeros(frames) for name in own}
    pressed = _along_spine(body, own_forces), _along_spine(body, load_all)
    if movement.bodyweight:
        pressed = np.zeros(frames), pressed[0] + carried * pressed[1]
    return Asked(
        range_, angles, body, own, per_load, unit,
        *pressed,
        pushes(movement, body, angles, build, slope, own_forces, load_all),
    )  # fmt: skip


def _carried(movement: Movement, body: Skeleton, build: Build, forces: list[Force]) -> list[Force]:
    """The forces with those of the supports that carry them."""
    spots = supports(movement, body, build.stature_m)
    if not spots:
        return forces
    outer = wrench(forces, len(body.blade))
    contact, left = contact_forces(spots, outer)
    size = np.abs(outer[:, :3]).max() + 1e-9
    # To the side a back, a foot or a hand is broad enough.
    if movement.balance is None and np.abs(left[:, 5]).max() > UNBALANCED * size:
        raise PostureError(
            "support",
            f"{', '.join(movement.support)}, which cannot balance the body and its load",
            "a further support, or an angle to balance with",
        )
    return [*forces, *contact]


def _stands(movement: Movement, body: Skeleton, build: Build, range_: Array) -> None:
    """Refuse a posture in which feet, back or seat would have to pull hard to keep it."""
    spots = supports(movement, body, build.stature_m)
    if not spots:
        return
    guess = movement.load_guess * build.mass_kg * GRAVITY
    forces = [*weights(body), *load_forces(movement, body, build.stature_m, range_, guess)]
    contact, _ = contact_forces(spots, wrench(forces, len(range_)))
    carried = np.abs(sum(one.force[:, 1] for one in contact)).max()
    for one in contact:
        if one.segment.startswith(PRESSES) and one.force[:, 1].min() < -PULLS * carried:
            raise PostureError(
                "support",
                f"{', '.join(movement.support)} with the weight far outside them",
                "a posture whose weight stands over its support, or an angle to balance with",
            )


def _along_spine(body: Skeleton, forces: list[Force]) -> Array:
    """Force pressing along the spine at the pelvis, N (F,)."""
    above = {"thorax", "head", *(f"{s} {side}" for s in ("upper arm", "forearm", "hand")
                                 for side in ("right", "left"))}  # fmt: skip
    total = wrench([one for one in forces if one.segment in above], len(body.blade))[:, :3]
    up = body.placed["thorax"].rotation[:, :, 1]
    pressed: Array = -np.einsum("fi,fi->f", up, total)
    return pressed


def trunk_held(movement: Movement) -> bool:
    """Whether a bench or pad carries the trunk, so that its muscles need not."""
    return FIXED[1] in movement.support
