"""What only the coach's handout says: the audit and what each part gets."""

from __future__ import annotations

from setwright.anatomy.model import Part
from setwright.audit.audit import AuditReport
from setwright.audit.registry import registry
from setwright.audit.remark import Remark
from setwright.handout.content.model import CoachContent, Finding, PartRow
from setwright.handout.parts_rows import groups
from setwright.handout.remark_words import mend_words, remark_words
from setwright.handout.wording import counted, span
from setwright.plan.intake import Intake
from setwright.response.model import WeekResponse
from setwright.response.targets import Band, bands

# A part counts as trained on a day from half a fractional set on.
COUNTS_FROM = 0.5


def coach_content(report: AuditReport, intake: Intake | None) -> CoachContent:
    """The coach's sheet.

    Args:
        report: the audit.
        intake: the person's aims; without it every aim is the usual one.
    """
    remarks = report.remarks
    troubled = {one.criterion for one in remarks if one.verdict != "holds"}
    fine = {one.criterion for one in remarks} - troubled
    return CoachContent(
        f"{counted(len(remarks), 'check')}: {report.count('holds')} hold, "
        f"{report.count('close')} close, {report.count('misses')} miss",
        tuple(_finding(one) for one in remarks if one.verdict == "misses"),
        tuple(_finding(one) for one in remarks if one.verdict == "close"),
        tuple(one.title for one in registry() if one.id in fine),
        part_rows(report.response, intake),
    )


def _finding(remark: Remark) -> Finding:
    titles = {one.id: one.title for one in registry()}
    words = remark_words(remark)
    return Finding(
        titles.get(remark.criterion, remark.criterion),
        f"{words[:1].upper()}{words[1:]}.",
        f"{mend_words(remark.mend)}." if remark.mend else "",
        remark.unavoidable or "",
    )


def part_rows(response: WeekResponse, intake: Intake | None) -> tuple[PartRow, ...]:
    """What each part gets, muscle by muscle from the neck down."""
    weekly = dict(zip(response.parts, response.weekly_sets.tolist(), strict=True))
    targets = {ident: band for ident, band in bands(intake).items() if band.least > 0}
    return tuple(
        _row(muscle, one, response, targets.get(one.id))
        for muscle, members in groups(weekly, targets)
        for one in members
    )


def _row(muscle: str, part: Part, response: WeekResponse, band: Band | None) -> PartRow:
    at = response.parts.index(part.id)
    sets = round(float(response.weekly_sets[at]), 1)
    days = int((response.session_sets[:, at] >= COUNTS_FROM).sum())
    growth = (
        f"{response.growth[at]:.2f} ({response.growth_low[at]:.2f} to "
        f"{response.growth_high[at]:.2f})"
    )
    if band is None:
        return PartRow(muscle, part.name, sets, 0.0, 0.0, "", "no target", days, growth)
    standing = "below" if sets < band.least else "above" if sets > band.most else "within"
    target = span(round(band.least, 1), round(band.most, 1), "–")
    return PartRow(muscle, part.name, sets, band.least, band.most, target, standing, days, growth)
