"""What a coach can choose from: names of exercises and muscles, as the engine understands them."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import get_args

from setwright.anatomy import atlas
from setwright.anatomy.joints import Action
from setwright.exercises.catalogue import exercises
from setwright.exercises.model import Pattern


@cache
def exercise_names() -> tuple[str, ...]:
    """The trade's names of all exercises, in order of the alphabet."""
    return tuple(sorted(one.name for one in exercises()))


@cache
def muscle_names() -> tuple[str, ...]:
    """Every word for a group, a muscle or a part; wider ones first."""
    known = atlas.vocabulary()
    return tuple(sorted(known, key=lambda name: (len(known[name]) < 2, name)))


def choices_of_intake() -> dict[str, Sequence[str]]:
    """Suggestions of the intake's fields, by the list that a field names."""
    return {
        "exercises": exercise_names(),
        "muscles": muscle_names(),
        "patterns": get_args(Pattern),
        "actions": get_args(Action),
    }
