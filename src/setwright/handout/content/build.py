"""From a plan to the content of its handout."""

from __future__ import annotations

from typing import Literal

from setwright.audit.audit import AuditReport
from setwright.design.substitute import substitutes
from setwright.exercises import catalogue
from setwright.handout.cautions import ASK, personal
from setwright.handout.content.coach import coach_content
from setwright.handout.content.model import Content
from setwright.handout.content.sessions import session_content
from setwright.handout.wording import counted, sets_of
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.training.stop_signs import STOP_SIGNS, Caution

Reader = Literal["client", "coach"]


def content_of(plan: Plan, report: AuditReport, intake: Intake | None, reader: Reader) -> Content:
    """Everything a handout says.

    Args:
        plan: the week.
        report: its audit, which holds the rehearsal.
        intake: the person's aims and limits, or None.
        reader: whom it is for; the coach gets the audit and the parts, too.
    """
    stand_ins = {
        ident: catalogue.exercise(one.exercise).name
        for ident, one in substitutes(plan, intake).items()
    }
    lived = report.rehearsal.sessions
    minutes = sum(one.total_s for one in lived) / 60
    exercises = sum(len(session.exercises) for session in plan.sessions)
    return Content(
        plan.title,
        plan.person or (intake.name if intake else ""),
        plan.unit,
        f"{counted(len(plan.sessions), 'session')}, {counted(exercises, 'exercise')}, "
        f"{counted(sets_of(plan), 'working set')}, {minutes:.0f} min",
        tuple(
            session_content(plan, session, one, stand_ins, intake)
            for session, one in zip(plan.sessions, lived, strict=True)
        ),
        _words(personal(intake) if intake else ()),
        _words(STOP_SIGNS),
        _words(ASK),
        coach_content(report, intake) if reader == "coach" else None,
    )


def _words(cautions: tuple[Caution, ...]) -> tuple[str, ...]:
    return tuple(one.words for one in cautions)
