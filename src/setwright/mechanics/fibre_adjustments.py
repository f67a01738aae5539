"""Where a model's fibre contradicts what was measured, and what is used instead."""

from __future__ import annotations

import json
from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from typing import Literal

from pydantic import Field

from setwright.anatomy.joints import Coordinate
from setwright.documents.base import Document
from setwright.mechanics.path_figures import Turn


class Place(Document):
    """A relaxed fibre's length ratio at one pose; coordinates not named are zero."""

    ratio: float = Field(gt=0)
    at_deg: dict[Coordinate | Turn, float]


class Adjustment(Document):
    """What replaces a model's figures for one part.

    Attributes:
        strain: tendon strain at the largest force, where it was measured.
        l0_factor: how much longer than the model's the fibre acts.
        anchor: takes the place of the tendon slack length.
        because: key of the reason.
    """

    strain: float | None = Field(None, gt=0)
    l0_factor: float = Field(1.0, gt=0)
    anchor: Place | None = None
    because: str


class Adjustments(Document):
    """The file of adjustments."""

    setwright: Literal["fibre adjustments/1"]
    note: str
    parts: dict[str, Adjustment]
    reasons: dict[str, str]


@cache
def _file() -> Adjustments:
    place = files("setwright.mechanics").joinpath("fibre_tables", "adjustments.json")
    return Adjustments.model_validate(json.loads(place.read_text("utf-8")))


def adjustments() -> Mapping[str, Adjustment]:
    """The adjustments by part."""
    return _file().parts


def reason(adjustment: Adjustment) -> str:
    """Why, with the source."""
    return _file().reasons[adjustment.because]
