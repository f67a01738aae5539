"""One exercise on one day: everything its next load is decided from."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises.model import Exercise
from setwright.plan.week import Entry
from setwright.training.after_break import Return
from setwright.training.block import Place
from setwright.training.effort import Asked
from setwright.training.ladder import Ladder
from setwright.training.lifter import Lifter, PredictedReps
from setwright.training.past import Outing
from setwright.training.trouble import Trouble


@dataclass(frozen=True, slots=True)
class Case:
    """What is known before an exercise is done.

    Attributes:
        lifter: the estimate of strength.
        exercise: what is lifted.
        entry: as planned, with the sets of today.
        day: proleptic ordinal.
        body_mass_kg: 0 when it is not known.
        ladder: loads of the gym.
        asked: effort of each set.
        kept: share of the fresh repetitions left at the start of each set.
        place: in the block.
        last: the last outing, or None.
        steady: the last outing outside a lighter week, or None.
        trouble: reported the last time.
        back: the restart after a break under way, or None.
        bias: real less felt RIR that is acted on; 0 before enough calls.
        bias_spoken: it is sure enough to be spoken of.
        check: the last set goes to failure, to check the calls.
        most_rise: share by which a load may rise at once.
        failed_kg: load at which no repetition could be done the last time, or None.
    """

    lifter: Lifter
    exercise: Exercise
    entry: Entry
    day: int
    body_mass_kg: float
    ladder: Ladder
    asked: tuple[Asked, ...]
    kept: tuple[float, ...]
    place: Place
    last: Outing | None
    steady: Outing | None
    trouble: Trouble
    back: Return | None
    bias: float
    bias_spoken: bool
    check: bool
    most_rise: float
    failed_kg: float | None = None

    def known(self) -> bool:
        """Whether strength on the exercise is known at all."""
        return self.lifter.one_rm(self.exercise.id, self.day) is not None

    def expected(self, load_kg: float, number: int = 1) -> PredictedReps:
        """Repetitions of a set at a load, stopping at the effort asked."""
        return self.lifter.predict(
            self.exercise.id,
            self.ladder.system(load_kg, self.body_mass_kg),
            self.day,
            self.asked[number - 1].felt,
            self.kept[number - 1],
        )

    def fitting(self, reps: float) -> float:
        """Load as lifted, any figure, that leaves the effort asked after so many repetitions."""
        system = self.lifter.load_for(
            self.exercise.id, reps, self.asked[0].felt, self.day, self.kept[0]
        )
        return self.ladder.external(system, self.body_mass_kg)

    def makeable(self, load_kg: float) -> float:
        """The gym's load not above a figure, or the lightest there is."""
        found = self.ladder.at_most(load_kg)
        return self.ladder.lightest() if found is None else found


def whole(reps: float) -> int:
    """Repetitions to aim at: the nearest whole number, halves going down."""
    return -int(-(reps - 0.5) // 1)
