"""A block of weeks: where it starts, how it steps, when it holds and when it eases.

How a block is laid out is common practice: trials compare whole programmes, and varying the load
over time helps strength, not growth (periodization-meta-2022). The evidence on lighter weeks is
thin: docs/progression.md says what there is.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from setwright.plan.intake import Experience, Intake

WEEK = 7
# Further repetitions in reserve in the first weeks: effort rises to the plan's (common practice).
START: dict[Experience, tuple[float, ...]] = {
    "beginner": (2.0, 1.0),
    "intermediate": (1.0,),
    "advanced": (1.0,),
}
# A lighter week: share of the sets, and further repetitions in reserve (common practice; with a
# quarter of the sets novices lost nothing: deload-reduced-volume-untrained-2026).
EASE_SETS = 0.5
EASE_RIR = 2.0

Kind = Literal["start", "build", "hold", "ease"]


@dataclass(frozen=True)
class Place:
    """Where a date stands in its block.

    Attributes:
        week: from 1.
        kind: "start": effort still rising to the plan's; "build": repetitions and loads rise;
            "hold": they stay; "ease": the lighter week.
        rir_more: repetitions in reserve to add to the plan's.
        sets_share: share of the plan's sets to do.
        because: in plain words.
        evidence: ids of findings.
    """

    week: int
    kind: Kind
    rir_more: float
    sets_share: float
    because: str
    evidence: tuple[str, ...]

    @property
    def may_rise(self) -> bool:
        """Whether loads may rise this week."""
        return self.kind in ("start", "build")

    def held(self, because: str, evidence: tuple[str, ...]) -> Place:
        """The same place, with nothing rising; a lighter week stays one."""
        if not self.may_rise:
            return self
        return replace(self, kind="hold", because=because, evidence=evidence)


@dataclass(frozen=True)
class Block:
    """Weeks from a Monday on.

    Attributes:
        start: proleptic ordinal of its first day.
        more: further repetitions in reserve in the first weeks; none after them.
        eased: first days of weeks agreed to be lighter.
    """

    start: int
    more: tuple[float, ...] = (1.0,)
    eased: frozenset[int] = frozenset()

    def place(self, day: int) -> Place:
        """Where a day stands; a day before the block counts as its first week."""
        week = max(day - self.start, 0) // WEEK
        monday = self.start + WEEK * week
        if monday in self.eased:
            return Place(
                week + 1,
                "ease",
                EASE_RIR,
                EASE_SETS,
                "This is the lighter week that was agreed: half the sets, further from failure.",
                ("deload-survey-2024", "deload-reduced-volume-untrained-2026"),
            )
        more = self.more[week] if week < len(self.more) else 0.0
        if more > 0:
            away = "1 repetition" if more == 1 else f"{more:g} repetitions"
            because = f"Week {week + 1} of the block starts {away} further from failure."
            return Place(week + 1, "start", more, 1.0, because, ("common practice",))
        return Place(week + 1, "build", 0.0, 1.0, "", ())

    def eased_on(self, day: int) -> bool:
        """Whether a day lies in a lighter week."""
        return any(monday <= day < monday + WEEK for monday in self.eased)


def block_of(intake: Intake, start: int, eased: frozenset[int] = frozenset()) -> Block:
    """The block of a person from its first day on."""
    return Block(start, START[intake.experience], eased)
