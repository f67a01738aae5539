"""An exercise computed for one body: what works, how hard, at what length, and at what cost."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.effort import Effort, effort
from setwright.mechanics.growth import share_of
from setwright.mechanics.movement import Movement
from setwright.mechanics.spine import Spine, spinal
from setwright.mechanics.turns import Array

FRAMES: Final = 20
# Below this share a part is not told from nothing.
SHOWN_FROM: Final = 0.1
# A part can end the set when its share is this large and its activation this near to the largest.
ENDS_FROM: Final = 0.3
ENDS_WITHIN: Final = 0.1
# A joint is shown when muscles hold more than this share of the largest moment.
JOINT_FROM: Final = 0.08


@dataclass(frozen=True)
class PartRow:
    """One part in one set near its limit.

    Attributes:
        part: part id.
        share: 0 to 1, how much of a working set counts for it.
        low: lower end of the 90 % interval, or None where it was not computed.
        high: upper end of it.
        activation: 0 to 1 at the sticking point.
        loaded_ratio: fibre length over optimal length, where it is loaded.
        along: (F,) activation along the range.
        ratio: (F,) fibre length ratio along the range.
    """

    part: str
    share: float
    low: float | None
    high: float | None
    activation: float
    loaded_ratio: float
    along: Array
    ratio: Array


@dataclass(frozen=True)
class JointRow:
    """One joint in the set, where its muscles hold most.

    Attributes:
        action: what the muscles do there, in words: ``knee extension``.
        moment: largest moment its muscles hold, N·m, one side.
        per_kg: the same by body mass, N·m/kg.
        per_load: what a unit of load adds to it there, N·m.
        at: where in the range, 0 stretched to 1 shortened.
        along: (F,) the moment along the range, N·m; below 0 where other muscles hold.
    """

    action: str
    moment: float
    per_kg: float
    per_load: float
    at: float
    along: Array


@dataclass(frozen=True)
class ForBody:
    """An exercise for one body.

    Attributes:
        movement: the movement that was computed.
        build: the body.
        effort: the set near its limit.
        parts: parts with a share worth showing, largest first.
        ends: parts that end the set.
        joints: joints that hold something, largest moment first.
        spine: the lower back along the range.
    """

    movement: Movement
    build: Build
    effort: Effort
    parts: tuple[PartRow, ...]
    ends: tuple[str, ...]
    joints: tuple[JointRow, ...]
    spine: Spine

    @property
    def hardest(self) -> float:
        """Where in the range the least load can be held, 0 stretched to 1 shortened."""
        return float(self.effort.asked.range_[self.effort.sticking])

    @property
    def load(self) -> float:
        """Load of the set, in ``unit``."""
        return self.effort.load

    @property
    def unit(self) -> str:
        """``kg``, ``N·m`` or ``bodyweights``."""
        return self.effort.asked.unit


def for_body(movement: Movement, build: Build) -> ForBody:
    """Compute a movement for a body.

    Raises:
        PostureError, ValueError: for a posture no body can hold or the figures do not cover.
    """
    found = effort(movement, build, FRAMES)
    at = found.sticking
    parts = [
        PartRow(
            part, work.share, None, None, float(work.activation[at]), work.loaded_ratio,
            work.activation, work.ratio,
        )
        for part, work in share_of(found).items()
        if work.share >= SHOWN_FROM
    ]  # fmt: skip
    parts.sort(key=lambda row: (-row.share, row.part))
    return ForBody(
        movement, build, found, tuple(parts), _ends(found, parts), _joints(found, movement, build),
        spinal(found),
    )  # fmt: skip


def _ends(found: Effort, parts: list[PartRow]) -> tuple[str, ...]:
    own = found.blocks[found.ended_by].parts
    there = [row for row in parts if row.part in own and row.share >= ENDS_FROM]
    most = max((row.activation for row in there), default=0.0)
    return tuple(row.part for row in there if row.activation >= most - ENDS_WITHIN)


# What the muscles do when the moment they hold is positive and negative.
ACTIONS: Final[Mapping[str, tuple[str, str]]] = {
    "hip flexion": ("hip flexion", "hip extension"),
    "hip abduction": ("hip abduction", "hip adduction"),
    "hip internal rotation": ("hip internal rotation", "hip external rotation"),
    "knee flexion": ("knee flexion", "knee extension"),
    "ankle dorsiflexion": ("ankle dorsiflexion", "ankle plantarflexion"),
    "trunk flexion": ("trunk flexion", "trunk extension"),
    "trunk side bend": ("trunk side bend", "trunk side bend"),
    "trunk rotation": ("trunk rotation", "trunk rotation"),
    "neck flexion": ("neck flexion", "neck extension"),
    "neck side bend": ("neck side bend", "neck side bend"),
    "neck rotation": ("neck rotation", "neck rotation"),
    "elbow flexion": ("elbow flexion", "elbow extension"),
    "forearm pronation": ("forearm pronation", "forearm supination"),
    "wrist flexion": ("wrist flexion", "wrist extension"),
    "finger flexion": ("finger flexion", "finger extension"),
}
SHOULDER: Final = ("humerus x", "humerus y", "humerus z")


def _joints(found: Effort, movement: Movement, build: Build) -> tuple[JointRow, ...]:
    asked = found.asked
    rows = []
    for work in found.blocks.values():
        columns = [c for c in work.muscles.coordinates if c not in movement.carried]
        for name in ACTIONS:
            if name in columns:
                per_load = -asked.load[name]
                along = found.load * per_load - asked.own[name]
                sense = np.sign(along[np.abs(along).argmax()])
                action = ACTIONS[name][0 if sense > 0 else 1]
                rows.append(_joint(action, sense * along, sense * per_load, found, build))
        if set(SHOULDER) <= set(columns) and not any(
            c.startswith("arm ") for c in movement.carried
        ):
            per_load = np.stack([asked.load[c] for c in SHOULDER])
            held = found.load * per_load + np.stack([asked.own[c] for c in SHOULDER])
            sizes = (np.linalg.norm(table, axis=0) for table in (held, per_load))
            rows.append(_joint("shoulder, all directions", *sizes, found, build))
    most = max(row.moment for row in rows)
    kept = [row for row in rows if row.moment >= JOINT_FROM * most]
    return tuple(sorted(kept, key=lambda row: -row.moment))


def _joint(action: str, along: Array, per_load: Array, found: Effort, build: Build) -> JointRow:
    frame = int(along.argmax())
    moment, at = float(along[frame]), float(found.asked.range_[frame])
    return JointRow(action, moment, moment / build.mass_kg, float(per_load[frame]), at, along)
