"""The next week's plan against the one in force, kept as long as both stay the same."""

from __future__ import annotations

from datetime import date

from setwright.audit.compare import Comparison, compare
from setwright.plan.client_folder import ClientFolder
from setwright.plan.week import Plan
from setwright.plan.write import write_plan
from setwright.web.memory import Kept

_COMPARED: Kept[Comparison] = Kept(128)


def compared_with(folder: ClientFolder, monday: date, plan: Plan | None) -> Comparison | None:
    """A plan compared with the one in force in a week; None when they are the same."""
    before = folder.plan_on(monday)
    if before is None or plan is None or plan == before:
        return None
    intake = folder.intake
    key = write_plan(before), write_plan(plan), intake.model_dump_json()
    return _COMPARED.of(key, lambda: compare(before, plan, intake))
