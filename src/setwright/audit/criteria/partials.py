"""Lengthened partials where they suit the exercise, and not in a first week."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.plan.limits import volume_share

EVIDENCE = (
    "partials-long-vs-short-meta-2025",
    "lengthened-partials-vs-full-rom-trained-2025",
    "rhabdo-eccentric",
)


@criterion("partials", "lengthened partials only where they suit", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise that is done with partials."""
    first_week = volume_share(context.intake)[0] < 1.0
    for item in context.placed:
        if item.entry.partials is None:
            continue
        fits = item.exercise.partials and not first_week
        because = "a first week" if first_week else "the exercise is not hardest where it is long"
        yield Remark(
            "partials",
            context.subject(item),
            "holds" if fits else "misses",
            None,
            "",
            None,
            None,
            EVIDENCE,
            Place(item.session, item.position),
            None if fits else Mend("change tempo", item.exercise.id),
            () if fits else (("because", because),),
        )
