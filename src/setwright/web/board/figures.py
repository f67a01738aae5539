"""What the engine computes of a week, with nothing computed twice."""

from __future__ import annotations

from dataclasses import replace

from setwright.audit.audit import AuditReport, audit, context_of
from setwright.audit.context import Context
from setwright.plan.intake import Intake
from setwright.plan.week import Plan, Session
from setwright.rehearsal.model import Rehearsal, RehearsedSession
from setwright.rehearsal.rehearse import rehearse
from setwright.web.memory import held


@held(2048)
def lived(session: Session, intake: Intake | None) -> RehearsedSession:
    """A session rehearsed: it depends on itself and the person alone."""
    alone = Plan(setwright="plan/1", title="one session", sessions=(session,))
    return rehearse(alone, intake).sessions[0]


def rehearsal_of(plan: Plan, intake: Intake | None) -> Rehearsal:
    """The week rehearsed, its sessions each only when they changed."""
    return Rehearsal(
        tuple(
            replace(lived(session, intake), index=number)
            for number, session in enumerate(plan.sessions)
        )
    )


@held(64)
def report_of(plan: Plan, intake: Intake | None) -> AuditReport:
    """The week audited."""
    return audit(plan, intake, rehearsal_of(plan, intake))


@held(64)
def whole_context(plan: Plan, intake: Intake | None) -> Context:
    """What criteria and explanations look at."""
    return context_of(plan, intake, rehearsal_of(plan, intake))
