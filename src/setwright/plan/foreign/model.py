"""What an import understood of a file, piece by piece."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final, Literal

from setwright.plan.week import Plan

# exercise: stands in the plan. day, title, setting, heading, note: read as what they are.
# waiting: understood, but left out of the plan because of another piece. attention: not surely
# understood.
Kind = Literal["exercise", "day", "title", "setting", "heading", "note", "waiting", "attention"]

# What cells of a sheet that prescribes nothing are said to be.
NO_PLAN: Final = "a sheet without a plan"

# How sure each way of reading is; ours, no published figures.
AS_WRITTEN: Final = 1.0
BY_CUSTOM: Final = 0.9
ASSUMED: Final = 0.8
DOUBTFUL: Final = 0.5


@dataclass(frozen=True)
class Piece:
    """One line of a text or one cell of a table.

    Attributes:
        place: ``12`` (line 12), ``B7`` or ``Week!B7``.
        text: as it stands there.
        kind: what it is.
        meaning: what was understood, in the plan's own words.
        confidence: 0 to 1.
        why: what was assumed, or what is in doubt.
        candidates: what may have been meant.
        row: place of the first cell of the row, or of the line itself.
    """

    place: str
    text: str
    kind: Kind
    meaning: str
    confidence: float
    why: str = ""
    candidates: tuple[str, ...] = ()
    row: str = ""


@dataclass(frozen=True)
class Reading:
    """A file as understood.

    Attributes:
        name: of the file.
        pieces: every line or cell with content, in the order of the file.
        plan: what is surely understood, or None when no exercise is.
    """

    name: str
    pieces: tuple[Piece, ...]
    plan: Plan | None

    @property
    def attention(self) -> tuple[Piece, ...]:
        """The pieces that are not surely understood."""
        return tuple(piece for piece in self.pieces if piece.kind == "attention")

    @property
    def waiting(self) -> tuple[Piece, ...]:
        """The pieces left out of the plan because of another."""
        return tuple(piece for piece in self.pieces if piece.kind == "waiting")

    def count(self, kind: Kind) -> int:
        """How many pieces are of a kind."""
        return sum(1 for piece in self.pieces if piece.kind == kind)
