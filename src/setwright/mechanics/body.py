"""Segments of one person's body: length, mass, centre of mass, from stature, mass and sex."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from types import MappingProxyType
from typing import Any, Final, Literal

TABLE: Final = Path(__file__).parent / "body_tables" / "segments.json"
Sex = Literal["male", "female"]
_NO_FACTORS: Final[Mapping[str, float]] = MappingProxyType({})


@dataclass(frozen=True)
class Build:
    """A person's build.

    Attributes:
        stature_m: height standing.
        mass_kg: body mass.
        sex: which column of the tables.
        lengths: a factor for any segment or landmark, for example ``{"thigh": 1.06}``. It changes
            that length alone: the masses and the other lengths stay.
    """

    stature_m: float = 1.75
    mass_kg: float = 75.0
    sex: Sex = "male"
    lengths: Mapping[str, float] = field(default_factory=lambda: _NO_FACTORS)

    def __post_init__(self) -> None:
        """Refuse what is no build.

        Raises:
            ValueError: naming the field that is not positive or the length that is not known.
        """
        if not (self.stature_m > 0 and self.mass_kg > 0):
            raise ValueError("stature and mass must be positive")
        known = (*segment_names(), *landmark_names())
        for name, factor in self.lengths.items():
            if name not in known:
                raise ValueError(f"no length is called {name!r}; there are {', '.join(known)}")
            if not factor > 0:
                raise ValueError(f"the factor for {name} must be positive")


@dataclass(frozen=True)
class Segment:
    """One segment; of a pair, one side.

    Attributes:
        length_m: between the two ends.
        mass_kg: of this side.
        com_fraction: centre of mass, as a fraction of the length from the first end.
        ends: the two ends in words, first end first (for the trunk and head: the lower one; for
            the foot: the heel).
        pair: whether there is one on each side.
    """

    length_m: float
    mass_kg: float
    com_fraction: float
    ends: str
    pair: bool


@dataclass(frozen=True)
class Landmarks:
    """Distances that are no segment's length, in metres.

    Attributes:
        shoulder_below_neck_m: shoulder joint centres below the C7-T1 joint, along the thorax.
        shoulder_half_breadth_m: shoulder joint centre from the midline.
        hip_half_breadth_m: hip joint centre from the midline.
        ankle_height_m: ankle joint above the sole.
        heel_behind_ankle_m: back of the heel behind the ankle joint.
        ball_ahead_of_ankle_m: ball of the foot ahead of the ankle joint.
    """

    shoulder_below_neck_m: float
    shoulder_half_breadth_m: float
    hip_half_breadth_m: float
    ankle_height_m: float
    heel_behind_ankle_m: float
    ball_ahead_of_ankle_m: float


@cache
def _table() -> Mapping[str, Any]:
    found: Mapping[str, Any] = json.loads(TABLE.read_text(encoding="utf-8"))
    return found


def segment_names() -> tuple[str, ...]:
    """The segments there are, head to foot."""
    return tuple(_table()["segments"]["rows"])


def landmark_names() -> tuple[str, ...]:
    """The other lengths that take a factor."""
    return tuple(name for name in _table()["landmarks"] if name != "note")


def segments(build: Build) -> Mapping[str, Segment]:
    """Every segment of this build; the masses, both sides, sum to the body mass.

    Source: the adjusted photogrammetric table (Journal of Biomechanics 2007,
    10.1016/j.jbiomech.2006.02.013).
    """
    rows = _table()["segments"]["rows"]
    total = sum(row[build.sex][1] * (2 if row["pair"] else 1) for row in rows.values())
    found = {}
    for name, row in rows.items():
        length, mass, com = row[build.sex]
        found[name] = Segment(
            length_m=length * build.stature_m * build.lengths.get(name, 1.0),
            mass_kg=mass / total * build.mass_kg,
            com_fraction=com,
            ends=row["ends"],
            pair=row["pair"],
        )
    return MappingProxyType(found)


def landmarks(build: Build) -> Landmarks:
    """The distances of this build that are no segment's length."""
    foot_m = segments(build)["foot"].length_m

    def length(name: str) -> float:
        row = _table()["landmarks"][name]
        whole = foot_m if row.get("of") == "foot" else build.stature_m
        return float(row[build.sex] * whole * build.lengths.get(name, 1.0))

    return Landmarks(
        shoulder_below_neck_m=length("shoulder below neck"),
        shoulder_half_breadth_m=length("shoulder half breadth"),
        hip_half_breadth_m=length("hip half breadth"),
        ankle_height_m=length("ankle height"),
        heel_behind_ankle_m=length("heel behind ankle"),
        ball_ahead_of_ankle_m=length("ball ahead of ankle"),
    )
