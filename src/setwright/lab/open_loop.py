"""Open loop: lifters train by their own habit; the estimate and the baselines foretell each set."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.lab.attempt import Told, attempt
from setwright.lab.baselines import BASELINES, LogBook
from setwright.lab.body import Body
from setwright.lab.coaches import steps
from setwright.lab.fate import Fate, draw_fate, session_of
from setwright.lab.habit import RESTS_S, Habit
from setwright.lab.movements import MOVEMENTS, SETS
from setwright.lab.slips import as_logged
from setwright.lab.traits import draw_traits
from setwright.training.done import DoneSet
from setwright.training.lifter import Lifter

Floats = NDArray[np.float64]
FIRST_DAY = 739_000
"""Ordinal of the first day, a Monday in 2024; nothing depends on it."""

START_MINUTE = 1080.0
FROM_SET = 4
"""Sets of a movement are judged from the fourth on, as on the real logs."""

BIAS_DAYS = 42
CHANGE_S = 180.0
WORK_S = 35.0


@dataclass(frozen=True)
class OpenRun:
    """One lifter's run.

    Attributes:
        errors: got less foretold repetitions, shape (N, 1 + baselines); the estimate first.
        inside: whether the 80 % interval held the repetitions, shape (N,).
        inside_whole: the same with its ends rounded to whole repetitions, shape (N,).
        week: of each judged set, from 0, shape (N,).
        width: of each interval, shape (N,).
        bias_real: mean real less felt reserve in weeks 5 and 6, or nan.
        bias_told: the estimate's, over the same exercises, at the end of week 6, or nan.
        bias_of: (real, told) by exercise.
        slips: sets logged wrongly.
        odd_slips: of these with a wrong load, repetitions or exercise, those the estimate doubted.
        doubted: right sets that the estimate doubted.
        sets: all of them.
    """

    errors: Floats
    inside: NDArray[np.bool_]
    inside_whole: NDArray[np.bool_]
    week: NDArray[np.intp]
    width: Floats
    bias_real: float
    bias_told: float
    bias_of: dict[str, tuple[float, float]]
    slips: int
    odd_slips: int
    doubted: int
    sets: int


class _Ledger:
    """Collects what a run shows."""

    def __init__(self) -> None:
        self.rows: list[tuple[float, ...]] = []
        self.inside: list[bool] = []
        self.whole: list[bool] = []
        self.week: list[int] = []
        self.width: list[float] = []
        self.felt: dict[str, list[float]] = {}
        self.bias_of: dict[str, tuple[float, float]] = {}
        self.slips = self.odd_slips = self.doubted = self.sets = 0


def run_open(seed: np.random.SeedSequence, weeks: int) -> OpenRun:
    """Live one lifter through so many weeks.

    Args:
        seed: of this lifter alone.
        weeks: 1 or more; the bias of calls is judged from 6 on.
    """
    rng = np.random.default_rng(seed)
    traits = draw_traits(rng)
    fate = draw_fate(rng, weeks)
    habit = Habit(bool(rng.random() < 0.5), float(rng.uniform(0.0, 0.25)))
    body = Body(traits)
    lifter = Lifter.start(traits.sex, traits.experience)
    book = LogBook()
    ledger = _Ledger()
    lived = 0
    for session, day in enumerate(fate.days.tolist()):
        while lived < day:
            body.sleep()
            lived += 1
            if lived == BIAS_DAYS:
                _judge_bias(lifter, ledger)
        if fate.missed[session]:
            continue
        body.wake(float(fate.shape[day] + traits.day_sd * fate.day[day]))
        _train(body, fate, session, day, habit, lifter, book, ledger)
    if lived < BIAS_DAYS <= 7 * weeks:
        _judge_bias(lifter, ledger)
    pairs = np.array(list(ledger.bias_of.values())).reshape(-1, 2)
    real, told = pairs.mean(axis=0).tolist() if len(pairs) else (float("nan"), float("nan"))
    return OpenRun(
        errors=np.array(ledger.rows).reshape(-1, 1 + len(BASELINES)),
        inside=np.array(ledger.inside, dtype=bool),
        inside_whole=np.array(ledger.whole, dtype=bool),
        week=np.array(ledger.week, dtype=np.intp),
        width=np.array(ledger.width),
        bias_real=real,
        bias_told=told,
        bias_of=ledger.bias_of,
        slips=ledger.slips,
        odd_slips=ledger.odd_slips,
        doubted=ledger.doubted,
        sets=ledger.sets,
    )


def _judge_bias(lifter: Lifter, ledger: _Ledger) -> None:
    for exercise, felt in ledger.felt.items():
        if felt:
            real = sum(felt) / len(felt)
            ledger.bias_of[exercise] = (real, lifter.honesty(exercise).bias)


def _train(
    body: Body,
    fate: Fate,
    session: int,
    day: int,
    habit: Habit,
    lifter: Lifter,
    book: LogBook,
    ledger: _Ledger,
) -> None:
    minute = START_MINUTE
    names = session_of(session)
    for place, exercise in enumerate(names):
        luck = fate.luck[session, place]
        load, light = habit.begin(body, exercise, fate.guess[exercise], float(luck[0, 5]))
        system = steps(exercise).system(load, body.traits.mass_kg)
        usual = RESTS_S[MOVEMENTS[exercise].group]
        first = 0
        for number in range(SETS):
            rest = CHANGE_S if number == 0 else usual * (0.75 + 0.5 * float(luck[number, 4]))
            if place or number:
                body.rest(rest)
                minute += (rest + WORK_S) / 60.0
            told = habit.effort(day // 7, number, float(luck[number, 5]))
            asked = _Asked(exercise, number + 1, day, load, system, told, rest)
            judged = _foretell(lifter, book, asked)
            out = attempt(body, fate, (session, place, number), exercise, Told(load, told))
            reps = out.effort.reps
            if number == 0:
                first = reps
            if judged is not None:
                guess, low, high = judged
                ledger.rows.append(tuple(reps - one for one in guess))
                ledger.inside.append(low <= reps <= high)
                ledger.whole.append(round(low) <= reps <= round(high))
                ledger.width.append(high - low)
                ledger.week.append(day // 7)
            if BIAS_DAYS - 14 <= day < BIAS_DAYS and not out.failed:
                ledger.felt.setdefault(exercise, []).append(out.error)
            done = DoneSet(
                id=f"{session}-{place}-{number}",
                day=FIRST_DAY + day,
                minute=minute,
                exercise=exercise,
                number=number + 1,
                load_kg=load,
                system_kg=system,
                reps=float(reps),
                rir=out.called,
                to_failure=out.failed,
                rest_s=rest if place + number and luck[number, 0] < 0.8 else None,
            )
            neighbour = names[(place + 1) % len(names)]
            chances = float(luck[number, 3]), float(luck[number, 4])
            _log(lifter, book, ledger, as_logged(done, neighbour, *chances), told)
        habit.end(exercise, light, load, first)


@dataclass(frozen=True, slots=True)
class _Asked:
    """A set to foretell: the lifter's day from 0, load as lifted, and what the muscles move."""

    exercise: str
    number: int
    day: int
    load_kg: float
    system_kg: float
    rir: float
    rest_s: float


def _foretell(
    lifter: Lifter, book: LogBook, asked: _Asked
) -> tuple[tuple[float, ...], float, float] | None:
    date = FIRST_DAY + asked.day
    plain = book.predict(asked.exercise, asked.number, date, asked.load_kg, asked.rir)
    if plain is None or book.sets_of(asked.exercise) < FROM_SET - 1:
        return None
    seen = lifter.predict(asked.exercise, asked.system_kg, date, asked.rir, rest_s=asked.rest_s)
    return (seen.median, *plain), seen.low, seen.high


def _log(
    lifter: Lifter,
    book: LogBook,
    ledger: _Ledger,
    logged: tuple[tuple[DoneSet, ...], bool],
    told: float,
) -> None:
    lines, wrong = logged
    ledger.sets += 1
    ledger.slips += wrong
    for line in lines:
        fold = lifter.fold(line)
        book.add(line, told)
        if fold.odd and wrong and len(lines) == 1:
            ledger.odd_slips += 1
        ledger.doubted += fold.odd and not wrong
