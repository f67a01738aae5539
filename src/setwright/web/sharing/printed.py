"""A week as others get it: content, pictures and files, without the person's intake for others."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, date, datetime, time

from setwright.audit.audit import audit
from setwright.handout.content.build import Reader, content_of
from setwright.handout.content.model import Content, Line, SessionContent
from setwright.handout.explain import explain
from setwright.handout.export import Format, Wishes, rendered
from setwright.handout.names import safe_name
from setwright.handout.teaching import export as teaching_export
from setwright.handout.teaching.build import teaching
from setwright.handout.teaching.content import Depth
from setwright.plan.week import Plan
from setwright.web.engine.folder import intake_of, plan_of
from setwright.web.memory import held

TYPES: dict[Format, str] = {
    "pdf": "application/pdf",
    "ics": "text/calendar; charset=utf-8",
    "html": "text/html; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
}
NAMES: dict[Format, str] = {
    "pdf": "PDF to print",
    "xlsx": "Workbook",
    "ics": "Calendar",
    "html": "Web page in one file",
}
EXPLAINED_TYPES: dict[teaching_export.Format, str] = {
    "pdf": TYPES["pdf"],
    "html": TYPES["html"],
    "md": "text/markdown; charset=utf-8",
}
EVENING = time(18)


def _for_others(text: str) -> Plan:
    """A plan without the person's name, in its title neither."""
    plan = plan_of(text)
    named = plan.person and plan.person.casefold() in plan.title.casefold()
    title = "A week of training" if named else plan.title
    return plan.model_copy(update={"person": "", "title": title})


@held(64)
def shared_content(text: str) -> Content:
    """What a link shows: the plan and nothing that is known of the person beside it."""
    plan = _for_others(text)
    return content_of(plan, audit(plan), None, "client")


@held(16)
def shared_pictures(text: str) -> tuple[str, ...]:
    """The week drawn to scale, as SVG."""
    from setwright.handout.pdf.week_pages import week_pages

    plan = _for_others(text)
    return tuple(week_pages(plan, audit(plan).rehearsal))


def handout_file(
    text: str, intake: str | None, kind: Format, reader: Reader, start: date
) -> tuple[bytes, str]:
    """One file of a handout, and a name for it.

    Args:
        text: of the plan.
        intake: text of the intake, or None.
        kind: of the file.
        reader: whom it is for.
        start: first day on which a session may fall.
    """
    plan = plan_of(text)
    moment = datetime.combine(start, EVENING, UTC)
    wishes = Wishes(reader, (kind,), "a4", start, EVENING, None, 1, moment)
    files = rendered(plan, intake_of(intake) if intake else None, wishes).files
    return files[kind], f"{safe_name(plan.title)}-{start}.{kind}"


def explained_file(
    text: str, intake: str | None, kind: teaching_export.Format, depth: Depth, start: date
) -> tuple[bytes, str]:
    """The week explained, to teach from, as one file, and a name for it.

    Args:
        text: of the plan.
        intake: text of the intake, or None.
        kind: of the file.
        depth: a page or two, or every criterion.
        start: first day of the week.
    """
    plan = plan_of(text)
    document = teaching(plan, intake_of(intake) if intake else None, depth)
    moment = datetime.combine(start, EVENING, UTC)
    name = f"{safe_name(plan.title)}-{start}-explained.{kind}"
    return teaching_export.rendered(document, kind, "a4", moment), name


@dataclass(frozen=True)
class SharedLine:
    """One exercise of a shared week and, in a sentence or two, why it is there."""

    line: Line
    why: str


@dataclass(frozen=True)
class SharedSession:
    """One session of a shared week."""

    session: SessionContent
    lines: tuple[SharedLine, ...]


@held(64)
def shared_sessions(text: str) -> tuple[SharedSession, ...]:
    """Sessions of a shared week, every exercise with its reason."""
    explained = explain(_for_others(text))
    return tuple(
        SharedSession(
            one,
            tuple(
                SharedLine(line, " ".join(said.words for said in item.said if said.topic == "why"))
                for line, item in zip(one.lines, reasons.exercises, strict=True)
            ),
        )
        for one, reasons in zip(shared_content(text).sessions, explained, strict=True)
    )
