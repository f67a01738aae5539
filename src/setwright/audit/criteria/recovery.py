"""A muscle worked hard rests before it is worked hard again."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.gaps import whole_sets
from setwright.audit.muscles import muscle_name, parts_of_muscles, session_sets
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.audit.verdict import verdict_of

# Hard sets of a muscle on the lighter of two days in a row: about four were well borne by the
# highly trained on four days running; five and more failure sets cost repetitions a day later.
MOST_BOTH_DAYS = 4.0
EVIDENCE = (
    "recovery-lower-body-24-48-72h-trained",
    "recovery-four-consecutive-days-trained",
    "recovery-reps-single-vs-multi-joint-24-48h-2015",
)


@criterion("recovery", "a muscle worked hard is not worked hard again the next day", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One remark a muscle trained on days in a row: the lighter day's fractional sets."""
    order = sorted(range(len(context.plan.sessions)), key=context.day_number)
    for muscle in parts_of_muscles():
        sets = session_sets(context, muscle)
        worst: tuple[float, int] | None = None
        for early, late in zip(order, [*order[1:], order[0]], strict=True):
            apart = (context.day_number(late) - context.day_number(early)) % 7
            if apart == 1:
                both = float(min(sets[early], sets[late]))
                if both > 0 and (worst is None or both > worst[0]):
                    worst = (both, late)
        if worst is None:
            continue
        figure, late = round(worst[0], 1), worst[1]
        verdict = verdict_of(figure, high=MOST_BOTH_DAYS, margin=2.0)
        mend = None
        if verdict != "holds":
            mend = Mend(
                "move day", muscle_name(muscle), whole_sets(figure - MOST_BOTH_DAYS), "sets"
            )
        yield Remark(
            "recovery",
            muscle_name(muscle),
            verdict,
            figure,
            "fractional sets on each of two days in a row",
            None,
            MOST_BOTH_DAYS,
            EVIDENCE,
            Place(late),
            mend,
        )
