"""The moments the muscles hold at each joint in a set."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

import numpy as np

from setwright.mechanics.body import Build
from setwright.mechanics.effort import Effort
from setwright.mechanics.movement import Movement
from setwright.mechanics.statics import HUMERUS
from setwright.mechanics.turns import Array

# A joint is shown when its muscles hold more than this share of the largest moment.
SHOWN_FROM: Final = 0.08
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


def joint_moments(found: Effort, movement: Movement, build: Build) -> tuple[JointRow, ...]:
    """The joints of a set that hold something worth showing, largest moment first."""
    asked = found.asked
    rows = []
    for work in found.blocks.values():
        columns = [c for c in work.muscles.coordinates if c not in movement.carried]
        for name in ACTIONS:
            if name in columns:
                per_load = -asked.load[name]
                along = found.held * per_load - asked.own[name]
                sense = np.sign(along[np.abs(along).argmax()])
                action = ACTIONS[name][0 if sense > 0 else 1]
                rows.append(_joint(action, sense * along, sense * per_load, found, build))
        carried = any(name.startswith("arm ") for name in movement.carried)
        if set(HUMERUS) <= set(columns) and not carried:
            per_load = np.stack([asked.load[c] for c in HUMERUS])
            held = found.held * per_load + np.stack([asked.own[c] for c in HUMERUS])
            size, added = np.linalg.norm(held, axis=0), np.linalg.norm(per_load, axis=0)
            rows.append(_joint("shoulder", size, added, found, build))
    most = max(row.moment for row in rows)
    kept = [row for row in rows if row.moment >= SHOWN_FROM * most]
    return tuple(sorted(kept, key=lambda row: -row.moment))


def _joint(action: str, along: Array, per_load: Array, found: Effort, build: Build) -> JointRow:
    frame = int(along.argmax())
    moment, at = float(along[frame]), float(found.asked.range_[frame])
    return JointRow(action, moment, moment / build.mass_kg, float(per_load[frame]), at, along)
