"""`setwright exercise`: what one exercise trains and asks for, computed for one body."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from setwright.cli.body_options import body_options, build_of
from setwright.cli.common import emit_json, json_option, read_text
from setwright.documents.errors import DocumentError, Fault

if TYPE_CHECKING:
    from setwright.exercises.for_body import ForBody
    from setwright.mechanics.body import Build
    from setwright.mechanics.movement import Movement

HELP = """Look inside one exercise, computed for a body.

Its parts and shares, how long they are where they are loaded, where it is hardest, what the joints
and the lower back hold, its cues.

With --new, do the same for a movement you declare in a file (see examples/movement.yaml).

\b
Examples:
  setwright exercise "seated leg curl"
  setwright exercise back-squat --stature 192 --femur +6% --depth parallel --bar low
  setwright exercise back-squat --stance wide --picture squat.svg
  setwright exercise --new movement.yaml --json
"""
# Bodies and stances the intervals are drawn from; more would take longer than they tell.
DRAWS = 40
BODY = ("stature", "mass", "sex", "lengths")
VARIATIONS = {
    "depth": ("full", "parallel", "half"),
    "stance": ("narrow", "medium", "wide"),
    "bar": ("high", "low", "front"),
}


@click.command("exercise", help=HELP)
@click.argument("name", nargs=-1)
@click.option(
    "--new",
    "file",
    type=click.Path(allow_dash=True),
    metavar="FILE.yaml",
    help="A movement you declare.",
)
@body_options
@click.option("--depth", type=click.Choice(VARIATIONS["depth"]), help="How deep the movement goes.")
@click.option("--stance", type=click.Choice(VARIATIONS["stance"]), help="How wide the feet stand.")
@click.option("--bar", type=click.Choice(VARIATIONS["bar"]), help="Where the bar lies.")
@click.option(
    "--picture",
    type=click.Path(path_type=Path),
    metavar="FILE.svg",
    help="Draw it, as .svg or .png.",
)
@json_option
def command(
    name: tuple[str, ...], file: str | None, picture: Path | None, as_json: bool, **options: Any
) -> None:
    """Show an exercise."""
    words = " ".join(name)
    if bool(words) == bool(file):
        found = "both" if words else "nothing"
        allowed = "the name of an exercise, or --new with a file"
        raise DocumentError("exercise", (Fault("name", found, allowed),))
    varied = {key: options.pop(key) for key in VARIATIONS}
    build = build_of(**{key: options.pop(key) for key in BODY}, words=options)
    if file:
        _declared(file, build, varied, picture, as_json)
    else:
        _catalogued(words, build, varied, picture, as_json)


def _declared(
    file: str, build: Build, varied: dict[str, Any], picture: Path | None, as_json: bool
) -> None:
    from setwright.exercises.movement_file import placed, read_movement
    from setwright.handout.for_body_text import for_body_data, for_body_text

    declared = read_movement(*read_text(file))
    found = placed(declared, lambda: _computed(declared.movement, build, varied))
    if picture:
        _draw(found, _title(declared.name, varied), picture)
    if as_json:
        emit_json({"name": declared.name, "like": declared.like, "for_body": for_body_data(found)})
    else:
        click.echo(f"{declared.name}\n{for_body_text(found, done=_done(varied))}")


def _catalogued(
    words: str, build: Build, varied: dict[str, Any], picture: Path | None, as_json: bool
) -> None:
    from setwright.exercises import catalogue
    from setwright.exercises.movements import movement
    from setwright.exercises.names import match
    from setwright.handout.compared_text import compared, compared_text
    from setwright.handout.for_body_text import for_body_data, for_body_text
    from setwright.handout.knowledge_text import exercise_text

    sure = match(words)
    if sure.sure is None:
        near = ", ".join(candidate for candidate, _ in sure.candidates)
        raise DocumentError("exercise", (Fault("name", words, f"a known exercise; near: {near}"),))
    exercise = catalogue.exercise(sure.sure)
    found = _asked_for(exercise.id, movement(exercise.id), build, varied)
    held = compared(exercise.id)
    if picture:
        _draw(found, _title(exercise.name, varied), picture)
    if as_json:
        profile = catalogue.profile(exercise.id)
        computed = {"for_body": for_body_data(found), "compared": held}
        emit_json({"exercise": exercise, "profile": profile, **computed})
    else:
        text = for_body_text(found, exercise.published, _done(varied))
        click.echo(exercise_text(exercise, text, compared_text(held)))


def _asked_for(ident: str, movement: Movement, build: Build, varied: dict[str, Any]) -> ForBody:
    """The exercise for a body; what that body cannot do is a fault of the options."""
    from setwright.mechanics.impossible import PostureError

    try:
        return _computed(movement, build, varied)
    except PostureError as error:
        field = f"--{error.field}" if error.field in varied else error.field
        raise DocumentError(ident, (Fault(field, error.found, error.allowed),)) from None


def _computed(movement: Movement, build: Build, changes: dict[str, Any]) -> ForBody:
    from setwright.exercises.for_body import for_body
    from setwright.mechanics.variation import varied

    return for_body(varied(movement, **changes, build=build), build, DRAWS)


def _done(changes: dict[str, Any]) -> str:
    """In which way a movement is done: ``depth parallel, bar low``."""
    return ", ".join(f"{name} {value}" for name, value in changes.items() if value)


def _title(name: str, changes: dict[str, Any]) -> str:
    return f"{name}, {_done(changes)}" if _done(changes) else name


def _draw(found: ForBody, name: str, picture: Path) -> None:
    from setwright.handout.drawing import save
    from setwright.handout.motion_picture import motion_picture

    save(motion_picture(found, name), picture)
