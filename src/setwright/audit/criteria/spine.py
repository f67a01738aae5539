"""The spine is loaded no more than the work is worth, and not on days in a row."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of
from setwright.exercises import catalogue

# Sets weighted by spinal load (0 to 1), in one session and over two days in a row.
MOST_SESSION, MOST_TWO_DAYS = 9.0, 12.0
EVIDENCE = ("lbp-stacking",)


def spinal_sets(context: Context, session: int) -> float:
    """Working sets of a session weighted by the spinal load of their exercise."""
    return sum(
        item.entry.sets * catalogue.profile(item.exercise.id).spinal_load
        for item in context.of_session(session)
    )


@criterion("spinal-load", "heavy spinal loading does not pile up", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a session, and one for two days in a row where that happens."""
    back_pain = context.intake is not None and context.intake.screening.back_pain
    scale = 0.5 if back_pain else 1.0
    sums = [spinal_sets(context, number) for number in range(len(context.plan.sessions))]
    for number, figure in enumerate(sums):
        yield _remark(
            context, number, context.session_subject(number), figure, scale * MOST_SESSION
        )
    for number, figure in enumerate(sums):
        for other in range(number + 1, len(sums)):
            if context.day_number(other) - context.day_number(number) == 1:
                subject = f"{context.session_subject(number)} and {context.session_subject(other)}"
                both = figure + sums[other]
                yield _remark(context, other, subject, both, scale * MOST_TWO_DAYS)


def _remark(context: Context, number: int, subject: str, figure: float, most: float) -> Remark:
    verdict = verdict_of(figure, high=most, margin=0.2 * most)
    worst = max(
        context.of_session(number),
        key=lambda item: item.entry.sets * catalogue.profile(item.exercise.id).spinal_load,
    )
    mend = None if verdict == "holds" else Mend("swap exercise", worst.exercise.id)
    return Remark(
        "spinal-load",
        subject,
        verdict,
        round(figure, 1),
        "sets weighted by spinal load",
        None,
        most,
        EVIDENCE,
        Place(number),
        mend,
    )
