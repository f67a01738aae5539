"""Now and then a last set to failure, where that is safe: it shows how honest the calls are.

Without one, a person who always stops early looks like a weaker one: honesty of RIR is learned
from sets taken to failure and from what they say of the sets before.
"""

from __future__ import annotations

from setwright.exercises.model import Exercise
from setwright.plan.week import Entry
from setwright.training.block import Place
from setwright.training.past import Outing
from setwright.training.trouble import NONE, Trouble

# Days between two such sets of an exercise (our choice).
CHECK_DAYS = 14
# Asked only where the plan's last set is nearly there (our choice).
MOST_PLANNED_RIR = 1.0
# Repetitions allowed above the band: the set must be able to end by itself.
MOST_OVER_TOP = 10
EVIDENCE = ("failure-where-safe", "rir-accuracy-meta-2022")
WORDS = (
    "Last set: as many as possible in good form; it shows how well the repetitions left are felt."
)


def due(
    exercise: Exercise,
    entry: Entry,
    floor: float,
    place: Place,
    outings: tuple[Outing, ...],
    trouble: Trouble,
    coming_back: bool,
    day: int,
) -> bool:
    """Whether the last set of an exercise should go to failure.

    Only on machines, cables and isolations (failure-where-safe), only where no answer of the
    person sets a floor, in ordinary weeks, without pain, and when the last one is some time ago.
    """
    safe = exercise.resistance in ("machine", "cable") or exercise.kind == "isolation"
    if exercise.pins_lifter or not safe or floor > 0 or entry.rir[1] > MOST_PLANNED_RIR:
        return False
    if place.kind != "build" or coming_back or trouble != NONE or not outings:
        return False
    known = [
        one.day for one in outings if any(done.to_failure or done.rir == 0 for done in one.sets)
    ]
    return not known or day - known[-1] >= CHECK_DAYS
