"""`setwright sources`: the findings every figure stands on."""

from __future__ import annotations

import click

from setwright.cli.common import emit_json, json_option
from setwright.documents.errors import DocumentError, Fault

HELP = """List the findings every rule stands on, or show one whole.

\b
Examples:
  setwright sources
  setwright sources session-volume-puos-2025
  setwright sources --topic rest --json
"""


@click.command("sources", help=HELP)
@click.argument("id", required=False)
@click.option("--topic", help="Only findings of this topic.")
@json_option
def command(id: str | None, topic: str | None, as_json: bool) -> None:  # noqa: A002
    """Show findings."""
    from setwright.handout.knowledge_text import finding_text, findings_text
    from setwright.sources.library import findings

    known = findings()
    if id is not None:
        if id not in known:
            near = ", ".join(sorted(key for key in known if id.split("-")[0] in key)[:6])
            raise DocumentError(
                "sources", (Fault("id", id, f"an id listed by `setwright sources` {near}"),)
            )
        if as_json:
            emit_json(known[id])
        else:
            click.echo(finding_text(known[id]))
        return
    chosen = [item for item in known.values() if topic is None or item.topic == topic]
    if not chosen:
        topics = ", ".join(sorted({item.topic for item in known.values()}))
        raise DocumentError("sources", (Fault("topic", str(topic), f"one of {topics}"),))
    if as_json:
        emit_json(chosen)
    else:
        click.echo(findings_text(chosen))
