"""A plan's handout in the formats that are asked for, written whole."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime, time
from pathlib import Path
from typing import Literal
from zoneinfo import ZoneInfo

from setwright.audit.audit import audit
from setwright.documents.whole_file import write_bytes
from setwright.handout.content.build import Reader, content_of
from setwright.plan.intake import Intake
from setwright.plan.week import Plan

Format = Literal["pdf", "ics", "html", "xlsx"]
FORMATS: tuple[Format, ...] = ("pdf", "ics", "html", "xlsx")


@dataclass(frozen=True)
class Wishes:
    """What a handout should be like.

    Attributes:
        reader: whom it is for.
        formats: which files are made.
        paper: size of a printed sheet.
        start: first day on which a session may fall.
        at: when sessions begin.
        zone: time zone of ``at``; None leaves it to the reader's device.
        weeks: how often the calendar repeats the week.
        moment: when the handout is made; the same moment gives the same PDF, page and calendar.
    """

    reader: Reader
    formats: tuple[Format, ...]
    paper: Literal["a4", "letter"]
    start: date
    at: time
    zone: ZoneInfo | None
    weeks: int
    moment: datetime


def rendered(plan: Plan, intake: Intake | None, wishes: Wishes) -> Mapping[Format, bytes]:
    """The files of a handout, not yet written.

    Args:
        plan: the week.
        intake: the person, or None.
        wishes: formats, reader, dates.
    """
    report = audit(plan, intake)
    content = content_of(plan, report, intake, wishes.reader)
    week: tuple[str, ...] = ()
    if wishes.reader == "coach" and {"pdf", "html"} & set(wishes.formats):
        from setwright.handout.pdf.week_pages import week_pages

        week = week_pages(plan, report.rehearsal)
    files: dict[Format, bytes] = {}
    for kind in wishes.formats:
        if kind == "pdf":
            from setwright.handout.pdf.render import pdf

            files[kind] = pdf(content, wishes.paper, wishes.moment, week)
        elif kind == "ics":
            from setwright.handout.calendar import calendar

            files[kind] = calendar(
                content, wishes.start, wishes.at, wishes.zone, wishes.moment, wishes.weeks
            )
        elif kind == "html":
            from setwright.handout.page.build import page

            files[kind] = page(content, week).encode("utf-8")
        else:
            from setwright.handout.workbook.build import workbook

            files[kind] = workbook(plan, content, wishes.start, wishes.paper, wishes.moment)
    return files


def export(
    plan: Plan, intake: Intake | None, folder: Path, name: str, wishes: Wishes
) -> tuple[Path, ...]:
    """Write a handout: everything is made before the first file is replaced.

    Args:
        plan: the week.
        intake: the person, or None.
        folder: where to; it must be there.
        name: of the files without suffix, from ``names.safe_name``.
        wishes: formats, reader, dates.

    Returns:
        The files, in the order of the formats.

    Raises:
        DocumentError: when a file cannot be written.
    """
    written = []
    for kind, content in rendered(plan, intake, wishes).items():
        path = folder / f"{name}.{kind}"
        write_bytes(path, content)
        written.append(path)
    return tuple(written)
