"""Published comparisons held against the computed profiles."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final

import numpy as np

from setwright.anatomy.joints import SENSE
from setwright.exercises.comparisons import Comparison, Quantity, Side, volumes
from setwright.exercises.movements import movement
from setwright.mechanics.body import Build
from setwright.mechanics.effort import NEAR_LIMIT, Effort, effort
from setwright.mechanics.growth import PartWork, share_of
from setwright.mechanics.movement import Block, Movement, Posture
from setwright.mechanics.muscles import muscles
from setwright.mechanics.outer_moments import Asked
from setwright.mechanics.paths import load
from setwright.mechanics.posture import postures
from setwright.mechanics.turns import Array

# A larger figure is larger by more than this: absolute for growth, share and activation,
# a fraction of the larger one for moments, loads and ratios, metres for arms and lengths.
MORE: Final = 0.03
MORE_M: Final = 0.001
# Equal figures differ by no more than one of these.
SAME: Final = 0.15
SAME_PART: Final = 0.15
SAME_PART_MOMENT: Final = 0.10
# A part that is trained has more than the first, one that is not has no more than the second.
TRAINED: Final = 0.10
NOTHING: Final = 0.15
FRAMES: Final = 20
# Shoulder actions as turns of the right upper arm about the axes of the trunk.
_SHOULDER: Final[Mapping[str, tuple[str, int]]] = {
    "shoulder flexion": ("humerus z", 1),
    "shoulder extension": ("humerus z", -1),
    "shoulder abduction": ("humerus x", -1),
    "shoulder adduction": ("humerus x", 1),
    "shoulder horizontal adduction": ("humerus y", 1),
    "shoulder horizontal abduction": ("humerus y", -1),
}
_LONG_AXIS: Final = {"shoulder internal rotation": 1, "shoulder external rotation": -1}
_LEG_WORDS: Final = ("hip ", "knee ", "ankle ")


@dataclass(frozen=True)
class Outcome:
    """A comparison with the computed figures of its sides.

    Attributes:
        comparison: what was compared.
        left: figure of the left side; moments in N·m, loads in their unit, lengths in m.
        right: figure of the right side; None when it stands against nothing.
        reproduced: whether the published relation came out.
    """

    comparison: Comparison
    left: float
    right: float | None
    reproduced: bool


def outcome(comparison: Comparison) -> Outcome:
    """A comparison held against the computed profiles.

    Raises:
        KeyError: for a movement or part that is not there.
        ValueError: for a posture no body can hold.
    """
    left = figure(comparison.quantity, comparison.left)
    right = None if comparison.right is None else figure(comparison.quantity, comparison.right)
    return Outcome(comparison, left, right, _holds(comparison, left, right))


def _holds(comparison: Comparison, left: float, right: float | None) -> bool:
    quantity, relation = comparison.quantity, comparison.relation
    lengths = quantity in ("arm", "length change")
    if right is None:
        if relation == "about 0":
            return left <= NOTHING
        return left > (MORE_M if lengths else TRAINED)
    larger = max(abs(left), abs(right))
    of_joints = quantity in ("peak moment", "mean moment", "load")
    ratio = bool(comparison.left.over)
    same = (SAME_PART_MOMENT if of_joints else SAME_PART) * larger
    if not (lengths or of_joints or ratio):
        same = max(same, SAME)
    if relation == "=":
        return abs(left - right) <= same
    if relation == ">=":
        return left >= right - same
    more = MORE_M if lengths else MORE * larger if of_joints or ratio else MORE
    return left > right + more


def figure(quantity: Quantity, side: Side) -> float:
    """The computed figure of one side.

    Exercises done together add up for growth, share and activation; for moments and loads the
    largest counts.
    """
    if quantity == "arm":
        return _arm(side)
    if quantity == "length change":
        return _length_change(side)
    if quantity == "load":
        return max(worked(name).load for name in side.does)
    if quantity in ("peak moment", "mean moment"):
        return max(_moment(quantity, name, side) for name in side.does)
    top = sum(_mean(quantity, name, side.parts) for name in side.does)
    return top / sum(_mean(quantity, name, side.over) for name in side.does) if side.over else top


@cache
def worked(name: str) -> Effort:
    """A set near its limit of an exercise or trial movement, for the body of reference."""
    return effort(movement(name), Build(), FRAMES)


@cache
def parts_of(name: str) -> Mapping[str, PartWork]:
    """The work of every part in an exercise or trial movement."""
    return share_of(worked(name))


def _mean(quantity: Quantity, name: str, words: tuple[str, ...]) -> float:
    """Mean over parts by volume; a part that neither works nor holds has 0."""
    weights, found = volumes(words), parts_of(name)
    total = sum(
        weight * _value(quantity, found[part]) for part, weight in weights.items() if part in found
    )
    return total / sum(weights.values())


def _value(quantity: Quantity, work: PartWork) -> float:
    if quantity == "growth":
        return work.growth
    return work.share if quantity == "share" else work.mean_activation


def _moment(quantity: Quantity, name: str, side: Side) -> float:
    """Peak or mean of the moment the muscles of one side give, N·m."""
    done = worked(name)
    # Speed carries a set through its hardest points: there the muscles give what they can.
    amount = np.minimum(done.load, done.strongest)
    if side.load_kg is not None:
        amount = np.full(FRAMES, side.load_kg)
    elif side.load_share is not None:
        amount = np.full(FRAMES, done.load / NEAR_LIMIT * side.load_share)
    sized = [_along(done.asked, action, amount) for action in side.actions]
    largest: Array = np.max(sized, axis=0)
    return float(largest.max() if quantity == "peak moment" else largest.mean())


def _along(asked: Asked, action: str, amount: Array) -> Array:
    coordinate, sense = _SHOULDER.get(action) or SENSE[action]
    outer: Array = asked.own[coordinate] + amount * asked.load[coordinate]
    return -sense * outer


def _posed(posture: Posture, to: Posture) -> Movement:
    return Movement(
        ends=("leg",), support=("pelvis",), bodyweight=True, stretched=posture, shortened=to
    )


def _arm(side: Side) -> float:
    """Mean moment arm of the parts for the action, by largest force, m."""
    (action,) = side.actions
    angles, body = postures(_posed(side.posture, side.posture), Build(), 2)
    block: Block = "leg" if action.startswith(_LEG_WORDS) else "arm"
    found = muscles(block, angles, body, Build().stature_m)
    if action in _LONG_AXIS:
        first = found.coordinates.index("humerus x")
        along = body.humerus[:, :, 1]
        arms = _LONG_AXIS[action] * np.einsum(
            "fmk,fk->fm", found.arms[:, :, first : first + 3], along
        )
    else:
        coordinate, sense = _SHOULDER.get(action) or SENSE[action]
        arms = sense * found.arms[:, :, found.coordinates.index(coordinate)]
    rows = [k for k, part in enumerate(found.parts) if part in volumes(side.parts)]
    weight = found.f0_n[rows]
    return float(arms[0, rows] @ weight / weight.sum())


def _length_change(side: Side) -> float:
    """Size of the change of path length between the postures, mean of the parts, m."""
    angles, _ = postures(_posed(side.posture, side.to), Build(), 2)
    paths = load("leg")
    lengths, _ = paths.evaluate(np.stack([angles[c] for c in paths.coordinates], axis=-1))
    rows = [k for k, one in enumerate(paths.elements) if one.part in volumes(side.parts)]
    return float(np.abs(lengths[1, rows] - lengths[0, rows]).mean())
