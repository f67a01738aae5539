"""The audit's remarks as the board lists them: what misses first."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.audit.audit import AuditReport
from setwright.audit.remark import Remark
from setwright.handout.remark_words import mend_words, remark_words
from setwright.web.board.mending import can_mend


@dataclass(frozen=True)
class RemarkLine:
    """One remark in words.

    Attributes:
        at: ``session.position`` it is about, empty for the week or a session.
        session: index of the session it is about, empty for the week.
        mend: the smallest change that helps.
        mends: whether the board can make it.
        because: the limit that binds, for a miss that is declared unavoidable.
    """

    verdict: str
    words: str
    mend: str
    because: str
    criterion: str
    subject: str
    mends: bool
    at: str
    session: str


@dataclass(frozen=True)
class Remarks:
    """What the board says of the audit."""

    misses: tuple[RemarkLine, ...]
    close: tuple[RemarkLine, ...]
    declared: tuple[RemarkLine, ...]
    holds: int


def remarks_of(report: AuditReport) -> Remarks:
    """The remarks in words, those that hold only counted."""
    misses = tuple(line(one) for one in report.misses)
    close = tuple(line(one) for one in report.remarks if one.verdict == "close")
    declared = tuple(line(one) for one in report.remarks if one.unavoidable is not None)
    return Remarks(misses, close, declared, report.count("holds"))


def line(remark: Remark) -> RemarkLine:
    """One remark in words."""
    place = remark.place
    entry = None if place is None else place.entry
    return RemarkLine(
        remark.verdict,
        remark_words(remark),
        mend_words(remark.mend) if remark.mend else "",
        remark.unavoidable or "",
        remark.criterion,
        remark.subject,
        can_mend(remark) and remark.unavoidable is None,
        "" if place is None or entry is None else f"{place.session}.{entry}",
        "" if place is None else str(place.session),
    )
