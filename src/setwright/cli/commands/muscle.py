"""`setwright muscle`: what a muscle part does and which exercises train it."""

from __future__ import annotations

import click

from setwright.cli.common import emit_json, json_option
from setwright.documents.errors import DocumentError, Fault

HELP = """Look inside a muscle: its parts, what they do, and the exercises that train each.

\b
Examples:
  setwright muscle hamstrings
  setwright muscle "rectus femoris" --by length
"""


@click.command("muscle", help=HELP)
@click.argument("name", nargs=-1, required=True)
@click.option(
    "--by",
    type=click.Choice(["share", "length", "spine"]),
    default="share",
    show_default=True,
    help="Rank by share, by how long the part is under load, or by cost to the spine.",
)
@click.option("--most", type=click.IntRange(1, 50), default=8, show_default=True)
@json_option
def command(name: tuple[str, ...], by: str, most: int, as_json: bool) -> None:
    """Show a muscle."""
    from setwright.anatomy.atlas import part, resolve
    from setwright.handout.knowledge_text import muscle_text, trainers

    words = " ".join(name)
    try:
        ids = resolve(words)
    except KeyError as error:
        allowed = f"a muscle, part or group ({error.args[0]})"
        raise DocumentError("muscle", (Fault("name", words, allowed),)) from error
    rows = {ident: trainers(ident, by, most) for ident in ids}
    if as_json:
        emit_json({ident: {"part": part(ident), "exercises": best} for ident, best in rows.items()})
    else:
        click.echo(muscle_text(rows))
