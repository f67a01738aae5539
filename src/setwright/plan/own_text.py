"""A document changed in its author's own text: comments, order and manner of writing stay."""

from __future__ import annotations

import re
from typing import Any

_COMMENT = re.compile(r"\s*#")
_DASH = re.compile(r"^( *)- ", re.MULTILINE)


def tree_of(text: str) -> tuple[Any, Any]:
    """The round-trip tree of a YAML text, and the writer that keeps its indentation."""
    from ruamel.yaml import YAML

    yaml = YAML(typ="rt", pure=True)
    yaml.preserve_quotes = True
    yaml.width = 10_000
    dashes = _DASH.search(text)
    inset = len(dashes[1]) if dashes else 2
    yaml.indent(mapping=2, sequence=inset + 2, offset=inset)
    return yaml.load(text.removeprefix("\ufeff")), yaml


def set_fields(node: Any, before: dict[str, Any], after: dict[str, Any]) -> None:
    """Write the fields that changed; remove those that are gone."""
    for key, value in after.items():
        if key not in before or before[key] != value:
            node[key] = value
    for key in before:
        if key not in after and key in node:
            del node[key]


def refill(nodes: Any, wanted: list[tuple[int | None, Any]]) -> None:
    """Give a list its new members, each kept one with its comments.

    Comments above a member hang, in the round-trip tree, on the member before it and go with it;
    ``with_lost_comments`` puts back what is lost with a member that goes.
    """
    places = [at for at, _ in wanted]
    if places == list(range(len(nodes))):
        for at, node in wanted:
            if nodes[at] is not node:
                nodes[at] = node
        return
    comments = dict(nodes.ca.items)
    del nodes[:]
    nodes.ca.items.clear()
    nodes.extend(node for _, node in wanted)
    for new, (at, _) in enumerate(wanted):
        if at in comments:
            nodes.ca.items[new] = comments[at]


def with_lost_comments(text: str, result: str) -> str:
    """The result, with comment lines that went with a removed member put back where they stood.

    Each goes above the line that followed it in the author's text, or to the end.
    """
    lines, source = result.split("\n"), text.split("\n")
    for at, line in enumerate(source):
        if _COMMENT.match(line) and line.strip() not in map(str.strip, lines):
            below = (_key(other) for other in source[at + 1 :] if other.strip())
            keys = [_key(other) for other in lines]
            place = next((keys.index(key) for key in below if key in keys), len(lines) - 1)
            lines.insert(place, line)
    return "\n".join(lines)


def _key(line: str) -> str:
    """A line down to its first colon: what stays when only figures change."""
    return line.strip().partition(":")[0]
