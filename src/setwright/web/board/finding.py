"""The catalogue searched, by a name or by what is to be trained, for what the gym can do."""

from __future__ import annotations

from dataclasses import dataclass

from setwright.anatomy.atlas import index, resolve
from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.exercises.model import Exercise
from setwright.exercises.names import match, plain
from setwright.plan.intake import Intake
from setwright.plan.limits import avoidance

SHOWN = 12
# A name is as like as this to be shown, and an exercise trains a part from this share on.
LIKE, TRAINS = 60.0, 0.4


@dataclass(frozen=True)
class Hit:
    """An exercise that was found.

    Attributes:
        why: what stands against it for this person, empty when nothing does.
    """

    exercise: str
    name: str
    pattern: str
    why: str


def find(words: str, intake: Intake | None) -> tuple[Hit, ...]:
    """Exercises meant by words: those so named, then those that train the muscle so named.

    Exercises the gym has no kit for are left out.
    """
    wanted = plain(words)
    if not wanted:
        return ()
    inside = [
        one.id
        for one in sorted(catalogue.exercises(), key=lambda one: _rank(one, wanted))
        if _holds(one, wanted)
    ]
    like = [ident for ident, score in match(words, SHOWN).candidates if score >= LIKE]
    found = dict.fromkeys([*inside, *like, *_training(words)])
    gym = stock_of(intake.gym, intake.kit) if intake else None
    hits = []
    for ident in found:
        exercise = catalogue.exercise(ident)
        if gym is None or gym.can_do(exercise):
            banned = avoidance(intake, exercise)
            why = f"to be avoided: {banned.reason}" if banned else ""
            hits.append(Hit(ident, exercise.name, exercise.pattern, why))
    return tuple(hits[:SHOWN])


def _holds(exercise: Exercise, wanted: str) -> bool:
    return any(wanted in plain(name) for name in (exercise.name, *exercise.synonyms))


def _rank(exercise: Exercise, wanted: str) -> tuple[bool, int, str]:
    """The exercise's own name before its synonyms, the plainest first."""
    return wanted not in plain(exercise.name), len(exercise.name), exercise.name


def _training(words: str) -> list[str]:
    try:
        columns = [index()[part] for part in resolve(words)]
    except KeyError:
        return []
    share = catalogue.shares()[:, columns].mean(axis=1)
    order = sorted(range(len(share)), key=lambda row: -share[row])
    return [catalogue.ids()[row] for row in order if share[row] >= TRAINS]
