"""A plan file brought up to date: only what changed is written anew."""

from __future__ import annotations

import re
from io import StringIO
from typing import Any

from setwright.plan.naming import UnsureNameError, exercise_id
from setwright.plan.read import read_plan
from setwright.plan.shorthand import LineError, split_name
from setwright.plan.spelling import ENTRY_FIELDS, SHORT_FIELDS
from setwright.plan.week import Entry, Plan, Session
from setwright.plan.write import entry_fields, entry_node, plan_head, session_head, write_plan

_COMMENT = re.compile(r"\s*#")
_DASH = re.compile(r"^( *)- ", re.MULTILINE)


def updated(text: str, plan: Plan) -> str:
    """The file's text with what differs from the plan replaced.

    Raises:
        DocumentError: when the text is no plan.
    """
    before = read_plan(text, "the plan file")
    if before == plan:
        return text
    tree, yaml = _tree(text)
    _head(tree, plan_head(before), plan_head(plan))
    _sessions(tree, before, plan)
    if before.unavoidable != plan.unavoidable:
        tree["unavoidable"] = [item.model_dump() for item in plan.unavoidable]
        if not plan.unavoidable:
            del tree["unavoidable"]
    out = StringIO()
    yaml.dump(tree, out)
    anew = write_plan(plan)
    # Whatever the author's file was like, what is written must be the plan.
    for result in (out.getvalue(), anew):
        commented = _with_lost_comments(text, result)
        if _holds(commented, plan):
            return commented
    return anew


def _with_lost_comments(text: str, result: str) -> str:
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


def _holds(text: str, plan: Plan) -> bool:
    from setwright.documents.errors import DocumentError

    try:
        return read_plan(text, "the plan file") == plan
    except DocumentError:
        return False


def _tree(text: str) -> tuple[Any, Any]:
    from ruamel.yaml import YAML

    yaml = YAML(typ="rt", pure=True)
    yaml.preserve_quotes = True
    yaml.width = 10_000
    dashes = _DASH.search(text)
    inset = len(dashes[1]) if dashes else 2
    yaml.indent(mapping=2, sequence=inset + 2, offset=inset)
    return yaml.load(text.removeprefix("\ufeff")), yaml


def _head(node: Any, before: dict[str, Any], after: dict[str, Any]) -> None:
    """Write the fields that changed; remove those that are gone."""
    for key, value in after.items():
        if key not in before or before[key] != value:
            node[key] = value
    for key in before:
        if key not in after and key in node:
            del node[key]


def _sessions(tree: Any, before: Plan, plan: Plan) -> None:
    nodes = tree["sessions"]
    old = list(enumerate(before.sessions))
    same_units = before.unit == plan.unit
    wanted: list[tuple[int | None, Any]] = []
    for session in plan.sessions:
        at = _partner(session, old)
        if at is None:
            wanted.append((None, _new_session(session, plan.unit)))
            continue
        old = [pair for pair in old if pair[0] != at]
        was, node = before.sessions[at], nodes[at]
        _head(node, session_head(was), session_head(session))
        _entries(node, was, session, plan.unit, same_units)
        wanted.append((at, node))
    _refill(nodes, wanted)


def _partner(session: Session, old: list[tuple[int, Session]]) -> int | None:
    """The old session this one continues: same name and day, else same day, else same name."""
    for alike in (
        lambda was: (was.name, was.day) == (session.name, session.day),
        lambda was: was.day == session.day,
        lambda was: was.name == session.name,
    ):
        for at, was in old:
            if alike(was):
                return at
    return None


def _refill(nodes: Any, wanted: list[tuple[int | None, Any]]) -> None:
    """Give a list its new members, each kept one with its comments.

    Comments above a member hang, in the round-trip tree, on the member before it and go with it;
    ``_with_lost_comments`` puts back what is lost with a member that goes.
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


def _entries(node: Any, was: Session, session: Session, unit: str, same_units: bool) -> None:
    nodes = node["exercises"]
    old = list(enumerate(was.exercises))
    wanted: list[tuple[int | None, Any]] = []
    for entry in session.exercises:
        at = next((at for at, other in old if other == entry), None)
        if at is None:
            at = next((at for at, other in old if other.exercise == entry.exercise), None)
        if at is None:
            wanted.append((None, entry_node(entry, unit)))
            continue
        old = [pair for pair in old if pair[0] != at]
        wanted.append((at, _entry(nodes[at], was.exercises[at], entry, unit, same_units)))
    _refill(nodes, wanted)


def _entry(node: Any, was: Entry, entry: Entry, unit: str, same_units: bool) -> Any:
    """An exercise's node, changed in its author's own manner."""
    if was == entry and (same_units or was.load_kg is None):
        return node
    if isinstance(node, str):
        fresh = entry_node(entry, unit)
        (name, line), *note = fresh.items()
        return fresh if note else f"{_author_name(node, entry, name)}: {line}"
    strange = [key for key in node if key not in ENTRY_FIELDS]
    if strange:
        fresh = entry_node(entry, unit)
        line = next(iter(fresh.values()))
        node[strange[0]] = line
        if "note" in fresh:
            node["note"] = fresh["note"]
        elif "note" in node:
            del node["note"]
        return node
    _fields(node, entry_fields(was, unit), entry_fields(entry, unit))
    return node


def _author_name(line: str, entry: Entry, otherwise: str) -> str:
    """The author's own words for the exercise, where they still mean it."""
    try:
        words, _ = split_name(line)
        return words if exercise_id(words) == entry.exercise else otherwise
    except (LineError, UnsureNameError):
        return otherwise


def _fields(node: Any, before: dict[str, Any], after: dict[str, Any]) -> None:
    own = {SHORT_FIELDS.get(key, key): key for key in node}
    for key in (*after, *(key for key in before if key not in after)):
        name = own.get(SHORT_FIELDS.get(key, key), key)
        if key not in after:
            if name in node:
                del node[name]
        elif before.get(key) != after[key]:
            node[name] = after[key]


def _new_session(session: Session, unit: str) -> dict[str, Any]:
    head = session_head(session)
    return {**head, "exercises": [entry_node(entry, unit) for entry in session.exercises]}
