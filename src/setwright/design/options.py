"""What the designer may choose from: each exercise with the prescription that suits it."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from setwright.audit.criteria.tempo import SHORTEST_S
from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.exercises.model import Exercise
from setwright.exercises.profile_cache import computed
from setwright.plan.intake import Intake
from setwright.plan.limits import avoidance, rir_floor
from setwright.plan.week import Entry, Plan, Session
from setwright.rehearsal.rehearse import rehearse
from setwright.response.curves import set_value

# Bands, effort and rest by kind: findings practice-compound-heavier, practice-effort-course,
# practice-rest. Exercises that tax the whole person rest longest.
COMPOUND_REPS, ISOLATION_REPS = (6, 10), (9, 14)
COMPOUND_RIR, ISOLATION_RIR = (2.0, 1.0), (1.0, 0.0)
HARD_REST_S, COMPOUND_REST_S, ISOLATION_REST_S = (150, 180), (120, 150), (90, 120)
HARD_FROM = 0.55
# Repetitions kept from set to set at these rests, for the model; the rehearsal settles it.
KEPT = 0.85
LEAST_SETS, MOST_SETS = 2, 4
UNLOADED = frozenset({"bodyweight", "band"})
# The body is load enough beside a gym's weights when a set near its limit would take no more than
# this many of it, which is some twenty repetitions (common practice).
HEAVY_BODY = 1.75
# Spinal load above which an exercise is left out for a person with back pain.
SPARES_BACK = 0.7
# The hardest skill each experience may be given.
SKILL = {"beginner": ("low", "moderate"), "intermediate": ("low", "moderate", "high"),
         "advanced": ("low", "moderate", "high")}  # fmt: skip


@dataclass(frozen=True)
class Option:
    """An exercise with its prescription, as the model sees it.

    Attributes:
        exercise: the exercise.
        entry: the prescription; its sets are set by the model.
        value: effective sets one set is worth to each part before crowding, shape (P,).
        share: fractional sets of one set, shape (P,).
        fixed_s: seconds that do not depend on the number of sets.
        per_set_s: seconds a set with its rest.
        spine: spinal load of a set, 0 to 1.
    """

    exercise: Exercise
    entry: Entry
    value: NDArray[np.float64]
    share: NDArray[np.float64]
    fixed_s: float
    per_set_s: float
    spine: float


def _band(exercise: Exercise, wanted: tuple[int, int]) -> tuple[int, int]:
    """The wanted repetitions moved into what suits the exercise."""
    low, high = exercise.rep_band
    width = wanted[1] - wanted[0]
    bottom = min(max(wanted[0], low), max(high - 2, low))
    return bottom, min(max(bottom + width, bottom), max(high, bottom))


def prescription(exercise: Exercise, intake: Intake) -> Entry:
    """Repetitions, effort and rest that suit the exercise and the person's limits."""
    compound = exercise.kind == "compound"
    first, last = COMPOUND_RIR if compound else ISOLATION_RIR
    floor = rir_floor(intake, exercise).rir
    last = max(last, floor)
    first = max(first, last)
    rest = ISOLATION_REST_S
    if compound:
        rest = HARD_REST_S if exercise.whole_body >= HARD_FROM else COMPOUND_REST_S
    return Entry(
        exercise=exercise.id,
        sets=LEAST_SETS,
        reps=_band(exercise, COMPOUND_REPS if compound else ISOLATION_REPS),
        rir=(first, last),
        rest_s=rest,
    )


def _seconds(entry: Entry, intake: Intake) -> tuple[float, float]:
    """Seconds that are fixed and seconds a set, read off the rehearsal's own clock."""
    totals = []
    for sets in (2, 3):
        session = Session(
            name="one exercise",
            day=intake.days[0].day,
            exercises=(entry.model_copy(update={"sets": sets}),),
        )
        plan = Plan(setwright="plan/1", title="clock", sessions=(session,))
        totals.append(rehearse(plan, intake).sessions[0].total_s)
    per_set = totals[1] - totals[0]
    return totals[0] - 2 * per_set, per_set


def option(exercise: Exercise, intake: Intake) -> Option:
    """The exercise, prescribed as suits it, with everything the model needs to know of it."""
    return option_of(prescription(exercise, intake), intake)


def option_of(entry: Entry, intake: Intake) -> Option:
    """A prescription with everything the model needs to know of it."""
    exercise = catalogue.exercise(entry.exercise)
    row = catalogue.row(exercise.id)
    share = catalogue.shares()[row]
    value = set_value(
        share,
        catalogue.stretch()[row],
        sum(entry.reps) / 2,
        sum(entry.rir) / 2,
        sum(entry.rest_s) / 2,
        exercise.kind == "compound",
        kept=KEPT,
    )
    fixed_s, per_set_s = _seconds(entry, intake)
    spine = catalogue.profile(exercise.id).spinal_load
    return Option(exercise, entry, value, share, fixed_s, per_set_s, spine)


def _burdens_back(exercise: Exercise) -> bool:
    return catalogue.profile(exercise.id).spinal_load > SPARES_BACK


def allowed(intake: Intake) -> tuple[Exercise, ...]:
    """Exercises the kit, the avoidances and the person's skill leave.

    What is not lifted in countable repetitions (carries, swings) is left to the coach, and light
    bodyweight or band work gives way where the gym can load the same pattern.
    """
    gym = stock_of(intake.gym, intake.kit)
    skills = SKILL[intake.experience]
    found = tuple(
        exercise
        for exercise in catalogue.exercises()
        if gym.can_do(exercise)
        and avoidance(intake, exercise) is None
        and exercise.skill in skills
        and exercise.rep_s >= SHORTEST_S
        and not (
            intake.screening.back_pain and catalogue.profile(exercise.id).spinal_load > SPARES_BACK
        )
    )
    loaded = {exercise.pattern for exercise in found if not _light(exercise)}
    return tuple(
        exercise
        for exercise in found
        if not _light(exercise) or exercise.pattern not in loaded or _heavy_enough(exercise)
    )


def _light(exercise: Exercise) -> bool:
    """Whether it is the body, or a load that grows with it, that makes the set hard."""
    return exercise.loading in UNLOADED or computed(exercise.id).unit == "bodyweights"


def _heavy_enough(exercise: Exercise) -> bool:
    found = computed(exercise.id)
    return found.unit == "bodyweights" and found.load <= HEAVY_BODY


# One option replaces another that is worth at most this much more to a part that counts, in
# effective sets a set, if it takes no more time and loads the spine no more.
REPLACES_WITHIN = 0.12
PER_PART = 3
TIME_WITHIN, SPINE_WITHIN = 1.1, 0.05


def shortlist(
    options: tuple[Option, ...], weights: NDArray[np.float64], asked: NDArray[np.bool_]
) -> tuple[Option, ...]:
    """The options worth searching: others do nearly the same in the same time.

    First each option that another replaces within the tolerances goes; then for each part that
    counts the few best by value a minute stay. The proven bound holds over this list.

    Args:
        options: what is allowed.
        weights: how much the growth of each part counts, shape (P,).
        asked: parts that are meant to get a least dose, shape (P,).
    """
    if not options:
        return ()
    counts = asked & (weights > 0)
    values = np.array([one.value * counts for one in options])
    seconds = np.array([one.fixed_s + 3 * one.per_set_s for one in options])
    spine = np.array([one.spine for one in options])
    worth = np.round(values @ weights / seconds, 12)
    kept: list[int] = []
    for number in np.argsort(-worth, kind="stable"):
        replaced = any(
            bool(np.all(values[other] >= values[number] - REPLACES_WITHIN))
            and seconds[other] <= TIME_WITHIN * seconds[number]
            and spine[other] <= spine[number] + SPINE_WITHIN
            for other in kept
        )
        if not replaced:
            kept.append(int(number))
    best: set[int] = set()
    for part in np.flatnonzero(counts):
        ranked = sorted(kept, key=lambda o: -values[o, part] / seconds[o])
        best.update(o for o in ranked[:PER_PART] if values[o, part] > 0)
        # What a part gains as a by-product shows in the worth of the whole exercise.
        by_worth = sorted(kept, key=lambda o: -worth[o] * (values[o, part] > 0.4))
        best.update(by_worth[:1])
    return tuple(options[o] for o in sorted(best))
