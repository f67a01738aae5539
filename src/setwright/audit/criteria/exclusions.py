"""Nothing in the plan is something the person must not or will not do."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.plan.limits import avoidance

EVIDENCE = ("pain-scale", "pain-persist")


@criterion("exclusions", "movements the person avoids are left out", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One miss an exercise that is avoided; one holding remark when there is none."""
    if context.intake is None or not context.intake.avoid:
        return
    clean = True
    for item in context.placed:
        found = avoidance(context.intake, item.exercise)
        if found is None:
            continue
        clean = False
        yield Remark(
            "exclusions",
            context.subject(item),
            "misses",
            None,
            "",
            None,
            None,
            EVIDENCE,
            Place(item.session, item.position),
            Mend("swap exercise", item.exercise.id),
            (("because", found.reason), ("note", found.note)),
        )
    if clean:
        yield Remark("exclusions", "week", "holds", None, "", None, None, EVIDENCE)
