"""The exercise a coach means: surely, or with the candidates listed; never guessed."""

from __future__ import annotations

from setwright.exercises import catalogue, names

ALLOWED = "an exercise of the catalogue"


class UnsureNameError(ValueError):
    """A name that means no exercise surely; its text says what may have been meant."""


def exercise_id(words: str) -> str:
    """The id of the exercise meant.

    Raises:
        UnsureNameError: when no exercise is surely meant.
    """
    if words in catalogue.ids():
        return words
    match = names.match(words)
    if match.sure is not None:
        return match.sure
    listed = ", ".join(candidate for candidate, _ in match.candidates)
    raise UnsureNameError(f"{ALLOWED}; near it: {listed}" if listed else ALLOWED)


def exercise_name(exercise: str) -> str:
    """The name to write for an id: the catalogue's, where it surely means this id again."""
    if exercise not in catalogue.ids():
        return exercise
    name = catalogue.exercise(exercise).name
    return name if names.match(name).sure == exercise else exercise
