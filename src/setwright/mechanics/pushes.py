"""Pushes of hands and feet that the weight does not ask for but that make a posture easier to hold.

A bar can be pushed outwards, feet can press apart, and a foot can push against the other foot or
a bench: an inner force that only friction limits. The muscles use what helps them.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.movement import Movement
from setwright.mechanics.outer import supports
from setwright.mechanics.points import Place, places
from setwright.mechanics.skeleton import Skeleton
from setwright.mechanics.statics import Force, moments, wrench
from setwright.mechanics.turns import Array

# Push of a foot towards or away from what else carries the body, beside what the lesser carries.
BRACED: Final = 0.3


@dataclass(frozen=True)
class Push:
    """A push that hands or feet may add to what they carry, either way.

    Attributes:
        moments: by coordinate (F,), N·m on the block per newton carried at the largest push.
        own: (F,) what one hand or foot carries of the body's own weight, N.
        load: (F,) the same per unit of load, N.
    """

    moments: Mapping[str, Array]
    own: Array
    load: Array


def pushes(
    movement: Movement,
    body: Skeleton,
    angles: Mapping[str, Array],
    build: Build,
    slope: Array,
    own: list[Force],
    load: list[Force],
) -> Mapping[str, tuple[Push, ...]]:
    """The pushes the right hand and foot may add, by block.

    Args:
        movement: what is done.
        body: the body in its postures.
        angles: the angles it stands in, rad.
        build: its build.
        slope: (F, 3, 3) shoulder joint centre by pose of the blade, m a radian.
        own: forces of the body's own weight, contacts included.
        load: the same of one unit of load.
    """
    if not movement.side_force:
        return {}
    frames = len(body.blade)
    mass = movement.load_guess * build.mass_kg if movement.load else 0.0

    def carried_by(segments: Collection[str]) -> tuple[Array, Array]:
        """Newtons on some segments from the body's own weight and per unit of load, (F,) each."""
        sizes = [
            np.linalg.norm(
                wrench([f for f in some if f.segment in segments], frames)[:, :3], axis=1
            )
            for some in (own, load)
        ]
        if movement.bodyweight:
            # The load that comes along is carried as well.
            return np.zeros(frames), sizes[0] + mass * sizes[1]
        return sizes[0], sizes[1]

    outward = np.broadcast_to([0.0, 0.0, movement.side_force], (frames, 3))
    found = {}
    for block, spot, segment in (("leg", "mid feet", "foot right"), ("arm", "hands", "hand right")):
        place = places(body, spot, build.stature_m)[0]
        size = carried_by((segment,))
        ways = [(outward, size)]
        if block == "leg":
            ways += _braced(movement, body, build, place, size, carried_by)
        found[block] = tuple(
            Push(moments(body, angles, [Force(segment, place.position, way)], slope), *newtons)
            for way, newtons in ways
        )
    return found


def _braced(
    movement: Movement,
    body: Skeleton,
    build: Build,
    foot: Place,
    size: tuple[Array, Array],
    carried_by: Callable[[Collection[str]], tuple[Array, Array]],
) -> list[tuple[Array, tuple[Array, Array]]]:
    """Pushes of the right foot that the other foot or a bench holds against."""
    feet = {"foot right"} | (set() if "foot" in movement.support else {"foot left"})
    others = [
        one
        for one in supports(movement, body, build.stature_m)
        if one.segment not in feet and not one.segment.startswith("hand")
    ]
    if not others:
        return []
    line = np.mean([one.position for one in others], axis=0) - foot.position
    if len(feet) > 1:
        # Two feet push side by side.
        line[:, 2] = 0.0
    line /= np.linalg.norm(line, axis=1, keepdims=True)
    there = carried_by({one.segment for one in others})
    least = (
        np.minimum(size[0], there[0] / len(feet)),
        np.minimum(size[1], there[1] / len(feet)),
    )
    return [(BRACED * line, least)]
