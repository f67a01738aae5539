"""A remark is data: figure, limit, verdict, evidence, mend."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

Verdict = Literal["holds", "close", "misses"]
MendKind = Literal[
    "add sets",
    "drop sets",
    "add exercise",
    "drop exercise",
    "swap exercise",
    "lengthen rest",
    "shorten rest",
    "raise reps",
    "lower reps",
    "raise rir",
    "lower rir",
    "move earlier",
    "move day",
    "split pair",
    "pair exercises",
    "change tempo",
    "lengthen lowering",
    "ask a professional",
    "use safeties",
    "change load",
    "accept",
]


@dataclass(frozen=True)
class Place:
    """Where in the plan: session index and, where it applies, exercise index."""

    session: int
    entry: int | None = None


@dataclass(frozen=True)
class Mend:
    """The smallest change that helps.

    Attributes:
        kind: what to do.
        target: exercise, part or session it is done to.
        amount: how much, in ``unit``; None when the kind says it all.
        gain: what the figure becomes after the mend, when that was computed.
    """

    kind: MendKind
    target: str
    amount: float | None = None
    unit: str = ""
    gain: float | None = None


@dataclass(frozen=True)
class Remark:
    """One audit result.

    Attributes:
        criterion: id of the criterion in the registry.
        subject: what it is about: a part, muscle, exercise, session or ``week``.
        verdict: holds, close or misses.
        figure: what was measured.
        unit: of figure and limits.
        low: least the figure may be, or None.
        high: most it may be, or None.
        evidence: ids of findings, or ``common practice``.
        place: where in the plan, or None for the week.
        mend: the smallest change that helps; None where it holds.
        detail: named figures and words a sentence may use, in a fixed order.
        unavoidable: the limit that binds, when the plan declares this miss.
    """

    criterion: str
    subject: str
    verdict: Verdict
    figure: float | None
    unit: str
    low: float | None
    high: float | None
    evidence: tuple[str, ...]
    place: Place | None = None
    mend: Mend | None = None
    detail: tuple[tuple[str, str | float], ...] = ()
    unavoidable: str | None = None
