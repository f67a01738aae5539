"""`setwright exercise`: what one exercise trains and asks for."""

from __future__ import annotations

import click

from setwright.cli.common import emit_json, json_option
from setwright.documents.errors import DocumentError, Fault

HELP = """Look inside one exercise: its parts and shares, where each figure comes from, its cues.

\b
Examples:
  setwright exercise "seated leg curl"
  setwright exercise back-squat --json
"""


@click.command("exercise", help=HELP)
@click.argument("name", nargs=-1, required=True)
@json_option
def command(name: tuple[str, ...], as_json: bool) -> None:
    """Show an exercise."""
    from setwright.exercises import catalogue
    from setwright.exercises.names import match
    from setwright.handout.knowledge_text import exercise_text

    words = " ".join(name)
    found = match(words)
    if found.sure is None:
        near = ", ".join(candidate for candidate, _ in found.candidates)
        raise DocumentError("exercise", (Fault("name", words, f"a known exercise; near: {near}"),))
    exercise = catalogue.exercise(found.sure)
    profile = catalogue.profile(found.sure)
    if as_json:
        emit_json({"exercise": exercise, "profile": profile})
    else:
        click.echo(exercise_text(exercise, profile))
