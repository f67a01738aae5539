"""One set: what the lifter does when told a load, a reserve and a most, and what is said of it."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.lab.body import Body, Effort
from setwright.lab.calls import caller, written
from setwright.lab.fate import Fate

SET_SD = 0.04
DAY_OWN_SCALE = 0.7


@dataclass(frozen=True, slots=True)
class Told:
    """A set as it was written for the lifter.

    Attributes:
        load_kg: as lifted.
        rir: reserve to stop at, as felt.
        most: repetitions to stop at even when more is left; None for none.
        at_least: repetitions to reach even when the felt reserve is smaller, as far as they can
            be done; None: the felt reserve alone decides.
    """

    load_kg: float
    rir: float
    most: int | None = None
    at_least: int | None = None


@dataclass(frozen=True, slots=True)
class Outcome:
    """A set as it was done.

    Attributes:
        effort: what it really was.
        failed: a further repetition was tried in vain.
        called: reserve as written down, or None.
        error: real less felt reserve, apart from the noise of this one set.
    """

    effort: Effort
    failed: bool
    called: float | None
    error: float


@dataclass(frozen=True, slots=True)
class Luck:
    """Chance of one set.

    Attributes:
        shape: log strength of this exercise today, beyond the day's.
        set_noise: unit normal, of the repetitions.
        call_noise: unit normal, of the feeling.
        drift: of the calls this week.
        uniform: whether failure is sought to the end, liking of numbers, silence.
    """

    shape: float
    set_noise: float
    call_noise: float
    drift: float
    uniform: tuple[float, float, float]


def attempt(body: Body, fate: Fate, at: tuple[int, int, int], exercise: str, told: Told) -> Outcome:
    """Let a lifter do a set with the chances fate has for it.

    Args:
        body: changed in place.
        fate: of the lifter.
        at: session, place of the exercise in it, and place of the set, all from 0.
        exercise: id.
        told: what was written.
    """
    session, place, _ = at
    uniform = fate.luck[at]
    luck = Luck(
        DAY_OWN_SCALE * body.traits.day_sd * float(fate.day_own[session, place]),
        float(fate.set_noise[at]),
        float(fate.call_noise[at]),
        float(fate.drift[int(fate.days[session]) // 7]),
        (float(uniform[0]), float(uniform[1]), float(uniform[2])),
    )
    return do_set(body, exercise, told, luck)


def do_set(body: Body, exercise: str, told: Told, luck: Luck) -> Outcome:
    """Let a lifter do a set; the body is changed in place."""
    fraction = body.fraction(exercise, told.load_kg, luck.shape)
    can = body.can_do(exercise, fraction, SET_SD * luck.set_noise)
    possible = int(can + 0.5)
    calls = caller(body.traits, exercise, can, luck.drift, luck.call_noise)
    to_the_end = told.rir < 0.5 and luck.uniform[0] < 0.7
    reps = 0
    while reps < possible and (told.most is None or reps < told.most):
        enough = not to_the_end and reps >= 1 and calls.felt(can - reps) < told.rir + 0.5
        if enough and (told.at_least is None or reps >= told.at_least):
            break
        reps += 1
    wanted_more = told.most is None or reps < told.most
    still = to_the_end or calls.felt(can - reps) >= told.rir + 0.5
    short = told.at_least is not None and reps < told.at_least
    failed = reps == possible and ((wanted_more and still) or short)
    effort = Effort(reps, possible, can, fraction)
    body.work(exercise, effort)
    left = max(can - reps, 0.0)
    called: float | None = 0.0 if failed else written(calls.felt(left), told.rir, luck.uniform[1])
    if not failed and luck.uniform[2] > body.traits.says:
        called = None
    return Outcome(effort, failed, called, calls.error(left))
