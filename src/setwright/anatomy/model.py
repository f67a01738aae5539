"""What is known of a muscle part."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from setwright.anatomy.joints import Action, Coordinate
from setwright.documents.base import Document

Region = Literal[
    "thigh",
    "hip",
    "lower leg",
    "trunk",
    "chest",
    "back",
    "shoulder",
    "upper arm",
    "forearm",
    "neck",
]


class Part(Document):
    """A head or region of a muscle: the smallest thing a session can aim at.

    Attributes:
        id: for example ``rectus-femoris``.
        name: the trade's name, for example ``rectus femoris``.
        muscle: id of the muscle it belongs to, for example ``quadriceps``; a muscle of one part
            has the part's own id.
        region: coarse place in the body.
        actions: leverage 0 to 1 of the part in each action it produces (1 a prime mover,
            0.6 a strong helper, 0.3 a weak one).
        stretch: change of length in fractions of optimal fibre length per 90 degrees that a
            coordinate rises (positive: raising the coordinate lengthens the part).
        rest_length: fibre length ratio at the anatomical position.
        volume_cm3: muscle volume, one side, or None where no figure was read.
        trained_directly: False for deep stabilisers that no plan need target (rotator cuff
            helpers, deep neck flexors, and the like); they are shown, never demanded.
        synonyms: other names a coach may write.
        sources: ids of findings its figures come from.
    """

    id: str
    name: str
    muscle: str
    region: Region
    actions: dict[Action, float]
    stretch: dict[Coordinate, float]
    rest_length: float = Field(1.0, ge=0.4, le=1.8)
    volume_cm3: float | None = None
    trained_directly: bool = True
    synonyms: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()
    note: str = ""


class Muscle(Document):
    """A muscle or muscle group as a coach names it, with its parts.

    Attributes:
        groups: wider words that mean this muscle too, for example ``legs`` or ``arms``.
    """

    id: str
    name: str
    synonyms: tuple[str, ...] = ()
    groups: tuple[str, ...] = ()
    small: bool = Field(False, description="a small muscle whose isolation sets need little rest")
