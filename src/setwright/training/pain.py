"""Pain as reported: what to do about it. Never a diagnosis, never a heavier load after it.

The levels are those of a pain scale made for one tendon (pain-scale); using it elsewhere, and the
windows in days below, are common practice. Symptoms that stop training are in
``plan/symptoms.py``, what to do about them in ``stop_signs.py``.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import Literal

from setwright.plan.log import Log, Pain, SetRecord
from setwright.training.trouble import ACCEPTABLE, CARRY_ON, TRY_AGAIN_DAYS, trouble_of

Answer = Literal["carry on, watching", "lighter, other range", "stop and exchange"]
# Pain reported over more than this is one for a professional (pain-persist).
LASTING_DAYS = 14
# The last of it must lie so near the day asked about.
RECENT_DAYS = 14
# Rising over so many sessions of one exercise stops it, whatever the level.
RISING_SESSIONS = 2
EVIDENCE = ("pain-scale", "pain-flare-by-training", "pain-persist", "scope-no-diagnosis")


@dataclass(frozen=True)
class PainCourse:
    """Pain on one exercise up to a day.

    Attributes:
        exercise: id.
        where: as said last.
        days: ordinals of the days it was reported on, rising.
        levels: highest level on each of them, 0 to 10.
        answer: what the last report asks for.
        rising: higher on each of the last two sessions that reported any.
        lasting: reported over more than two weeks.
    """

    exercise: str
    where: str
    days: tuple[int, ...]
    levels: tuple[int, ...]
    answer: Answer
    rising: bool
    lasting: bool


def answer_to(level: int) -> Answer:
    """What a level asks for, 0 to 10."""
    if level <= CARRY_ON:
        return "carry on, watching"
    return "lighter, other range" if level <= ACCEPTABLE else "stop and exchange"


def pain_courses(log: Log, day: date) -> tuple[PainCourse, ...]:
    """Pain on every exercise that reported any in the last two weeks, worst first."""
    reports: dict[str, dict[int, Pain]] = {}
    for record in _until(log, day):
        if record.pain is not None and record.pain.level > 0:
            by_day = reports.setdefault(record.exercise, {})
            on = record.at.toordinal()
            known = by_day.get(on)
            if known is None or record.pain.level > known.level:
                by_day[on] = record.pain
    found = [
        _course(exercise, by_day)
        for exercise, by_day in reports.items()
        if day.toordinal() - max(by_day) < RECENT_DAYS
    ]
    return tuple(sorted(found, key=lambda one: (-one.levels[-1], -len(one.days), one.exercise)))


def _course(exercise: str, by_day: dict[int, Pain]) -> PainCourse:
    days = sorted(by_day)
    # What was over long ago is another story.
    start = max(
        (at for at in range(1, len(days)) if days[at] - days[at - 1] > TRY_AGAIN_DAYS), default=0
    )
    days = days[start:]
    levels = [by_day[on].level for on in days]
    last = levels[-RISING_SESSIONS - 1 :]
    rising = len(last) > RISING_SESSIONS and all(b > a for a, b in pairwise(last))
    answer: Answer = "stop and exchange" if rising else answer_to(levels[-1])
    lasting = days[-1] - days[0] > LASTING_DAYS
    where = by_day[days[-1]].where
    return PainCourse(exercise, where, tuple(days), tuple(levels), answer, rising, lasting)


def may_rise(exercise: str, log: Log, day: date) -> bool:
    """Whether an exercise's load may be raised at all on a day.

    No after any pain, broken technique or symptom on the last day it was done, or in the two
    weeks before the day for pain above the level to carry on with.
    """
    known = [record for record in _until(log, day) if record.exercise == exercise]
    if not known:
        return True
    last = max(record.at.toordinal() for record in known)
    if trouble_of(one for one in known if one.at.toordinal() == last).not_heavier:
        return False
    recent = day.toordinal() - TRY_AGAIN_DAYS
    return trouble_of(one for one in known if one.at.toordinal() > recent).pain <= CARRY_ON


def _until(log: Log, day: date) -> tuple[SetRecord, ...]:
    return tuple(record for record in log.sets() if record.at.date() <= day)
