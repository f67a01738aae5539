"""The load and the supports of a movement as forces and places on the body."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

import numpy as np

from setwright.mechanics.movement import FIXED, Load, Movement
from setwright.mechanics.points import Place, places
from setwright.mechanics.skeleton import DOWN, Skeleton
from setwright.mechanics.statics import Force
from setwright.mechanics.turns import Array, turned

_PLACES: Final = {
    "feet": ("heels", "balls of the feet"),
    "foot": ("heels", "balls of the feet"),
    "heels": ("heels",),
    "balls of the feet": ("balls of the feet",),
    "toes of the other foot": ("balls of the feet",),
    "upper thighs": ("upper thighs",),
    "seat": ("pelvis",),
    "low back": ("low back",),
    "upper back": ("shoulder blades",),
    "hands": ("hands",),
    "elbows": ("elbows",),
    "other elbow": ("elbows",),
    "knees": ("knees",),
    "ankles": ("ankles",),
}
# Half the width a foot, the shoulders or the pelvis press on, m (from memory).
HALF_WIDTH_M: Final = {"foot": 0.04, "thorax": 0.1, "pelvis": 0.1}


def size_along(load: Load, range_: Array) -> Array:
    """Relative size of a load over the range, (F,)."""
    points = np.linspace(0.0, 1.0, len(load.curve))
    return load.share * np.interp(range_, points, load.curve)


def load_forces(
    movement: Movement, body: Skeleton, stature_m: float, range_: Array, newtons: float
) -> list[Force]:
    """The forces of a load of ``newtons`` on the body; torques are not among them."""
    found = []
    hips = _hips_travel(movement, body, stature_m)
    for load in movement.load:
        if load.kind == "torque" or load.at is None:
            continue
        here = places(body, load.at, stature_m)
        # A place on the midline is one; of a pair the working side may carry alone.
        used = here[:1] if movement.side == "one" else here
        size = newtons * size_along(load, range_) / len(used)
        for mirror, place in zip((1.0, -1.0), used, strict=False):
            towards = _direction(load, body, place, mirror, hips)
            found.append(Force(place.segment, place.position, size[:, None] * towards))
    return found


def _hips_travel(movement: Movement, body: Skeleton, stature_m: float) -> Array:
    """How far the hips are from where they end, (F, 3), m; 0 where they do not move."""
    if not {"feet", "foot"} & set(movement.support):
        return np.zeros((len(body.blade), 3))
    feet = support_centre(movement, body, stature_m)
    travel: Array = feet[-1] - feet
    return travel


def _direction(load: Load, body: Skeleton, place: Place, mirror: float, hips: Array) -> Array:
    """Unit vector of a load, (F, 3); the left side is the mirror image of the right."""
    sided = np.array([1.0, 1.0, mirror])
    if load.kind == "weight":
        vector = np.broadcast_to(DOWN, place.position.shape)
    elif load.pulley is not None:
        vector = np.array(load.pulley) * sided - hips - place.position
    else:
        direction = np.array(load.direction) * sided
        if load.frame == "segment":
            vector = turned(body.placed[place.segment].rotation, direction)
        else:
            vector = np.broadcast_to(direction, place.position.shape)
    unit: Array = vector / np.linalg.norm(vector, axis=-1, keepdims=True)
    return unit


def supports(movement: Movement, body: Skeleton, stature_m: float) -> tuple[Place, ...]:
    """Places that carry the body; none when a seat or bench holds it."""
    if set(FIXED) & set(movement.support):
        return ()
    found: list[Place] = []
    # A foot that is not alone presses where it is steady; alone it presses where balance asks.
    several = len(movement.support) > 1
    for name in movement.support:
        for spot in ("mid feet",) if several and name in ("foot", "feet") else _PLACES[name]:
            here = places(body, spot, stature_m)
            if name.startswith(("other", "toes of the other")):
                here = here[1:]
            elif name == "foot" or (movement.side == "one" and name != "feet"):
                here = here[:1]
            found.extend(here)
    return tuple(side for place in found for side in _sides(place, body))


def _sides(place: Place, body: Skeleton) -> tuple[Place, ...]:
    """A place to its right and to its left: what it can press on without tipping sideways."""
    carrier = place.segment.split()[0]
    if carrier not in HALF_WIDTH_M:
        return (place,)
    right = HALF_WIDTH_M[carrier] * body.placed[place.segment].rotation[:, :, 2]
    return tuple(Place(place.segment, place.position + way * right) for way in (1.0, -1.0))


def support_centre(movement: Movement, body: Skeleton, stature_m: float) -> Array:
    """Point the body balances over, (F, 3): the middle of the foot, the hands, the toes."""
    carriers: Sequence[str] = movement.support
    spots: list[Array] = []
    for name in carriers:
        if name in ("feet", "foot"):
            here = places(body, "mid feet", stature_m)
        elif name in _PLACES:
            here = tuple(p for spot in _PLACES[name] for p in places(body, spot, stature_m))
        else:
            continue
        if name.startswith(("other", "toes of the other")):
            here = here[1:]
        elif name == "foot" or movement.side == "one":
            here = here[:1]
        spots.extend(place.position for place in here)
    centre: Array = np.mean(spots, axis=0)
    return centre
