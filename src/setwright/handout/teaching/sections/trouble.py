"""What misses or is close, with the smallest mend: the short document's audit."""

from __future__ import annotations

from setwright.audit.audit import AuditReport
from setwright.handout.remark_words import mend_words, remark_words
from setwright.handout.teaching.content import Points, Section, Words
from setwright.handout.teaching.evidence import known
from setwright.handout.teaching.sections.criteria import verdicts
from setwright.handout.wording import counted

MOST = 6


def trouble_section(report: AuditReport) -> Section:
    """Every verdict in a table, and the first misses with their mends."""
    remarks = [one for one in report.remarks if one.verdict == "misses" and one.mend is not None]
    shown = remarks[:MOST]
    items = tuple(
        Words(
            f"{_opened(remark_words(one))}. {_opened(mend_words(one.mend))}.",
            known(one.evidence)[:2],
        )
        for one in shown
        if one.mend is not None
    )
    more = len(remarks) - len(shown)
    caption = "What misses, and the smallest change that helps"
    if more > 0:
        caption += f" ({counted(more, 'further miss').replace('misss', 'misses')} in the audit)"
    blocks = (verdicts(report), Points(items, caption)) if items else (verdicts(report),)
    return Section("criteria", "What the audit says", blocks)


def _opened(words: str) -> str:
    return words[:1].upper() + words[1:]
