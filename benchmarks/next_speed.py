"""How long the next step takes: the policy an exercise, and the next set of a session under way."""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.plan.intake import Intake
from setwright.plan.week import Entry
from setwright.training.block import Block
from setwright.training.done import DoneSet
from setwright.training.ladder import ladder
from setwright.training.lifter import Lifter
from setwright.training.next_set import next_set
from setwright.training.past import Past
from setwright.training.policy import plan_sets

NAMES = ("back-squat", "barbell-bench-press", "lat-pulldown", "leg-extension", "cable-curl")
WEEKS = 26
FIRST = 739500


def median_s(work: Callable[[], object], times: int) -> float:
    """Median wall time after one run to warm up, in seconds."""
    work()
    spent = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        spent.append(time.perf_counter() - start)
    return statistics.median(spent)


def main() -> None:
    """Print the figures."""
    intake = Intake.model_validate(
        {
            "setwright": "intake/1", "name": "Bench", "experience": "intermediate",
            "age_band": "18-39", "body_mass_kg": 80, "gym": "full gym",
            "screening": {"active_last_3_months": True},
            "days": [{"day": "monday", "minutes": 60}],
        }
    )  # fmt: skip
    gym = stock_of(intake.gym)
    lifter, past = Lifter.start("unstated", "intermediate"), Past()
    entries = tuple(
        Entry(exercise=name, sets=3, reps=(8, 12), rir=(2, 1), rest_s=(120, 180)) for name in NAMES
    )
    today: list[DoneSet] = []
    for week in range(WEEKS):
        today = []
        for place, name in enumerate(NAMES):
            steps = ladder(catalogue.exercise(name), gym)
            load = steps.at_most(40.0 + week) or 20.0
            for number in (1, 2, 3):
                done = DoneSet(
                    f"{week}-{name}-{number}", FIRST + 7 * week, 600.0 + 15 * place + 4 * number,
                    name, number, load, steps.system(load, 80.0), 10, 2.0, False, 150.0,
                )  # fmt: skip
                lifter.fold(done)
                past.add(done)
                today.append(done)
    day = FIRST + 7 * WEEKS
    block = Block(FIRST)
    session = median_s(lambda: plan_sets(lifter, entries, day, block, intake, gym, past), 200)
    print(f"policy: {session / len(NAMES) * 1e6:.0f} us an exercise (target 1000)")
    more = entries[-1].model_copy(update={"sets": 4})
    exercise = catalogue.exercise(NAMES[-1])
    one = median_s(lambda: next_set(lifter, more, today, exercise, gym, intake), 200)
    print(f"next set: {one * 1e3:.2f} ms")


if __name__ == "__main__":
    main()
