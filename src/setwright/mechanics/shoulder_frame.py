"""Where the scapula stands and where the shoulder joint is, from the three scapular angles."""

from __future__ import annotations

import json
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from setwright.documents.base import Document
from setwright.mechanics.path_figures import Origin
from setwright.mechanics.rotation import left_jacobian, rotation_matrix

Floats = NDArray[np.float64]

Three = tuple[float, float, float]


class ShoulderFrameFile(Document):
    """The file of the shoulder's frames.

    Attributes:
        axes: words on the axes of the thorax frame.
        origin: landmark at the origin of the thorax frame.
        landmarks_m: further landmarks in the thorax frame.
        low_deg: lower ends of the three scapular angles.
        high_deg: upper ends.
        powers: terms in u = (angle - mid) / half.
        centre_m: one row a term, place of the glenohumeral centre in the thorax frame.
        turn_rad: one row a term, rotation vector of the scapula from rest (turned at rest first).
        scapula_rest: orientation of the scapula at rest, rows.
        humerus_middle_rad: rotation vector of the orientation humerus x, y, z are counted from.
        glenohumeral_middle_rad: the same for glenohumeral x, y, z, scapula to humerus.
    """

    setwright: Literal["shoulder-frame/1"]
    model: Origin
    axes: str
    origin: str
    landmarks_m: dict[str, Three]
    low_deg: Three
    high_deg: Three
    powers: tuple[tuple[int, int, int], ...]
    centre_m: tuple[Three, ...]
    turn_rad: tuple[Three, ...]
    scapula_rest: tuple[Three, Three, Three]
    humerus_middle_rad: Three
    glenohumeral_middle_rad: Three
    centre_max_mm: float
    turn_max_deg: float


@dataclass(frozen=True)
class Frame:
    """The same, ready for use."""

    middle: Floats
    half: Floats
    powers: NDArray[np.intp]
    centre: Floats
    turn: Floats
    scapula_rest: Floats
    humerus_middle: Floats
    glenohumeral_middle: Floats


@cache
def frame_file() -> ShoulderFrameFile:
    """The shipped figures as they are declared."""
    text = files("setwright.mechanics").joinpath("paths", "shoulder-frame.json").read_text("utf-8")
    return ShoulderFrameFile.model_validate(json.loads(text))


@cache
def frame() -> Frame:
    """The shipped figures, read once."""
    file = frame_file()
    low, high = np.radians(file.low_deg), np.radians(file.high_deg)
    return Frame(
        middle=(low + high) / 2,
        half=(high - low) / 2,
        powers=np.array(file.powers, dtype=np.intp),
        centre=np.array(file.centre_m),
        turn=np.array(file.turn_rad),
        scapula_rest=np.array(file.scapula_rest),
        humerus_middle=rotation_matrix(np.array(file.humerus_middle_rad)),
        glenohumeral_middle=rotation_matrix(np.array(file.glenohumeral_middle_rad)),
    )


def glenohumeral_centre(scapula: Floats) -> Floats:
    """Places (N, 3) of the centre of the shoulder joint, m from the suprasternal notch.

    Args:
        scapula: (N, 3) protraction, elevation and upward rotation from rest, rad.
    """
    places: Floats = _terms(scapula) @ frame().centre
    return places


def glenohumeral_slope(scapula: Floats) -> Floats:
    """Derivatives (N, 3, 3) of those places, m/rad; the last axis is the scapular angle."""
    slope: Floats = np.swapaxes(_slopes(scapula), -1, -2) @ frame().centre
    return np.swapaxes(slope, -1, -2)


def scapula_orientation(scapula: Floats) -> Floats:
    """Orientation of the scapula in the thorax frame, (N, 3, 3), at scapular angles (N, 3)."""
    vector = _terms(scapula) @ frame().turn
    orientation: Floats = frame().scapula_rest @ rotation_matrix(vector)
    return orientation


def scapula_turn(scapula: Floats) -> Floats:
    """Turn of the scapula about thorax x, y, z per unit of each scapular angle, (N, 3, 3)."""
    vector = _terms(scapula) @ frame().turn
    changes = np.swapaxes(np.swapaxes(_slopes(scapula), -1, -2) @ frame().turn, -1, -2)
    turn: Floats = frame().scapula_rest @ left_jacobian(vector) @ changes
    return turn


def _powers(scapula: Floats) -> list[Floats]:
    """Powers (N, D) of u for each of the three angles."""
    held = frame()
    u = (np.asarray(scapula, dtype=float) - held.middle) / held.half
    exponents = np.arange(held.powers.max() + 1)
    return [u[:, c, None] ** exponents for c in range(3)]


def _terms(scapula: Floats) -> Floats:
    """Terms (N, T) of the polynomials."""
    one, two, three = (
        raised[:, rows] for raised, rows in zip(_powers(scapula), frame().powers.T, strict=True)
    )
    terms: Floats = one * two * three
    return terms


def _slopes(scapula: Floats) -> Floats:
    """Derivatives (N, T, 3) of the terms by angle."""
    held = frame()
    raised = _powers(scapula)
    factors = [raised[c][:, held.powers[:, c]] for c in range(3)]
    slopes = np.empty((*factors[0].shape, 3))
    for c in range(3):
        rows = held.powers[:, c]
        own = raised[c][:, np.maximum(rows - 1, 0)] * (rows / held.half[c])
        others = [factors[k] for k in range(3) if k != c]
        slopes[..., c] = own * others[0] * others[1]
    return slopes
