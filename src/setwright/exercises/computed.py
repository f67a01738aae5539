"""What the mechanics say of an exercise for the body the catalogue is computed for."""

from __future__ import annotations

from typing import Final

import numpy as np

from setwright.documents.base import Document
from setwright.exercises.for_body import for_body
from setwright.exercises.movements import movement
from setwright.mechanics.body import Build
from setwright.mechanics.uncertainty import draw

# The body of the catalogue: stature and mass the measured strength curves belong to.
BUILD: Final = Build(stature_m=1.77, mass_kg=75.0, sex="male")
DRAWS: Final = 200
# Fibre lengths of a model are not known better than this (docs/geometry.md).
LENGTH_SD: Final = 0.15


class ComputedPart(Document):
    """One part in a set near its limit.

    Attributes:
        share: 0 to 1, relative to the hardest-working part.
        sd: standard deviation of the share over the draws.
        loaded_ratio: fibre length over optimal length where it is loaded.
        activation: at the point of the range where the least load can be held.
    """

    share: float
    sd: float
    loaded_ratio: float
    activation: float


class Computed(Document):
    """An exercise as computed.

    Attributes:
        load: load of the set.
        unit: ``kg``, ``N·m`` or ``bodyweights``.
        hardest: where the least load can be held, 0 stretched to 1 shortened.
        ends: parts that end the set.
        spine_moment_nm: largest moment the lower back holds, N·m.
        spine_compression_n: estimate of the largest force along the spine, N.
        parts: every part that works at all.
    """

    load: float
    unit: str
    hardest: float
    ends: tuple[str, ...]
    spine_moment_nm: float
    spine_compression_n: float
    parts: dict[str, ComputedPart]


def compute(ident: str, draws: int = DRAWS) -> Computed:
    """Compute a movement of the catalogue.

    Args:
        ident: exercise id.
        draws: how many bodies and stances the spread is taken from.

    Raises:
        KeyError: when no movement is declared for it.
        PostureError, ValueError: for a posture no body can hold.
    """
    declared = movement(ident)
    found = for_body(declared, BUILD)
    spread = draw(declared, BUILD, draws) if draws else {}
    parts = {
        row.part: ComputedPart(
            share=round(row.share, 3),
            sd=round(float(spread[row.part].share.std()), 3) if row.part in spread else 0.1,
            loaded_ratio=round(row.loaded_ratio, 3),
            activation=round(row.activation, 3),
        )
        for row in found.parts
    }
    return Computed(
        load=round(found.load, 2),
        unit=found.unit,
        hardest=round(found.hardest, 3),
        ends=found.ends,
        spine_moment_nm=round(float(np.max(found.spine.moment)), 1),
        spine_compression_n=round(float(np.max(found.spine.compression)), 0),
        parts=parts,
    )
