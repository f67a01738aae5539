"""The audit: rehearse the plan, compute its response, hold it against every criterion."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, replace

from setwright.audit.context import Context
from setwright.audit.registry import registry
from setwright.audit.remark import Remark, Verdict
from setwright.plan.intake import Intake
from setwright.plan.week import Plan
from setwright.rehearsal.model import Rehearsal
from setwright.rehearsal.rehearse import rehearse
from setwright.response.growth import Person, doses_of, respond
from setwright.response.model import WeekResponse

DRAWS = 200


@dataclass(frozen=True)
class AuditReport:
    """Every remark on a plan, and the computations they stand on."""

    remarks: tuple[Remark, ...]
    rehearsal: Rehearsal
    response: WeekResponse

    def count(self, verdict: Verdict) -> int:
        """How many remarks carry the verdict."""
        return Counter(remark.verdict for remark in self.remarks)[verdict]

    @property
    def misses(self) -> tuple[Remark, ...]:
        """Misses that the plan does not declare unavoidable."""
        return tuple(
            remark
            for remark in self.remarks
            if remark.verdict == "misses" and remark.unavoidable is None
        )


def context_of(
    plan: Plan, intake: Intake | None = None, rehearsal: Rehearsal | None = None
) -> Context:
    """Compute what the criteria look at. Without an intake an intermediate adult is assumed."""
    lived = rehearse(plan, intake) if rehearsal is None else rehearsal
    person = (
        Person(intake.experience, intake.age_band, intake.sex)
        if intake
        else Person("intermediate", "18-39", "unstated")
    )
    doses = doses_of(plan, lived)
    seed = intake.seed if intake else 1
    response = respond(doses, person, len(plan.sessions), draws=DRAWS, seed=seed)
    return Context(plan, intake, lived, doses, response, person)


def audit(
    plan: Plan, intake: Intake | None = None, rehearsal: Rehearsal | None = None
) -> AuditReport:
    """Hold a plan against every criterion.

    Args:
        plan: the week.
        intake: the person's aims and limits; without it only what holds for anyone is checked.
        rehearsal: the rehearsed plan when it was computed already.

    Returns:
        Remarks in the order of the registry; a miss the plan declares unavoidable carries the
        limit that binds.
    """
    context = context_of(plan, intake, rehearsal)
    declared = {(item.criterion, item.subject): item.because for item in plan.unavoidable}
    remarks = tuple(
        replace(remark, unavoidable=declared.get((remark.criterion, remark.subject)))
        if remark.verdict == "misses"
        else remark
        for item in registry()
        for remark in item.check(context)
    )
    return AuditReport(remarks, context.rehearsal, context.response)
