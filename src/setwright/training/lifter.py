"""One person's strength as the log shows it: folded in set by set, asked for at any time."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from math import exp, log, sqrt
from typing import Literal

from setwright.exercises import catalogue
from setwright.rehearsal.fatigue import Sex
from setwright.rehearsal.strength import Z80, OneRm, scale
from setwright.training.belief import FORM, GAIN, WEEK, Belief
from setwright.training.calls import USUAL_FELT, USUAL_LENGTH, call
from setwright.training.constants import CONSTANTS, Constants
from setwright.training.done import DoneSet
from setwright.training.folding import Effort, fold_set, take_in
from setwright.training.reading import PredictedReps as PredictedReps
from setwright.training.reading import predicted, read, sd
from setwright.training.scatter import Scatter
from setwright.training.seeds import Seed
from setwright.training.tiredness import Tiredness

# Weight of the newest call in what calls are like lately.
CALLS_SHARE = 0.1
# From so many calls on a set without a word is taken for one like them, give or take this more
# than they differ by, for silence may mean something (our choice).
CALLS_TO_GUESS = 3
GUESS_SD = 1.0
ANY = ""
# A reserve beyond this many means "many": each further one is a repetition of SD (our choice).
CLEAR_FELT = 4.0
Experience = Literal["beginner", "intermediate", "advanced"]


@dataclass(frozen=True, slots=True)
class Fold:
    """What a set said.

    Attributes:
        expected: repetitions expected before it.
        sd: their SD.
        got: repetitions done.
        z: how far off, in SD on the scale of strength; positive: stronger than expected.
        odd: too far off to be believed at once (wrong unit, slip of the pen).
    """

    expected: float
    sd: float
    got: float
    z: float
    odd: bool


@dataclass(frozen=True, slots=True)
class Trend:
    """Change of the 1RM, percent a week, with its 80 % interval."""

    percent_a_week: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class Honesty:
    """Real less felt repetitions in reserve.

    Attributes:
        bias: positive: stops earlier than felt.
        low: lower end of the 80 % interval.
        high: upper end.
        calls: sets of the exercise that said a reserve.
    """

    bias: float
    low: float
    high: float
    calls: int


@dataclass(frozen=True, slots=True)
class Calls:
    """Calls of the reserve of an exercise: how many, and what they are like lately.

    Attributes:
        count: of them.
        felt: reserve, mean.
        length: repetitions to failure of their sets, mean.
        variance: of the reserves felt.
    """

    count: int
    felt: float
    length: float
    variance: float = 0.0

    def and_one(self, felt: float, length: float) -> Calls:
        """With one call more."""
        count = self.count + 1
        share = max(1.0 / count, CALLS_SHARE)
        return Calls(
            count,
            self.felt + share * (felt - self.felt),
            self.length + share * (length - self.length),
            (1.0 - share) * (self.variance + share * (felt - self.felt) ** 2),
        )


class Lifter:
    """What is known of one person."""

    def __init__(self, sex: Sex, belief: Belief) -> None:
        """Use ``Lifter.start``."""
        self._sex: Sex = sex
        self._belief = belief
        self._tired = Tiredness(sex)
        self._scatter = Scatter(belief.constants)
        self._calls: dict[str, Calls] = {}
        self._streak: dict[str, float] = {}
        self._history: dict[str, list[tuple[int, float, float]]] = {}

    @classmethod
    def start(
        cls,
        sex: Sex,
        experience: Experience,
        seeds: Sequence[Seed] = (),
        constants: Constants = CONSTANTS,
    ) -> Lifter:
        """A person before the log.

        Args:
            sex: women tire less.
            experience: training status, for the gain to expect.
            seeds: sets remembered.
            constants: spreads, rates and priors.
        """
        lifter = cls(sex, Belief(experience, constants))
        for seed in seeds:
            lifter._know(seed.exercise, seed.system_kg)
            effort = Effort(seed.exercise, seed.system_kg, seed.rir or None)
            take_in(lifter._belief, effort, seed.reps)
        return lifter

    def copy(self) -> Lifter:
        """An independent copy."""
        other = Lifter(self._sex, self._belief.copy())
        other._tired = self._tired.copy()
        other._scatter = self._scatter.copy()
        other._calls = dict(self._calls)
        other._streak = dict(self._streak)
        other._history = {key: list(rows) for key, rows in self._history.items()}
        return other

    def _know(self, exercise: str, system_kg: float) -> None:
        if exercise in self._belief.own:
            return
        declared = catalogue.exercise(exercise)
        c = self._belief.constants
        a = scale(declared.rep_curve)
        level = log(system_kg) + log(1.0 + (c.first_reps - 1.0) / a)
        self._belief.add(exercise, declared.pattern, log(a), level, c.level_sd)

    def fold(self, done: DoneSet) -> Fold:
        """Learn from a set; sets come in the order of time.

        Raises:
            KeyError: an exercise the catalogue does not have.
        """
        self._know(done.exercise, done.system_kg)
        belief = self._belief
        belief.to_day(done.day)
        effort = self._effort(done, self._tired.before(done))
        streak = self._streak.get(done.exercise, 0.0)
        folded = fold_set(belief, self._scatter, effort, done.reps, streak)
        self._streak[done.exercise] = folded.streak
        before = folded.before
        if effort.felt is not None and not effort.silent and not folded.odd:
            self._hear(done.exercise, effort.felt, before.reps(before.u) + before.left)
        self._tired.after(done, before.left)
        self._note(done.exercise, done.day)
        expected = max(before.reps(before.u), 0.0)
        return Fold(expected, sd(before, folded.scale), done.reps, folded.z, folded.odd)

    def _effort(self, done: DoneSet, kept: float) -> Effort:
        felt, felt_sd = None if done.to_failure else done.rir, 0.0
        silent = done.rir is None and not done.to_failure
        if felt is not None:
            felt_sd = max(felt - CLEAR_FELT, 0.0)
        elif silent:
            heard = self._like(done.exercise)
            if heard is not None:
                felt, felt_sd = heard.felt, sqrt(heard.variance + GUESS_SD**2)
        return Effort(done.exercise, done.system_kg, felt, felt_sd, silent, kept)

    def _like(self, exercise: str) -> Calls | None:
        """Calls that a set without a word is likely to be like: its exercise's, or all."""
        for key in (exercise, ANY):
            heard = self._calls.get(key)
            if heard is not None and heard.count >= CALLS_TO_GUESS:
                return heard
        return None

    def _note(self, exercise: str, day: int) -> None:
        rows = self._history.setdefault(exercise, [])
        own = self._belief.own[exercise]
        state = self._belief.state
        mean = float(state.mean[own.level] + state.mean[FORM])
        _, variance = state.of((own.level, FORM), (1.0, 1.0))
        row = (day, mean, variance * self._scatter.scale(exercise))
        if rows and rows[-1][0] == day:
            rows[-1] = row
        else:
            rows.append(row)

    def one_rm(self, exercise: str, day: int) -> OneRm | None:
        """1RM of an ordinary fresh day, system load in kg; None before any set or seed."""
        belief = self._belief
        own = belief.own.get(exercise)
        if own is None:
            return None
        gap = belief.gap_weeks(day)
        c, form = belief.constants, belief.form_left(day)
        mean, variance = belief.state.of((own.level, own.gain, GAIN, FORM), (1.0, gap, gap, form))
        weeks = max(day - belief.day, 0) / WEEK if belief.day is not None else 0.0
        variance += c.level_walk**2 * weeks + c.form_sd**2 * (1.0 - form**2)
        return _one_rm(mean, variance * self._scatter.scale(exercise))

    def history(self, exercise: str) -> tuple[tuple[int, OneRm], ...]:
        """Day and 1RM as it was known at the end of that day."""
        return tuple((day, _one_rm(m, v)) for day, m, v in self._history.get(exercise, ()))

    def predict(
        self,
        exercise: str,
        system_kg: float,
        day: int,
        rir: float = 0.0,
        kept: float | None = None,
        rest_s: float | None = None,
    ) -> PredictedReps:
        """Repetitions that will be done when stopping at a felt reserve.

        Args:
            exercise: id.
            system_kg: load, above 0.
            day: today or later.
            rir: repetitions in reserve as they will be felt; 0 is failure.
            kept: share of fresh repetitions left by fatigue; None: from the sets of that day.
            rest_s: rest from the last set of that day; None for a usual one.

        Raises:
            KeyError: an exercise without any set or seed.
        """
        if kept is None:
            kept = self._tired.kept_at(exercise, day, rest_s)
        seen = read(self._belief, exercise, system_kg, day, rir or None, kept)
        half = self._scatter.half_width(not rir)
        return predicted(seen, self._scatter.scale(exercise), half)

    def load_for(
        self,
        exercise: str,
        reps: float,
        rir: float,
        day: int,
        kept: float | None = None,
        rest_s: float | None = None,
    ) -> float:
        """System load, kg, at which so many repetitions are expected at a felt reserve.

        Raises:
            KeyError: an exercise without any set or seed.
        """
        if kept is None:
            kept = self._tired.kept_at(exercise, day, rest_s)
        own = self._belief.own[exercise]
        load = exp(float(self._belief.state.mean[own.level]))
        for _ in range(3):
            seen = read(self._belief, exercise, load, day, rir or None, kept, chosen=False)
            load *= exp(seen.u - seen.shown(reps))
        return load

    def trend(self, exercise: str, day: int) -> Trend:
        """Gain that is under way.

        Raises:
            KeyError: an exercise without any set or seed.
        """
        own = self._belief.own[exercise]
        weeks = max(day - self._belief.day, 0) / 7.0 if self._belief.day is not None else 0.0
        fades = exp(-weeks / self._belief.constants.early_weeks)
        mean, variance = self._belief.state.of((GAIN, own.gain), (1.0, fades))
        half = Z80 * sqrt(variance)
        return Trend(*(100.0 * (exp(one) - 1.0) for one in (mean, mean - half, mean + half)))

    def honesty(self, exercise: str) -> Honesty:
        """How far felt reserves of an exercise are from real ones.

        Raises:
            KeyError: an exercise without any set or seed.
        """
        heard = self._calls.get(exercise, Calls(0, USUAL_FELT, USUAL_LENGTH))
        told = call(self._belief, exercise, heard.felt, heard.length)
        _, variance = self._belief.state.of(told.index, told.weights)
        bias, half = told.left - heard.felt, Z80 * sqrt(variance)
        return Honesty(bias, bias - half, bias + half, heard.count)

    def _hear(self, exercise: str, felt: float, length: float) -> None:
        """Keep what calls of an exercise are like: how many, of which reserve, how long the set."""
        for key in (exercise, ANY):
            self._calls[key] = self._calls.get(key, Calls(0, felt, length)).and_one(felt, length)


def fit(
    done: Iterable[DoneSet], sex: Sex, experience: Experience, seeds: Sequence[Seed] = ()
) -> Lifter:
    """A person with a whole log, sorted by time here."""
    lifter = Lifter.start(sex, experience, seeds)
    for one in sorted(done, key=lambda one: (one.day, one.minute)):
        lifter.fold(one)
    return lifter


def _one_rm(mean: float, variance: float) -> OneRm:
    half = Z80 * sqrt(variance)
    return OneRm(exp(mean), exp(mean - half), exp(mean + half), exp(mean) * sqrt(variance))
