"""How near failure: what is asked as felt, and what was really left."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.exercises.model import Exercise
from setwright.plan.intake import Intake
from setwright.plan.limits import rir_floor
from setwright.rehearsal.strength import Z80
from setwright.training.done import DoneSet
from setwright.training.lifter import Honesty

# Calls on the exercise before the person's own bias is used, and before it is spoken of (our
# choice): the estimate starts at what holds for people and moves by as much as the calls say.
CALLS_TO_USE = 3
ENOUGH_CALLS = 6
# Most a felt RIR is moved for honesty. Meta-analysis: people stop about one repetition early
# (rir-accuracy-meta-2022), so less is allowed towards stopping even earlier.
MOST_FURTHER = 2.0
MOST_EARLIER = 1.0
# Lower quartile over lower end of the 80 % interval, both from the middle of a normal law.
QUARTER = 0.6745 / Z80
# Bias from which it is worth a word, repetitions: calls come in whole numbers.
SPOKEN_BIAS = 0.5
EVIDENCE = ("rir-accuracy-meta-2022", "rir-accuracy-squat-70-percent-2021")


@dataclass(frozen=True, slots=True)
class Asked:
    """Effort asked of a set.

    Attributes:
        real: repetitions that should really be left.
        felt: repetitions in reserve to stop at, as this person feels them.
    """

    real: float
    felt: float


def known_bias(honest: Honesty) -> float:
    """Real less felt RIR that is acted on; 0 before enough calls, and within bounds.

    To ask for more effort than felt it must be there with three chances in four; to ask for less
    the estimate itself is enough.
    """
    if honest.calls < CALLS_TO_USE:
        return 0.0
    sure = honest.bias - QUARTER * (honest.bias - honest.low)
    further = min(honest.bias, max(sure, 0.0))
    return min(max(further, -MOST_EARLIER), MOST_FURTHER)


def may_be_said(honest: Honesty) -> bool:
    """Whether there are calls enough, and an interval clear of none, to speak of a bias."""
    return honest.calls >= ENOUGH_CALLS and (honest.low > 0 or honest.high < 0)


def asked(planned: float, bias: float, floor: float) -> Asked:
    """The felt RIR that leaves what the plan wants.

    A person who stops earlier than felt is asked to go further, never below the floor of the
    person's answers and never below 0; one who goes further than felt is asked to stop earlier.

    Args:
        planned: RIR of the plan and the block.
        bias: real less felt, from ``known_bias``.
        floor: least RIR allowed (``plan.limits.rir_floor``).
    """
    real = max(planned, floor)
    felt = max(real - bias, floor, 0.0)
    # People call whole repetitions; halves go to the easier side.
    return Asked(real, float(int(felt + 0.5)))


def floor_of(intake: Intake | None, exercise: Exercise) -> float:
    """Least RIR the person may go to on an exercise."""
    return rir_floor(intake, exercise).rir


def really_left(done: DoneSet, bias: float) -> float | None:
    """Repetitions really left after a set; None when the set says nothing about it."""
    if done.to_failure:
        return 0.0
    return None if done.rir is None else max(done.rir + bias, 0.0)


def honesty_words(bias: float) -> str:
    """What the asked RIR was corrected for."""
    count = f"about {abs(bias):.1f} repetitions"
    if bias > 0:
        return (
            f"Sets tend to stop {count} earlier than felt; the RIR asked takes that into account."
        )
    return f"Sets tend to go {count} further than felt; the RIR asked takes that into account."
