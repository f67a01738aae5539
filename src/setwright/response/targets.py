"""What each part should get in a week, and how much its growth counts, from a person's aims."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import index, parts, resolve
from setwright.plan.intake import Aims, Intake
from setwright.plan.limits import volume_share

Aim = Literal["emphasise", "normal", "maintain", "leave out"]

# Muscles that large lifts serve well enough or that few people aim at: shown, never demanded,
# unless the person emphasises them (common practice).
OPTIONAL: Final = frozenset(
    {
        "brachioradialis", "wrist-flexors", "wrist-extensors", "finger-flexors",
        "levator-scapulae", "teres-major", "serratus-anterior", "tensor-fasciae-latae", "iliopsoas",
        "tibialis-anterior", "sternocleidomastoid", "neck-extensors", "rotator-cuff",
        "quadratus-lumborum",
    }
)  # fmt: skip
# Muscles for which half the usual dose is enough because they also hold posture (common practice).
SUPPORTING: Final = frozenset(
    {
        "gluteus-medius", "gluteus-minimus", "adductors", "erector-spinae", "trapezius", "obliques",
        "brachialis", "soleus", "rhomboids",
    }
)  # fmt: skip


@dataclass(frozen=True)
class Band:
    """Fractional sets a week for a part.

    Attributes:
        aim: what the person wants of it.
        least: fewer is a miss.
        good: from here on the dose is a sound one.
        most: more is not worth its time.
        evidence: ids of findings.
    """

    aim: Aim
    least: float
    good: float
    most: float
    evidence: tuple[str, ...]


_BANDS: Final = {
    "emphasise": Band(
        "emphasise", 6.0, 12.0, 25.0, ("weekly-volume-over-20-sets-review-2022",
                                       "weekly-volume-meta-2017-per-set")
    ),
    "normal": Band(
        "normal", 4.0, 8.0, 20.0, ("time-efficient-training-review-2021", "session-growth-volume",
                                   "minimum-dose-weekly-sets-secondary")
    ),
    "maintain": Band(
        "maintain", 1.5, 3.0, 12.0, ("maintenance-dose-one-third-one-ninth-2011",)
    ),
    "leave out": Band("leave out", 0.0, 0.0, 99.0, ("common practice",)),
}  # fmt: skip
# Neither one third nor one ninth of the dose fully held size in older adults
# (maintenance-dose-one-third-one-ninth-2011); how much would is not published: doubled.
_OLDER_MAINTAIN: Final = 2.0
_WEIGHTS: Final = {"emphasise": 2.0, "normal": 1.0, "maintain": 0.25, "leave out": 0.0}
# Weight of an optional muscle nobody asked for: a tie-breaker, no aim.
_OPTIONAL_WEIGHT: Final = 0.05


def _ids(words: Iterable[str]) -> set[str]:
    return {part for word in words for part in resolve(word)}


def aims_of(aims: Aims) -> dict[str, Aim]:
    """The aim for every part, normal where the person names none.

    Raises:
        KeyError: when a word names no muscle, part or group.
    """
    found: dict[str, Aim] = {part.id: "normal" for part in parts()}
    for part in _ids(aims.emphasise):
        found[part] = "emphasise"
    for part in _ids(aims.maintain):
        found[part] = "maintain"
    for part in _ids(aims.leave_out):
        found[part] = "leave out"
    return found


def bands(intake: Intake | None) -> dict[str, Band]:
    """The band of every part, by part id.

    Optional and untrained parts have no least; supporting ones half the usual. A first week
    after a break or inactivity asks for less; to hold size takes more at 60 and over.
    """
    aims = aims_of(intake.aims if intake else Aims())
    share, caution = volume_share(intake)
    older = intake is not None and intake.age_band == "60 and over"
    found = {}
    for part in parts():
        aim = aims[part.id]
        band = _BANDS[aim]
        scale = share * (0.5 if part.muscle in SUPPORTING and aim == "normal" else 1.0)
        if aim == "maintain" and older:
            scale *= _OLDER_MAINTAIN
        free = not part.trained_directly or (part.muscle in OPTIONAL and aim == "normal")
        found[part.id] = Band(
            aim,
            0.0 if free else band.least * scale,
            0.0 if free else band.good * scale,
            band.most,
            band.evidence + caution,
        )
    return found


def priority_weights(intake: Intake | None) -> NDArray[np.float64]:
    """How much the growth of each part counts, shape (P,), sum 1.

    A muscle of n parts counts as the square root of n, split evenly over them: more than a muscle
    of one part, less than n muscles. An emphasised muscle counts double, a maintained one a
    quarter, one that is left out nothing.
    """
    aims = aims_of(intake.aims if intake else Aims())
    members: dict[str, int] = {}
    for part in parts():
        if part.trained_directly:
            members[part.muscle] = members.get(part.muscle, 0) + 1
    weights = np.zeros(len(parts()))
    for part in parts():
        if not part.trained_directly:
            continue
        aim = aims[part.id]
        optional = part.muscle in OPTIONAL and aim == "normal"
        weight = _OPTIONAL_WEIGHT if optional else _WEIGHTS[aim]
        weights[index()[part.id]] = weight * members[part.muscle] ** -0.5
    total = weights.sum()
    return weights / total if total else weights
