"""The person's week as limits of the model."""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from setwright.anatomy.atlas import parts, resolve
from setwright.audit.criteria.coverage import REACHED
from setwright.audit.criteria.frequency import TWICE
from setwright.audit.criteria.merit import merit_of
from setwright.audit.criteria.session_volume import PLATEAU
from setwright.audit.criteria.spine import MOST_SESSION, MOST_TWO_DAYS
from setwright.audit.criteria.volume_jump import USUAL_SETS
from setwright.audit.muscles import parts_of_muscles
from setwright.design.keeping import NOTHING_KEPT, Kept, kept_of
from setwright.design.options import (
    LEAST_SETS,
    MOST_SETS,
    Option,
    allowed,
    option,
    option_of,
    shortlist,
)
from setwright.exercises import catalogue
from setwright.plan.intake import DAYS, Focus, Intake
from setwright.plan.limits import volume_share
from setwright.plan.week import Plan
from setwright.response.growth import Person, person_of
from setwright.response.targets import bands, priority_weights

LEAST_MERIT = 0.55
ALIKE = 0.95
MOST_EXERCISES = 10
# Sets of a part on two days in a row together: then the lighter day holds in the audit.
TWO_DAYS_MOST = 8.0
# A part that earlier work has filled may still get this much in passing.
BY_THE_WAY = 2.0
# What a focus trains: words the atlas resolves.
FOCUS_WORDS: dict[Focus, tuple[str, ...]] = {
    "upper": ("upper body", "forearms"),
    "lower": ("lower body", "trunk"),
    "push": ("chest", "triceps", "front delts", "side delts"),
    "pull": ("back", "upper back", "biceps", "rear delts", "forearms", "brachialis"),
    "legs": ("lower body",),
    "chest": ("chest", "front delts"),
    "back": ("back", "upper back", "rear delts"),
    "shoulders": ("shoulders",),
    "arms": ("arms",),
    "trunk": ("trunk", "abs"),
}
SPLITS: dict[str, tuple[Focus, ...]] = {
    "full body": ("full body",),
    "upper/lower": ("upper", "lower"),
    "push/pull/legs": ("push", "pull", "legs"),
    "body part": ("chest", "back", "legs", "shoulders", "arms"),
}
# At least this much of an exercise's work must fall on what the day is for.
IN_FOCUS = 0.5


@dataclass(frozen=True)
class Problem:
    """Limits of a week; O options, D days, P parts; `done` is what earlier work gave each part.

    What is kept from another plan is an option of its own, fixed on its day; it comes before every
    limit, and the rest of the week keeps what is left of them.
    """

    options: tuple[Option, ...]
    minutes: NDArray[np.float64]
    fits_day: NDArray[np.bool_]
    next_day: tuple[tuple[int, int], ...]
    alike: tuple[tuple[int, ...], ...]
    alike_days: tuple[tuple[int, int], ...]
    weights: NDArray[np.float64]
    least: NDArray[np.float64]
    most: NDArray[np.float64]
    times: NDArray[np.int64]
    urgency: NDArray[np.float64]
    person: Person
    spine_session: float
    spine_two_days: float
    seed: int
    session_most: float = PLATEAU
    two_days_most: float = TWO_DAYS_MOST
    most_days_an_exercise: int = 2
    most_exercises: int = MOST_EXERCISES
    least_sets: int = LEAST_SETS
    most_sets: int = MOST_SETS
    weight_scale: int = 1000
    done: NDArray[np.float64] = field(default_factory=lambda: np.zeros(len(parts())))
    kept: Kept = NOTHING_KEPT

    @cached_property
    def fixed(self) -> NDArray[np.int64]:
        """Sets that are kept, shape (O, D)."""
        sets = np.zeros((len(self.options), len(self.minutes)), dtype=np.int64)
        for row, (day, entry) in enumerate(self.kept.entries, self._free):
            sets[row, day] = entry.sets
        return sets

    @cached_property
    def kept_days(self) -> NDArray[np.int64]:
        """How often each free option's exercise is kept, zero for what is kept, shape (O,)."""
        held = [entry.exercise for _, entry in self.kept.entries]
        own = [held.count(one.exercise.id) for one in self.options[: self._free]]
        return np.array([*own, *(0 for _ in held)], dtype=np.int64)

    @property
    def _free(self) -> int:
        return len(self.options) - len(self.kept.entries)


def focuses(intake: Intake) -> tuple[Focus | None, ...]:
    """What each day is for: the coach's word, else the split's, else open."""
    cycle = SPLITS.get(intake.split)
    return tuple(
        day.focus or (cycle[number % len(cycle)] if cycle else None)
        for number, day in enumerate(ordered_days(intake))
    )


def ordered_days(intake: Intake) -> tuple:  # type: ignore[type-arg]
    """The training days in the order of the week."""
    return tuple(sorted(intake.days, key=lambda day: DAYS.index(day.day)))


def _fits(options: tuple[Option, ...], wanted: tuple[Focus | None, ...]) -> NDArray[np.bool_]:
    fits = np.ones((len(options), len(wanted)), dtype=bool)
    order = [part.id for part in parts()]
    for d, focus in enumerate(wanted):
        words = FOCUS_WORDS.get(focus) if focus else None
        if words is None:
            continue
        ids = {ident for word in words for ident in resolve(word)}
        inside = np.array([ident in ids for ident in order])
        for o, one in enumerate(options):
            work = one.share * (one.share >= 0.3)
            fits[o, d] = work[inside].sum() >= IN_FOCUS * max(work.sum(), 1e-9)
    return fits


def _alike(options: tuple[Option, ...]) -> tuple[tuple[int, ...], ...]:
    """Groups of options so alike that a session needs only one: by the leader's likeness."""
    if not options:
        return ()
    shares = np.array([one.share for one in options])
    unit = shares / np.maximum(np.linalg.norm(shares, axis=1, keepdims=True), 1e-9)
    cosine = np.round(unit @ unit.T, 12)
    groups = {tuple(np.flatnonzero(row > ALIKE).tolist()) for row in cosine}
    return tuple(sorted(group for group in groups if len(group) > 1))


def _next_days(intake: Intake) -> tuple[tuple[int, int], ...]:
    numbers = [DAYS.index(day.day) for day in ordered_days(intake)]
    found = [(i, i + 1) for i in range(len(numbers) - 1) if numbers[i + 1] - numbers[i] == 1]
    if len(numbers) > 2 and (numbers[0] - numbers[-1]) % 7 == 1:
        found.append((len(numbers) - 1, 0))
    return tuple(found)


def _alike_days(intake: Intake) -> tuple[tuple[int, int], ...]:
    """Days that could change places without any difference: one order of them is searched."""
    days, wanted = ordered_days(intake), focuses(intake)
    if len(days) != 2 or _next_days(intake):
        return ()
    same = days[0].minutes == days[1].minutes and wanted[0] == wanted[1]
    return ((0, 1),) if same else ()


def problem_of(intake: Intake, keep: Plan | None = None) -> Problem:
    """The person's limits, options and wants.

    Args:
        intake: aims and limits.
        keep: exercises that stay as they stand, on their days.

    Raises:
        DocumentError: when something is kept on a day that is not trained.
    """
    weights = priority_weights(intake)
    wanted = bands(intake)
    every = tuple(option(exercise, intake) for exercise in allowed(intake))
    worthy = tuple(one for one in every if merit_of(one.exercise.id) >= LEAST_MERIT)
    days = ordered_days(intake)
    kept = kept_of(keep, [day.day for day in days]) if keep else NOTHING_KEPT
    free = shortlist(worthy or every, weights, _least(intake) > 0)
    options = (*free, *(option_of(entry, intake) for _, entry in kept.entries))
    share, _ = volume_share(intake)
    tops = [min(wanted[p.id].most, USUAL_SETS * share if share < 1 else 99.0) for p in parts()]
    back_pain = 0.5 if intake.screening.back_pain else 1.0
    order = [wanted[part.id] for part in parts()]
    sessions = len(days)
    done = earlier(intake)
    return Problem(
        options=options,
        minutes=np.array([float(day.minutes) for day in days]),
        fits_day=np.vstack([_fits(free, focuses(intake)), kept.cells(len(days))]),
        next_day=_next_days(intake),
        alike=_alike(options),
        alike_days=() if kept.entries else _alike_days(intake),
        weights=weights,
        least=np.maximum(_least(intake) - done, 0.0),
        most=np.maximum(np.array(tops) - done, BY_THE_WAY),
        done=done,
        times=np.array(
            [
                min(1 if band.aim == "maintain" else TWICE, sessions) if band.least else 0
                for band in order
            ]
        ),
        urgency=np.array([2.0 if band.aim == "emphasise" else 1.0 for band in order]),
        person=person_of(intake),
        spine_session=MOST_SESSION * back_pain,
        spine_two_days=MOST_TWO_DAYS * back_pain,
        seed=intake.seed,
        kept=kept,
    )


def _least(intake: Intake) -> NDArray[np.float64]:
    """Fractional sets a week each part is meant to reach, shape (P,).

    The audit judges a muscle by its most trained part and every other part by the share that
    counts as reached: the largest part of a muscle is asked for the whole, the others for that.
    """
    wanted = bands(intake)
    least = np.array([wanted[part.id].least for part in parts()])
    asked = (REACHED + 0.1) * least
    for columns in parts_of_muscles().values():
        largest = columns[np.argmax(least[columns])]
        asked[largest] = least[largest]
    return asked


def earlier(intake: Intake) -> NDArray[np.float64]:
    """Fractional sets each part has had already this week, shape (P,)."""
    done = np.zeros(len(parts()))
    order = [part.id for part in parts()]
    for work in intake.earlier_this_week:
        for name, count in work.sets.items():
            if name in catalogue.ids():
                done += count * catalogue.shares()[catalogue.row(name)]
            else:
                ids = set(resolve(name))
                done += count * np.array([float(ident in ids) for ident in order])
    return done
