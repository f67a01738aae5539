"""The kit is there, and it can make the load."""

from __future__ import annotations

from collections.abc import Iterator

from setwright.audit.context import Context
from setwright.audit.registry import criterion
from setwright.audit.remark import Mend, Place, Remark
from setwright.exercises.kit import stock_of

EVIDENCE = ("arith-smallest-step", "round-prescribe")
# A load off by no more than this can be made.
TOLERANCE_KG = 0.01


@criterion("kit", "the gym has what each exercise needs and can make its load", EVIDENCE)
def check(context: Context) -> Iterator[Remark]:
    """One miss an exercise whose kit is missing or whose load cannot be made."""
    if context.intake is None:
        return
    gym = stock_of(context.intake.gym, context.intake.kit)
    clean = True
    for item in context.placed:
        place = Place(item.session, item.position)
        if not gym.can_do(item.exercise):
            clean = False
            yield Remark(
                "kit",
                context.subject(item),
                "misses",
                None,
                "",
                None,
                None,
                EVIDENCE,
                place,
                Mend("swap exercise", item.exercise.id),
                (("because", "the kit is not there"),),
            )
            continue
        loads, wanted = gym.loads(item.exercise), item.entry.load_kg
        if loads is None or wanted is None:
            continue
        nearest = min(loads, key=lambda load: abs(load - wanted))
        if abs(nearest - wanted) > TOLERANCE_KG:
            clean = False
            yield Remark(
                "kit",
                context.subject(item),
                "close",
                wanted,
                "kg",
                None,
                None,
                EVIDENCE,
                place,
                Mend("change load", item.exercise.id, round(nearest - wanted, 3), "kg", nearest),
                (("because", "the load cannot be made with this kit"),),
            )
    if clean:
        yield Remark("kit", "week", "holds", None, "", None, None, EVIDENCE)
