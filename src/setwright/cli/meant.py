"""Which exercise is meant by words, of those that come into question."""

from __future__ import annotations

from collections.abc import Collection

import click

from setwright.exercises.names import match


def meant(words: str, among: Collection[str], where: str) -> str:
    """The exercise meant.

    Args:
        words: a name.
        among: ids that come into question.
        where: they stand, for the message.

    Raises:
        click.BadParameter: when none, or none for sure, is.
    """
    found = match(words)
    if found.sure is not None and found.sure in among:
        return found.sure
    near = [exercise for exercise, _ in found.candidates if exercise in among]
    if len(near) == 1:
        return near[0]
    names = ", ".join(near or sorted(among)) or "none"
    raise click.BadParameter(
        f"{words!r} is not in {where}; it has {names}", param_hint="--exercise"
    )
