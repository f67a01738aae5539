"""From the log to the sets that the estimate of strength reads."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable
from datetime import datetime
from functools import cache
from itertools import zip_longest

from setwright.exercises.catalogue import exercise, ids
from setwright.plan.intake import Intake
from setwright.plan.log import BodyMass, Log, SetRecord
from setwright.rehearsal.loads import hands
from setwright.rehearsal.strength import system_load
from setwright.training.done import DoneSet

PARTIAL_WORTH = 0.5
# With its assistance told, an assisted exercise moves the whole share of the unassisted one.
UNASSISTED = {
    "assisted-pull-up": "pull-up",
    "band-assisted-pull-up": "pull-up",
    "assisted-dip": "dip",
}


class Weights:
    """Body mass by date, from the log and, before anything was weighed, from the intake."""

    def __init__(self, log: Log, intake: Intake | None) -> None:
        weighed = [record for record in log.standing() if isinstance(record, BodyMass)]
        self._times = [record.at for record in weighed]
        self._masses = [record.kg for record in weighed]
        self._before = intake.body_mass_kg if intake is not None else None

    def on(self, at: datetime) -> float | None:
        """Body mass in kg as last weighed; None when it was never told."""
        position = bisect_right(self._times, at)
        if position:
            return self._masses[position - 1]
        return self._before or (self._masses[0] if self._masses else None)


def done_sets(log: Log, intake: Intake | None = None) -> tuple[DoneSet, ...]:
    """Working sets of known exercises, in time order.

    Drop sets and warm-up sets are left out, and sets that say nothing of strength (see
    ``left_out``). A left and a right set of the same load and place are one set with the mean of
    their repetitions.

    Args:
        log: the client's log.
        intake: for body mass before anything was weighed.
    """
    weights = Weights(log, intake)
    records = log.sets()
    days: dict[tuple[int, str], list[SetRecord]] = {}
    for record in records:
        if _why_not(record, weights) is None:
            days.setdefault((record.at.toordinal(), record.exercise), []).append(record)
    done = [one for group in days.values() for one in _day(group, weights)]
    place = {record.id: position for position, record in enumerate(records)}
    return tuple(sorted(done, key=lambda one: place[one.id]))


def left_out(log: Log, intake: Intake | None = None) -> tuple[tuple[SetRecord, str], ...]:
    """Working sets that say nothing of strength, each with the reason in plain words."""
    weights = Weights(log, intake)
    reasons = ((record, _why_not(record, weights)) for record in log.sets())
    return tuple((one, why) for one, why in reasons if why and one.role == "working")


def system_kg(record: SetRecord, body_mass_kg: float | None) -> float | None:
    """Load the muscles move, kg; None when body mass is lifted and not known, or nothing is.

    Raises:
        KeyError: when the exercise is not in the catalogue.
    """
    one = exercise(record.exercise)
    base = UNASSISTED.get(one.id) if record.load_kg < 0 else None
    share = exercise(base).bodyweight_share if base else one.bodyweight_share
    if share > 0 and body_mass_kg is None:
        return None
    system = system_load(record.load_kg, body_mass_kg or 0.0, share, hands(one))
    return system if system > 0 else None


@cache
def _known() -> frozenset[str]:
    return frozenset(ids())


def _why_not(record: SetRecord, weights: Weights) -> str | None:
    if record.role != "working":
        return f"a {record.role} set"
    if record.exercise not in _known():
        return "an exercise that is not in the catalogue"
    if record.symptoms:
        return "ended by a symptom"
    if record.pain is not None and record.rir is None and not record.to_failure:
        return "pain, and no word on the effort"
    if record.reps + record.partial_reps == 0:
        return "no repetition was done"
    mass = weights.on(record.at)
    if system_kg(record, mass) is None:
        lifts_body = exercise(record.exercise).bodyweight_share > 0
        return "body mass is not known" if lifts_body and mass is None else "the load is not known"
    return None


def _day(group: list[SetRecord], weights: Weights) -> list[DoneSet]:
    """Sets of one exercise on one day, numbered; pairs of sides made one."""
    return [_done(pair, number, weights) for number, pair in enumerate(_pairs(group), start=1)]


def _pairs(group: list[SetRecord]) -> list[tuple[SetRecord, ...]]:
    if all(record.side is None for record in group):
        return [(record,) for record in group]
    place = {record.id: position for position, record in enumerate(group)}
    lefts = [record for record in group if record.side == "left"]
    rights = [record for record in group if record.side == "right"]
    sets: list[tuple[SetRecord, ...]] = [(record,) for record in group if record.side is None]
    for left, right in zip_longest(lefts, rights):
        if left and right and left.load_kg == right.load_kg:
            sets.append((left, right) if place[left.id] < place[right.id] else (right, left))
        else:
            sets += [(one,) for one in (left, right) if one]
    return sorted(sets, key=lambda pair: place[pair[0].id])


def _done(pair: tuple[SetRecord, ...], number: int, weights: Weights) -> DoneSet:
    first = pair[0]
    system = system_kg(first, weights.on(first.at))
    assert system is not None
    return DoneSet(
        id=first.id,
        day=first.at.toordinal(),
        minute=first.at.hour * 60 + first.at.minute + first.at.second / 60,
        exercise=first.exercise,
        number=number,
        load_kg=first.load_kg,
        system_kg=system,
        reps=_mean(one.reps + PARTIAL_WORTH * one.partial_reps for one in pair),
        rir=_mean_or_none([one.rir for one in pair]),
        to_failure=all(one.to_failure for one in pair),
        rest_s=first.rest_s,
    )


def _mean(values: Iterable[float]) -> float:
    told = list(values)
    return sum(told) / len(told)


def _mean_or_none(values: list[float | None]) -> float | None:
    told = [value for value in values if value is not None]
    return _mean(told) if told else None
