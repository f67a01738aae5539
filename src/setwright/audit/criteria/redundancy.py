"""What the week would lose if an exercise went: measured, not guessed."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of
from setwright.response.growth import loss_without

# An exercise should be worth at least this part of its even share of the week's growth.
LEAST_OF_EVEN_SHARE = 0.25
EVIDENCE = ("practice-redundancy", "exercise-variation-review-2022")


@criterion("redundancy", "every exercise adds growth that the rest does not bring", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark an exercise: growth the week loses without it, as a part of an even share."""
    losses = loss_without(context.doses, context.person, len(context.plan.sessions))
    total = float(context.response.growth.sum())
    even = total / max(len(context.placed), 1)
    for item, lost in zip(context.placed, losses, strict=True):
        figure = float(lost.sum()) / max(even, 1e-9)
        verdict = verdict_of(figure, low=LEAST_OF_EVEN_SHARE, margin=0.2)
        mend = None if verdict == "holds" else Mend("drop exercise", item.exercise.id)
        yield Remark(
            "redundancy",
            context.subject(item),
            verdict,
            round(figure, 2),
            "of an even share of the week's growth",
            LEAST_OF_EVEN_SHARE,
            None,
            EVIDENCE,
            Place(item.session, item.position),
            mend,
            (("growth_lost", round(float(lost.sum()), 3)),),
        )
