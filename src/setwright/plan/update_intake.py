"""An intake file brought up to date: only what changed is written anew."""

from __future__ import annotations

from io import StringIO
from typing import Any

from setwright.documents.errors import DocumentError
from setwright.plan.intake import Intake
from setwright.plan.own_text import refill, set_fields, tree_of, with_lost_comments
from setwright.plan.read import read_intake
from setwright.plan.write import intake_data, write_intake

INSIDE = ("screening", "aims")


def update_intake(text: str, intake: Intake) -> str:
    """Bring an intake up to date and keep its author's comments, order and manner of writing.

    Args:
        text: the document as it stands; anything ``read_intake`` accepts.
        intake: what it shall hold.

    Raises:
        DocumentError: when the text is no intake.
    """
    before = read_intake(text, "the intake file")
    if before == intake:
        return text
    tree, yaml = tree_of(text)
    _fields(tree, before, intake)
    out = StringIO()
    yaml.dump(tree, out)
    anew = write_intake(intake)
    # Whatever the author's file was like, what is written must be the intake.
    for result in (out.getvalue(), anew):
        commented = with_lost_comments(text, result)
        if _holds(commented, intake):
            return commented
    return anew


def _fields(tree: Any, before: Intake, after: Intake) -> None:
    old, new = intake_data(before), intake_data(after)
    for key in Intake.model_fields:
        if getattr(before, key) == getattr(after, key):
            continue
        if key not in new:
            tree.pop(key, None)
        elif key in INSIDE and key in tree:
            set_fields(tree[key], _plain(old.get(key, {})), _plain(new[key]))
        elif isinstance(new[key], tuple | list) and tree.get(key):
            _members(tree[key], list(old[key]), list(new[key]))
        else:
            tree[key] = _plain(new[key])


def _members(nodes: Any, old: list[Any], new: list[Any]) -> None:
    """Members that stay keep their place in the author's hand; the others are written in it."""
    left = list(enumerate(old))
    wanted: list[tuple[int | None, Any]] = []
    for item in new:
        at = next((at for at, other in left if other == item), None)
        left = [pair for pair in left if pair[0] != at]
        wanted.append((at, _like(nodes, item) if at is None else nodes[at]))
    refill(nodes, wanted)


def _like(nodes: Any, item: Any) -> Any:
    """A member on one line where the author's are."""
    from ruamel.yaml.comments import CommentedMap

    node = CommentedMap(_plain(item))
    flow = [one.fa.flow_style() for one in nodes if isinstance(one, CommentedMap)]
    if all(flow):
        node.fa.set_flow_style()
    return node


def _plain(value: Any) -> Any:
    """A value as the tree takes it; lists of single values on one line."""
    from ruamel.yaml.comments import CommentedSeq

    if isinstance(value, dict):
        return {key: _plain(item) for key, item in value.items()}
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if not isinstance(value, list | tuple):
        return value
    found = CommentedSeq([_plain(item) for item in value])
    if not any(isinstance(item, dict) for item in value):
        found.fa.set_flow_style()
    return found


def _holds(text: str, intake: Intake) -> bool:
    try:
        return read_intake(text, "the intake file") == intake
    except DocumentError:
        return False
