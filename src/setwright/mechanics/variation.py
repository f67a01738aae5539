"""One movement done another way: less deep, with a narrower or wider stance, another bar place."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, Literal, get_args

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.impossible import PostureError
from setwright.mechanics.movement import Between, Load, Movement, Point, Posture
from setwright.mechanics.posture import along, declared, postures
from setwright.mechanics.stance import Stance, leaned, with_stance
from setwright.mechanics.turns import Array

Depth = Literal["full", "parallel", "half"]
Bar = Literal["high", "low", "front"]

# Points of the range between which the depth is found.
FINE: Final = 81
HALF_KNEE_DEG: Final = 90.0
# A movement that stops this close to a depth has that depth.
CLOSE_DEG: Final = 7.0
# A knee that ends straighter than this has a depth to speak of.
STRAIGHT_DEG: Final = 60.0
# Arms whose hands hold the bar; in front of the shoulders they are crossed.
ON_BACK: Final[Posture] = {
    "arm plane": -60, "arm elevation": 55, "arm rotation": -90, "elbow flexion": 108,
}  # fmt: skip
IN_FRONT: Final[Posture] = {
    "arm plane": 82, "arm elevation": 79, "arm rotation": 80, "elbow flexion": 126,
}  # fmt: skip
# Where the bar lies, the arms that hold it, and how much further knee and ankle bend at the
# stretched end than with a high bar, degrees (common practice: hips back and a little less deep
# with a low bar, knees forward with one in front).
BARS: Final[Mapping[str, tuple[Point, Posture, tuple[float, float]]]] = {
    "high": ("upper back", ON_BACK, (0.0, 0.0)),
    "low": ("low on the back", ON_BACK, (-10.0, -6.0)),
    "front": ("front of the shoulders", IN_FRONT, (4.0, 4.0)),
}


def varied(
    movement: Movement,
    *,
    depth: Depth | None = None,
    stance: Stance | None = None,
    bar: Bar | None = None,
    build: Build,
) -> Movement:
    """The movement with its depth, stance or bar place changed.

    Args:
        movement: as it is usually done.
        depth: ``full`` as declared, ``parallel`` from the thigh horizontal, ``half`` from the knee
            at 90 degrees; the range is cut at its stretched end.
        stance: how far the feet stand apart, against the declared one (``medium``).
        bar: where a bar on the shoulders lies.
        build: the person, because the depth of a thigh depends on the balance.

    Raises:
        PostureError: when a change means nothing for this movement, saying what would.
    """
    wanted = {"depth": depth, "stance": stance, "bar": bar}
    can = choices(movement)
    for name, value in wanted.items():
        if value is not None and value not in can.get(name, ()):
            raise PostureError(name, value, _offered(name, can))
    if bar is not None:
        movement = _with_bar(movement, bar)
    if stance is not None:
        movement = with_stance(movement, stance, build)
    if depth in ("parallel", "half"):
        movement = _cut(movement, depth, build)
    return movement


def choices(movement: Movement) -> Mapping[str, tuple[str, ...]]:
    """What can be varied about a movement, and how."""
    found: dict[str, tuple[str, ...]] = {}
    held = movement.hold.get("knee flexion", 0.0)
    bent, straight = (
        end.get("knee flexion", held) for end in (movement.stretched, movement.shortened)
    )
    knee_bends = bent > straight
    if "leg" in movement.ends and bent > HALF_KNEE_DEG - CLOSE_DEG and straight < STRAIGHT_DEG:
        standing = bool({"feet", "foot"} & set(movement.support))
        found["depth"] = get_args(Depth) if standing else ("full", "half")
    pressing = any(one.at in ("mid feet", "balls of the feet") for one in movement.load)
    on_both = "feet" in movement.support or (pressing and knee_bends)
    if "leg" in movement.ends and movement.side == "both" and on_both:
        found["stance"] = get_args(Stance)
    if _bars(movement):
        found["bar"] = get_args(Bar)
    return found


def _offered(name: str, can: Mapping[str, tuple[str, ...]]) -> str:
    if name in can:
        return ", ".join(can[name])
    others = "; ".join(f"{other} {', '.join(values)}" for other, values in can.items())
    return f"no {name} for this movement; it can vary {others or 'in nothing here'}"


def _bars(movement: Movement) -> list[Load]:
    places = {place for place, _, _ in BARS.values()}
    return [one for one in movement.load if one.kind == "weight" and one.at in places]


def _with_bar(movement: Movement, bar: Bar) -> Movement:
    place, arms, bent = BARS[bar]
    moved = _bars(movement)
    before = next(bends for where, _, bends in BARS.values() if where == moved[0].at)
    load = tuple(
        one.model_copy(update={"at": place}) if one in moved else one for one in movement.load
    )
    knee, ankle = (to - was for to, was in zip(bent, before, strict=True))
    stretched = {**leaned(movement.stretched, ankle)}
    if "knee flexion" in stretched:
        stretched["knee flexion"] += knee - ankle
    hold = {**movement.hold, **arms}
    return movement.model_copy(update={"load": load, "hold": hold, "stretched": stretched})


def _cut(movement: Movement, depth: Literal["parallel", "half"], build: Build) -> Movement:
    """The movement from the point on where the depth is reached."""
    angles, body = postures(movement, build, FINE)
    if depth == "parallel":
        # Knee below the hip, as a share of the length of the thigh: 0 when it is horizontal.
        over = body.placed["thigh right"].rotation[:, 1, 1]
        short = f"a thigh that comes to {np.degrees(np.arcsin(over.min())):.0f} degrees above level"
    else:
        over = np.radians(HALF_KNEE_DEG) - angles["knee flexion"]
        short = f"a knee that bends to {np.degrees(angles['knee flexion'].max()):.0f} degrees"
    if over[0] > np.sin(np.radians(CLOSE_DEG)):
        raise PostureError("depth", depth, f"full: the movement has {short}")
    if over[0] >= 0:
        return movement
    above = np.flatnonzero(over > 0)
    if not len(above):
        raise PostureError("depth", depth, "full: the movement stays below that depth throughout")
    last = int(above[0])
    share = -over[last - 1] / (over[last] - over[last - 1])
    at = float((last - 1 + share) / (FINE - 1))
    return _from(movement, at)


def _from(movement: Movement, at: float) -> Movement:
    """The movement without what lies before a point of its range."""
    there = declared(movement, np.array([at]))
    moving = {*movement.stretched, *movement.shortened}
    moving.update(name for one in movement.between for name in one.posture)
    stretched = {name: round(float(np.degrees(there[name][0])), 2) for name in sorted(moving)}
    between = tuple(
        Between(at=(one.at - at) / (1 - at), posture=one.posture)
        for one in movement.between
        if one.at > at
    )
    load = tuple(one.model_copy(update={"curve": _rest(one, at)}) for one in movement.load)
    return movement.model_copy(update={"stretched": stretched, "between": between, "load": load})


def _rest(load: Load, at: float) -> tuple[float, ...]:
    """The curve of a load from a point of the range on."""
    count = len(load.curve)
    if count == 1:
        return load.curve
    points: Array = at + (1 - at) * along(max(count, 9))
    return tuple(float(v) for v in np.interp(points, along(count), load.curve))
