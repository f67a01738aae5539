"""What a designed week cannot meet, and the limit that is to blame."""

from __future__ import annotations

from setwright.anatomy.atlas import parts
from setwright.audit.audit import AuditReport, audit
from setwright.audit.gaps import filler
from setwright.audit.muscles import muscle_name, parts_of_muscles
from setwright.audit.remark import Remark
from setwright.design.problem import earlier
from setwright.plan.intake import Intake
from setwright.plan.week import Plan, Unavoidable

# Criteria a week can fail for want of minutes, kit or days, whatever the designer does.
BY_LIMITS = frozenset({"coverage", "weekly-volume", "frequency"})


def _columns(remark: Remark) -> tuple[int, ...]:
    """Positions of the parts a remark is about."""
    for muscle, columns in parts_of_muscles().items():
        if muscle_name(muscle) == remark.subject and remark.criterion != "coverage":
            return tuple(columns.tolist())
    return tuple(i for i, part in enumerate(parts()) if part.name == remark.subject)


def _because(remark: Remark, intake: Intake) -> str:
    columns = _columns(remark)
    if columns and all(filler(column, intake) is None for column in columns):
        return "no exercise for it is left by the kit and what the person avoids"
    done = earlier(intake)[list(columns)].max() if columns else 0.0
    if done >= (remark.low or 0) - (remark.figure or 0) > 0 and remark.criterion != "frequency":
        return f"earlier work this week gave it about {done:.0f} sets, which the audit leaves out"
    minutes = sum(day.minutes for day in intake.days)
    return f"the {minutes} minutes of the week: other parts gain more from them under these aims"


def declare(plan: Plan, intake: Intake) -> tuple[Plan, AuditReport]:
    """Audit a designed week and write down what it cannot meet and why.

    Only what minutes, kit, days or a missing clearance forbid is declared; any other miss stays
    a miss.
    """
    report = audit(plan, intake)
    declared = [
        Unavoidable(
            criterion=remark.criterion, subject=remark.subject, because=_because(remark, intake)
        )
        for remark in report.misses
        if remark.criterion in BY_LIMITS and (remark.low or 0) > (remark.figure or 0)
    ]
    declared += [
        Unavoidable(
            criterion=remark.criterion,
            subject=remark.subject,
            because="a licensed professional has to clear training first",
        )
        for remark in report.misses
        if remark.criterion == "screening"
    ]
    if not declared:
        return plan, report
    plan = plan.model_copy(update={"unavoidable": tuple(declared)})
    return plan, audit(plan, intake, report.rehearsal)
