"""The dose of every part against its target, as rows of the board."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.anatomy.model import Part
from setwright.audit.audit import AuditReport
from setwright.handout.parts_rows import groups
from setwright.handout.wording import span
from setwright.plan.intake import Intake
from setwright.response.targets import Band, bands
from setwright.web.board.geometry import bar

# The bars' scale never ends before this many sets a week.
LEAST_SCALE = 20.0
# Parts nobody asks for are listed from this many sets on.
LEAST_SHOWN = 0.1


@dataclass(frozen=True)
class DoseRow:
    """One part.

    Attributes:
        sets: fractional sets a week.
        target: least and most in words, empty when nothing is asked.
        aim: what the person wants of it, empty when nothing special.
        off: how far it is below or above, in words; empty inside.
        growth: expected, percent a week, with its interval, in words.
        bar: SVG.
    """

    name: str
    sets: float
    target: str
    aim: str
    off: str
    growth: str
    bar: str


@dataclass(frozen=True)
class MuscleRows:
    """A muscle and its parts."""

    name: str
    rows: tuple[DoseRow, ...]


@dataclass(frozen=True)
class Dose:
    """The doses of a week, from the neck down.

    Attributes:
        asked: parts that are meant to get a least dose.
        besides: other parts that get some.
    """

    asked: tuple[MuscleRows, ...]
    besides: tuple[MuscleRows, ...]

    @property
    def short(self) -> int:
        """How many parts are below their target."""
        return sum(row.off.endswith("short") for one in self.asked for row in one.rows)


def dose_of(report: AuditReport, intake: Intake | None) -> Dose:
    """The dose of every part that is trained or meant to be."""
    response = report.response
    weekly = dict(zip(response.parts, map(float, response.weekly_sets), strict=True))
    at = {part: n for n, part in enumerate(response.parts)}
    wanted = bands(intake)
    targets = {part: band for part, band in wanted.items() if band.least > 0}
    scale = max(LEAST_SCALE, *weekly.values())
    asked: list[MuscleRows] = []
    besides: list[MuscleRows] = []
    for name, members in groups(weekly, targets):
        rows = [
            (
                part.id in targets,
                _row(part, weekly[part.id], wanted[part.id], report, at[part.id], scale),
            )
            for part in members
            if part.id in targets or weekly[part.id] >= LEAST_SHOWN
        ]
        for into, meant in ((asked, True), (besides, False)):
            if chosen := tuple(row for is_meant, row in rows if is_meant is meant):
                into.append(MuscleRows(name, chosen))
    return Dose(tuple(asked), tuple(besides))


def _row(
    part: Part, sets: float, band: Band, report: AuditReport, at: int, scale: float
) -> DoseRow:
    response = report.response
    sets = round(sets, 1)
    off = ""
    if sets < round(band.least, 1):
        off = f"{band.least - sets:.1f} short"
    elif band.least and sets > band.most:
        off = f"{sets - band.most:.1f} over"
    growth = (
        f"{response.growth[at]:.2f} % a week ({response.growth_low[at]:.2f} to "
        f"{response.growth_high[at]:.2f})"
    )
    return DoseRow(
        part.name,
        sets,
        span(band.least, band.most, "–") if band.least else "",
        "" if band.aim == "normal" else band.aim,
        off,
        growth,
        bar(sets, band.least, band.good, band.most, scale),
    )
