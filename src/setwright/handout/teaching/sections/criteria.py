"""The audit, criterion by criterion."""

from __future__ import annotations

from setwright.audit.audit import AuditReport
from setwright.audit.registry import Criterion, registry
from setwright.audit.remark import Remark
from setwright.handout.remark_words import limit_words, mend_words, remark_words, subject_words
from setwright.handout.teaching.content import Found, Ruling, Section, Standing, Table, Words
from setwright.handout.teaching.evidence import known, shown, weighed
from setwright.handout.teaching.lesson import THEMES
from setwright.handout.teaching.lessons import LESSONS
from setwright.handout.wording import counted, number

ORDER = ("holds", "close", "misses")
NO_CASE: Standing = "no case here"


def ruling(criterion: Criterion, report: AuditReport) -> Ruling:
    """What one criterion finds in this week, and what it stands on."""
    remarks = [one for one in report.remarks if one.criterion == criterion.id]
    lesson = LESSONS[criterion.id]
    cited = known((*criterion.evidence, *(ident for one in remarks for ident in one.evidence)))
    return Ruling(
        criterion.id,
        _opened(criterion.title),
        _standing(remarks),
        _counts(remarks),
        lesson.means,
        lesson.matters,
        tuple(
            Found(
                one.verdict,
                f"{_opened(remark_words(one))}.",
                f"{_opened(mend_words(one.mend))}." if one.mend else "",
                one.unavoidable or "",
            )
            for verdict in ("misses", "close")
            for one in remarks
            if one.verdict == verdict
        ),
        _held([one for one in remarks if one.verdict == "holds"]),
        lesson.strength,
        weighed(cited),
        lesson.thin,
        shown(lesson.shown),
        cited,
    )


def criteria_sections(report: AuditReport) -> tuple[Section, ...]:
    """A table of every verdict, then the criteria in chapters."""
    rulings = {one.id: ruling(one, report) for one in registry()}
    intro = Words(
        "A criterion is a question put to the week. Each is asked of every exercise, muscle, "
        "session or of the week as a whole; the worst answer gives the verdict. Evidence is good "
        "where pooled trials agree, fair where trials are few, small or at odds, and thin where "
        "there is little besides the experience of the trade or our own choice of a limit."
    )
    sections = [
        Section("criteria", "Criterion by criterion", (intro, verdicts(report))),
    ]
    for number_, theme in enumerate(THEMES, start=1):
        chosen = tuple(rulings[one] for one, lesson in LESSONS.items() if lesson.theme == theme)
        sections.append(Section(f"criteria-{number_}", theme, chosen, level=3))
    return tuple(sections)


def verdicts(report: AuditReport) -> Table:
    """One line a criterion: the answer nearest to its limit or furthest beyond, and the verdict."""
    rows = []
    for one in registry():
        remarks = [remark for remark in report.remarks if remark.criterion == one.id]
        worst = _worst(remarks)
        rows.append(
            (
                _opened(one.title),
                _figure(worst),
                _limit(worst),
                _standing(remarks),
                LESSONS[one.id].strength,
            )
        )
    return Table(
        "Every criterion with the answer that is worst, or nearest to its limit",
        ("criterion", "here", "limit", "verdict", "evidence"),
        tuple(rows),
        wide=(0, 1),
        stressed=("misses",),
    )


def _standing(remarks: list[Remark]) -> Standing:
    if not remarks:
        return NO_CASE
    return max((one.verdict for one in remarks), key=ORDER.index)


def _counts(remarks: list[Remark]) -> str:
    if not remarks:
        return "nothing in this week or intake that it asks about"
    parts = [
        f"{count} {words[count == 1]}"
        for verdict, words in (
            ("holds", ("hold", "holds")),
            ("close", ("are close", "is close")),
            ("misses", ("miss", "misses")),
        )
        if (count := sum(one.verdict == verdict for one in remarks))
    ]
    declared = sum(one.unavoidable is not None for one in remarks)
    said = f"{counted(len(remarks), 'check')}: {', '.join(parts)}"
    return f"{said}, {declared} declared unavoidable" if declared else said


def _worst(remarks: list[Remark]) -> Remark | None:
    """The remark with the worst verdict; among equals the one nearest to, or furthest beyond."""
    return min(remarks, key=lambda one: (-ORDER.index(one.verdict), _room(one)), default=None)


def _room(one: Remark) -> float:
    """How far a figure is within its limits, relative; large when it has none."""
    if one.figure is None:
        return 1e9
    rooms = []
    if one.low is not None:
        rooms.append((one.figure - one.low) / max(abs(one.low), 1e-9))
    if one.high is not None:
        rooms.append((one.high - one.figure) / max(abs(one.high), 1e-9))
    return min(rooms, default=1e9)


def _figure(one: Remark | None) -> str:
    if one is None:
        return ""
    if one.figure is None:
        return "" if one.subject == "week" else _opened(subject_words(one.subject))
    said = f"{number(one.figure)} {one.unit}".strip()
    return said if one.subject == "week" else f"{_opened(subject_words(one.subject))}: {said}"


def _limit(one: Remark | None) -> str:
    return "" if one is None else limit_words(one)


def _held(remarks: list[Remark]) -> tuple[str, ...]:
    """Figures that hold, one line for each pair of limits; words for those without a figure."""
    lines: dict[tuple[str, str], list[str]] = {}
    plain = []
    for one in remarks:
        if one.figure is None or one.subject == "week":
            plain.append(f"{_opened(remark_words(one))}.")
        else:
            said = f"{subject_words(one.subject)} {number(one.figure)}"
            lines.setdefault((one.unit, limit_words(one)), []).append(said)
    grouped = (
        f"{_opened(f'{unit} ({limits})' if limits else unit)}: {'; '.join(said)}."
        for (unit, limits), said in lines.items()
    )
    return (*plain, *grouped)


def _opened(words: str) -> str:
    return words[:1].upper() + words[1:]
