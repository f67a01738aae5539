"""The audit in sentences: what misses first, then what is close, then what holds."""

from __future__ import annotations

from collections.abc import Iterable

from setwright.audit.audit import AuditReport
from setwright.audit.registry import Criterion, registry
from setwright.audit.remark import Remark, Verdict
from setwright.handout.remark_words import limit_words, mend_words, remark_words, subject_words
from setwright.handout.wording import counted, folded, number
from setwright.plan.week import Plan

WIDTH = 96
VERDICTS: tuple[tuple[Verdict, str], ...] = (
    ("misses", "Misses"),
    ("close", "Close"),
    ("holds", "Holds"),
)
# Criteria whose sentence says more than a figure and its limit.
IN_FULL = ("time", "tempo", "similar", "supersets", "effort-caps")


def audit_text(report: AuditReport, plan: Plan, show_all: bool = False) -> str:
    """Every remark grouped by verdict and criterion, with figure, limit, evidence and mend.

    Args:
        report: the audit.
        plan: the plan it is about.
        show_all: show what holds in full, too; otherwise the criteria that hold are only named.
    """
    declared = sum(1 for remark in report.remarks if remark.unavoidable is not None)
    counts = (
        f"{counted(len(report.remarks), 'check')}: {report.count('holds')} hold, "
        f"{report.count('close')} close, {report.count('misses')} miss"
    )
    if declared:
        counts += f" ({declared} of them declared unavoidable)"
    title = f"Audit: {plan.title}"
    blocks = [f"{title}\n{'=' * min(len(title), WIDTH)}\n{counts}."]
    for verdict, heading in VERDICTS:
        remarks = [remark for remark in report.remarks if remark.verdict == verdict]
        if not remarks:
            continue
        if verdict == "holds" and not show_all:
            blocks.append(_named(report.remarks))
        else:
            blocks.append(f"{heading}\n{'-' * WIDTH}\n{_grouped(remarks)}")
    return "\n\n".join(block for block in blocks if block)


def _named(remarks: Iterable[Remark]) -> str:
    """The criteria without a miss or a close remark, by title."""
    troubled = {remark.criterion for remark in remarks if remark.verdict != "holds"}
    fine = {remark.criterion for remark in remarks} - troubled
    titles = [item.title for item in registry() if item.id in fine]
    if not titles:
        return ""
    return folded("Holds throughout: " + "; ".join(titles) + ".", WIDTH, subsequent_indent="  ")


def _grouped(remarks: list[Remark]) -> str:
    known = {item.id: item for item in registry()}
    order = dict.fromkeys(remark.criterion for remark in remarks)
    return "\n".join(
        _criterion(known.get(ident), [one for one in remarks if one.criterion == ident])
        for ident in order
    )


def _criterion(criterion: Criterion | None, remarks: list[Remark]) -> str:
    shown = remarks
    ident = remarks[0].criterion
    title = f"{ident}: {criterion.title}" if criterion else ident
    lines = [title]
    together = [remark for remark in remarks if _is_short(remark)]
    if len(together) > 1:
        lines += _together(together)
        remarks = [remark for remark in remarks if not _is_short(remark)]
    for remark in remarks:
        said = f"{_opened(remark_words(remark))}."
        if remark.mend is not None:
            said += f" Mend: {mend_words(remark.mend)}."
        if remark.unavoidable is not None:
            said += f" Declared unavoidable: {remark.unavoidable}."
        lines.append(folded(said, WIDTH, initial_indent="  - ", subsequent_indent="    "))
    evidence = dict.fromkeys(ident for remark in shown for ident in remark.evidence)
    if evidence:
        lines.append(
            folded(
                "evidence: " + ", ".join(evidence),
                WIDTH,
                initial_indent="    ",
                subsequent_indent="      ",
                break_long_words=False,
            )
        )
    return "\n".join(lines)


def _is_short(remark: Remark) -> bool:
    """Whether a figure and its limit say it all."""
    return (
        remark.verdict == "holds"
        and remark.figure is not None
        and remark.subject != "week"
        and remark.criterion not in IN_FULL
    )


def _together(remarks: list[Remark]) -> list[str]:
    """Remarks that hold, with the same limits, as one list of figures."""
    by_limit: dict[tuple[str, str], list[Remark]] = {}
    for remark in remarks:
        by_limit.setdefault((remark.unit, limit_words(remark)), []).append(remark)
    lines = []
    for (unit, limits), rows in by_limit.items():
        figures = "; ".join(
            f"{subject_words(row.subject)} {number(row.figure or 0.0)}" for row in rows
        )
        head = f"{unit} ({limits})" if limits else unit
        lines.append(
            folded(f"{head}: {figures}.", WIDTH, initial_indent="  - ", subsequent_indent="    ")
        )
    return lines


def _opened(words: str) -> str:
    return words[:1].upper() + words[1:]
