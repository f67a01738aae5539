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


@dataclass(frozen=True)
class Rendered:
    """A handout that is made but not yet written.

    Attributes:
        files: content of each file, in the order of the formats.
        unprintable: letters for which the PDF shows a mark, because no font here has them.
    """

    files: Mapping[Format, bytes]
    unprintable: tuple[str, ...] = ()


@dataclass(frozen=True)
class Written:
    """A handout on disk: its files in the order of the formats, and letters it cannot print."""

    paths: tuple[Path, ...]
    unprintable: tuple[str, ...]


def rendered(plan: Plan, intake: Intake | None, wishes: Wishes) -> Rendered:
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
    lacking: tuple[str, ...] = ()
    for kind in wishes.formats:
        if kind == "pdf":
            from setwright.handout.pdf.render import pdf, unprintable

            files[kind] = pdf(content, wishes.paper, wishes.moment, week)
            lacking = unprintable(content)
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
    return Rendered(files, lacking)


def export(plan: Plan, intake: Intake | None, folder: Path, name: str, wishes: Wishes) -> Written:
    """Write a handout: everything is made before the first file is replaced.

    Args:
        plan: the week.
        intake: the person, or None.
        folder: where to; it must be there.
        name: of the files without suffix, from ``names.safe_name``.
        wishes: formats, reader, dates.

    Raises:
        DocumentError: when a file cannot be written.
    """
    made = rendered(plan, intake, wishes)
    paths = {kind: folder / f"{name}.{kind}" for kind in made.files}
    for kind, content in made.files.items():
        write_bytes(paths[kind], content)
    return Written(tuple(paths.values()), made.unprintable)
