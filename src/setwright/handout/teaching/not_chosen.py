"""Exercises that could have stood in the week, and why most of the catalogue could not."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

import numpy as np

from setwright.audit.context import Context
from setwright.design.options import SKILL
from setwright.design.substitute import SIMILAR, TRIED
from setwright.design.swap import candidates, limits_of, put
from setwright.exercises import catalogue
from setwright.exercises.kit import stock_of
from setwright.handout.teaching.trials import Trial, run
from setwright.plan.limits import avoidance


@dataclass(frozen=True)
class NotChosen:
    """An exercise much like one of the week, put in its place.

    Attributes:
        exercise: id of the one that is not in the week.
        instead_of: id of the one that is.
        trial: what the week would be with it.
        spine: change of sets weighted by spinal load.
    """

    exercise: str
    instead_of: str
    trial: Trial
    spine: float


@dataclass(frozen=True)
class Ruled:
    """How many exercises of the catalogue a person can be given, and what rules out the rest.

    Attributes:
        total: exercises in the catalogue.
        open: those that nothing rules out.
        no_kit: the gym lacks what they need.
        avoided: the person must not or will not do them.
        skill: they ask for more skill than the experience suggests.
    """

    total: int
    open: int
    no_kit: int
    avoided: int
    skill: int


def near(context: Context) -> tuple[NotChosen, ...]:
    """For each exercise of the week the best of the few most like it that are not in the week.

    Best by the week's growth. Exercises without a likeness are left out. Sorted by how much the
    week would gain, most first.
    """
    person = limits_of(context.intake)
    held = {item.exercise.id for item in context.placed}
    shares = catalogue.shares()
    size = np.maximum(np.linalg.norm(shares, axis=1), 1e-9)
    changed = []
    for ident in dict.fromkeys(item.exercise.id for item in context.placed):
        own = catalogue.row(ident)
        likeness = shares @ shares[own] / (size * size[own])
        options = [
            one
            for one in candidates(catalogue.exercise(ident), None, None, person)
            if one.id not in held and likeness[catalogue.row(one.id)] >= SIMILAR
        ]
        options.sort(key=lambda one: (-likeness[catalogue.row(one.id)], one.id))
        for one in options[:TRIED]:
            plan = put(context.plan, ident, one, person)
            if plan is not None:
                changed.append((ident, one.id, plan))
    trials = run(context, [(new, plan) for _, new, plan in changed])
    best: dict[str, NotChosen] = {}
    for (old, new, plan), trial in zip(changed, trials, strict=True):
        if old not in best or trial.growth > best[old].trial.growth:
            sets = sum(
                entry.sets
                for session in plan.sessions
                for entry in session.exercises
                if entry.exercise == new
            )
            spine = sets * (catalogue.profile(new).spinal_load - catalogue.profile(old).spinal_load)
            best[old] = NotChosen(new, old, trial, spine)
    return tuple(sorted(best.values(), key=lambda one: (-one.trial.growth, one.instead_of)))


def ruled(context: Context) -> Ruled:
    """What rules out exercises of the catalogue; each is counted for the first reason only."""
    person = limits_of(context.intake)
    gym = stock_of(person.gym, person.kit)
    found: Counter[str] = Counter()
    for exercise in catalogue.exercises():
        if not gym.can_do(exercise):
            found["kit"] += 1
        elif avoidance(person, exercise) is not None:
            found["avoided"] += 1
        elif exercise.skill not in SKILL[person.experience]:
            found["skill"] += 1
    total = len(catalogue.exercises())
    return Ruled(total, total - sum(found.values()), found["kit"], found["avoided"], found["skill"])
