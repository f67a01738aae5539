"""Joint coordinates, their zero and sense, and the actions named on them.

All angles are degrees from the anatomical position (standing, arms hanging, palms forward).
"""

from __future__ import annotations

from types import MappingProxyType
from typing import Final, Literal, get_args

Coordinate = Literal[
    "hip flexion",
    "hip abduction",
    "hip internal rotation",
    "knee flexion",
    "ankle dorsiflexion",
    "ankle inversion",
    "trunk flexion",
    "trunk side bend",
    "trunk rotation",
    "neck flexion",
    "neck side bend",
    "neck rotation",
    "shoulder flexion",
    "shoulder abduction",
    "shoulder horizontal adduction",
    "shoulder internal rotation",
    "scapula elevation",
    "scapula protraction",
    "scapula upward rotation",
    "elbow flexion",
    "forearm pronation",
    "wrist flexion",
    "finger flexion",
]

Action = Literal[
    "hip flexion",
    "hip extension",
    "hip abduction",
    "hip adduction",
    "hip internal rotation",
    "hip external rotation",
    "knee flexion",
    "knee extension",
    "ankle dorsiflexion",
    "ankle plantarflexion",
    "ankle inversion",
    "ankle eversion",
    "trunk flexion",
    "trunk extension",
    "trunk side bend",
    "trunk rotation",
    "neck flexion",
    "neck extension",
    "neck side bend",
    "neck rotation",
    "shoulder flexion",
    "shoulder extension",
    "shoulder abduction",
    "shoulder adduction",
    "shoulder horizontal adduction",
    "shoulder horizontal abduction",
    "shoulder internal rotation",
    "shoulder external rotation",
    "scapula elevation",
    "scapula depression",
    "scapula protraction",
    "scapula retraction",
    "scapula upward rotation",
    "scapula downward rotation",
    "elbow flexion",
    "elbow extension",
    "forearm pronation",
    "forearm supination",
    "wrist flexion",
    "wrist extension",
    "finger flexion",
    "finger extension",
]

COORDINATES: Final[tuple[str, ...]] = get_args(Coordinate)
ACTIONS: Final[tuple[str, ...]] = get_args(Action)

_REVERSED: Final = {
    "hip extension": "hip flexion",
    "hip adduction": "hip abduction",
    "hip external rotation": "hip internal rotation",
    "knee extension": "knee flexion",
    "ankle plantarflexion": "ankle dorsiflexion",
    "ankle eversion": "ankle inversion",
    "trunk extension": "trunk flexion",
    "neck extension": "neck flexion",
    "shoulder extension": "shoulder flexion",
    "shoulder adduction": "shoulder abduction",
    "shoulder horizontal abduction": "shoulder horizontal adduction",
    "shoulder external rotation": "shoulder internal rotation",
    "scapula depression": "scapula elevation",
    "scapula retraction": "scapula protraction",
    "scapula downward rotation": "scapula upward rotation",
    "elbow extension": "elbow flexion",
    "forearm supination": "forearm pronation",
    "wrist extension": "wrist flexion",
    "finger extension": "finger flexion",
}

# Each action as (coordinate, sense): +1 when the action raises the coordinate.
SENSE: Final = MappingProxyType(
    {a: (_REVERSED[a], -1) if a in _REVERSED else (a, +1) for a in ACTIONS}
)

# Side bend and rotation count as one action for both sides, so they have no opposite.
OPPOSITE: Final = MappingProxyType(
    {**_REVERSED, **{flexor: extensor for extensor, flexor in _REVERSED.items()}}
)
