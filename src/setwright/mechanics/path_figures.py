"""What a file of path figures holds (format ``paths/1``)."""

from __future__ import annotations

from typing import Literal

from pydantic import Field, model_validator

from setwright.anatomy.joints import Coordinate
from setwright.documents.base import Document

# A shoulder turns about more than one axis at once: components of rotation vectors, see
# ``shoulder``. They are no joint angles of their own.
Turn = Literal[
    "humerus x",
    "humerus y",
    "humerus z",
    "glenohumeral x",
    "glenohumeral y",
    "glenohumeral z",
]


class Origin(Document):
    """Where the figures of a file come from: a model file, or published figures."""

    file: str | None = None
    sha256: str | None = None
    came_from: str | None = Field(None, alias="from")
    licence: str | None = None
    credits: str | tuple[str, ...] | None = None
    sources: tuple[str, ...] = ()


class Range(Document):
    """A joint coordinate and the range its polynomials hold for, degrees."""

    name: Coordinate | Turn
    low_deg: float
    high_deg: float

    @model_validator(mode="after")
    def _wide(self) -> Range:
        if not self.low_deg < self.high_deg:
            raise ValueError(f"the range of {self.name} is empty")
        return self


class Anchor(Document):
    """A fibre length ratio known from measurement at one pose."""

    ratio: float = Field(gt=0)
    at_deg: dict[Coordinate | Turn, float]
    source: str


class Element(Document):
    """One muscle-tendon element of a model.

    Attributes:
        element: its name in the model.
        part: id of the part of the atlas it belongs to, or None.
        f0_n: largest isometric force, N.
        l0_m: optimal fibre length, m.
        slack_m: tendon slack length, m.
        pennation_rad: pennation at optimal fibre length, rad.
        coordinates: the coordinates its path depends on.
        powers: one row a term, one power a coordinate.
        coefficients_m: one a term, m.
        rms_mm: error of length on poses held out of the fit, mm; None for published figures.
        max_mm: largest such error, mm.
        arm_rms_mm: error of the moment arms on the same poses, mm.
        ratio_anchor: a measured fibre length ratio, where there is one.
    """

    element: str
    part: str | None
    f0_n: float = Field(gt=0, alias="f0_N")
    l0_m: float = Field(gt=0)
    slack_m: float = Field(ge=0)
    pennation_rad: float = Field(0.0, ge=0)
    coordinates: tuple[Coordinate | Turn, ...] = Field(min_length=1)
    powers: tuple[tuple[int, ...], ...] = Field(min_length=1)
    coefficients_m: tuple[float, ...]
    rms_mm: float | None = None
    max_mm: float | None = None
    arm_rms_mm: float | None = None
    ratio_anchor: Anchor | None = None
    note: str = ""

    @model_validator(mode="after")
    def _fits(self) -> Element:
        if len(self.powers) != len(self.coefficients_m):
            raise ValueError(f"{self.element}: a coefficient for each row of powers is needed")
        if any(len(row) != len(self.coordinates) or min(row) < 0 for row in self.powers):
            raise ValueError(f"{self.element}: a power from 0 for each coordinate is needed")
        return self


class PathsFile(Document):
    """A file of path figures."""

    setwright: Literal["paths/1"]
    model: Origin
    coordinates: tuple[Range, ...] = Field(min_length=1)
    elements: tuple[Element, ...] = Field(min_length=1)
