"""How strong a joint is: measured torques against angle, and what the muscles' figures give."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Literal

import numpy as np
from pydantic import Field, model_validator

from setwright.anatomy.joints import SENSE, Action, Coordinate
from setwright.documents.base import Document
from setwright.mechanics.fibre import Tendon, fibre_state, fibres
from setwright.mechanics.paths import Floats, Paths, load

GRAVITY = 9.81


class Source(Document):
    """Where a torque was published, and how it was read."""

    title: str
    journal: str
    year: int
    doi: str | None
    read: str
    note: str


class Measured(Document):
    """A measured torque of one action, or only the angle of its peak.

    Attributes:
        region: file of paths it is compared with.
        posture_deg: the other joints.
        range_deg: angles the peak was sought over.
        step_deg: between the angles measured.
        cosine: c1, c2, c3 of torque / (mass stature g) = c1 cos(c2 (angle - c3)), angle in rad.
        peak_deg: angle of the peak, where that was published.
        torque_nm: torque, at ``at_deg`` or at the peak.
    """

    action: Action
    region: Literal["leg", "arm", "trunk", "neck"]
    sex: Literal["male", "female", "both"]
    source: str
    posture_deg: dict[Coordinate, float] = Field(default_factory=dict)
    range_deg: tuple[float, float] | None = None
    step_deg: float = Field(1.0, gt=0)
    cosine: tuple[float, float, float] | None = None
    peak_deg: float | None = None
    torque_nm: float | None = Field(None, alias="torque_Nm")
    torque_nm_per_kg: float | None = Field(None, alias="torque_Nm_per_kg")
    sd_nm: float | None = Field(None, alias="sd_Nm")
    at_deg: float | None = None

    @model_validator(mode="after")
    def _says_something(self) -> Measured:
        given = (self.cosine, self.peak_deg, self.torque_nm, self.torque_nm_per_kg)
        if all(figure is None for figure in given):
            raise ValueError(f"{self.action}: a curve, a torque or the angle of a peak is needed")
        return self

    def torque(self, angle_deg: Floats, mass_kg: float, stature_m: float) -> Floats:
        """Torque of the published curve, N m.

        Raises:
            ValueError: when no curve was published.
        """
        if self.cosine is None:
            raise ValueError(f"no curve of {self.action} was published in {self.source}")
        height, width, place = self.cosine
        bell = np.cos(width * (np.radians(angle_deg) - place))
        return np.asarray(np.maximum(bell, 0.0) * height * mass_kg * stature_m * GRAVITY)

    def peak(self, mass_kg: float, stature_m: float) -> float | None:
        """The largest published torque for this body, N m, or None when only an angle is known."""
        if self.cosine is not None:
            low, high = self.range_deg or (-180.0, 180.0)
            return float(self.torque(np.arange(low, high + 1.0), mass_kg, stature_m).max())
        if self.torque_nm_per_kg is not None:
            return self.torque_nm_per_kg * mass_kg
        return self.torque_nm

    def best_deg(self) -> float | None:
        """The angle of the published peak, inside the range it was measured over."""
        if self.cosine is None:
            return self.peak_deg
        low, high = self.range_deg or (-180.0, 180.0)
        return float(np.clip(np.degrees(self.cosine[2]), low, high))


class TorqueFile(Document):
    """The file of measured torques."""

    setwright: Literal["joint torques/1"]
    sources: dict[str, Source]
    measured: tuple[Measured, ...]


@cache
def torques() -> TorqueFile:
    """The measured torques and their sources."""
    place = files("setwright.mechanics").joinpath("strength_tables", "torques.json")
    return TorqueFile.model_validate(json.loads(place.read_text("utf-8")))


def capacity(
    paths: Paths, coordinate: str, sense: int, poses: Floats, tendon: Tendon = "elastic"
) -> Floats:
    """The largest active moment about a coordinate: every muscle that helps, fully active.

    Args:
        paths: the muscles of a region.
        coordinate: one of its coordinates.
        sense: +1 for raising the coordinate, -1 for lowering it.
        poses: (N, C) rad.
        tendon: ``rigid`` for tendons that do not give.

    Returns:
        (N,) N m of the bodies the figures were taken from.
    """
    lengths, arms = paths.evaluate(poses)
    full = np.array([e.f0_n for e in paths.elements])
    pull = full * fibre_state(lengths, fibres(paths), tendon).force
    toward = sense * arms[:, :, paths.coordinates.index(coordinate)]
    return np.asarray((pull * np.maximum(toward, 0.0)).sum(axis=1))


def capacity_curve(
    measured: Measured, posture_deg: Mapping[str, float] | None = None
) -> tuple[Floats, Floats]:
    """Angles, degrees, and the model's largest moments, N m, over the range of a measurement."""
    paths = load(measured.region)
    coordinate, sense = SENSE[measured.action]
    column = paths.coordinates.index(coordinate)
    ends = np.degrees([paths.low_rad[column], paths.high_rad[column]])
    low, high = measured.range_deg or (float(ends[0]), float(ends[1]))
    if measured.at_deg is not None:
        low = high = measured.at_deg
    angles = np.arange(
        max(low, np.ceil(ends[0])), min(high, np.floor(ends[1])) + 1e-6, measured.step_deg
    )
    poses = np.zeros((len(angles), len(paths.coordinates)))
    for name, deg in (posture_deg or measured.posture_deg).items():
        poses[:, paths.coordinates.index(name)] = np.radians(deg)
    poses[:, column] = np.radians(angles)
    return angles, capacity(paths, coordinate, sense, poses)
