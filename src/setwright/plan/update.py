"""A plan file brought up to date: only what changed is written anew."""

from __future__ import annotations

from io import StringIO
from typing import Any

from setwright.plan.naming import UnsureNameError, exercise_id
from setwright.plan.own_text import refill, set_fields, tree_of, with_lost_comments
from setwright.plan.read import read_plan
from setwright.plan.shorthand import LineError, split_name
from setwright.plan.spelling import ENTRY_FIELDS, SHORT_FIELDS
from setwright.plan.week import Entry, Plan, Session
from setwright.plan.write import entry_fields, entry_node, plan_head, session_head, write_plan


def updated(text: str, plan: Plan) -> str:
    """The file's text with what differs from the plan replaced.

    Raises:
        DocumentError: when the text is no plan.
    """
    before = read_plan(text, "the plan file")
    if before == plan:
        return text
    tree, yaml = tree_of(text)
    set_fields(tree, plan_head(before), plan_head(plan))
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
        commented = with_lost_comments(text, result)
        if _holds(commented, plan):
            return commented
    return anew


def _holds(text: str, plan: Plan) -> bool:
    from setwright.documents.errors import DocumentError

    try:
        return read_plan(text, "the plan file") == plan
    except DocumentError:
        return False


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
        set_fields(node, session_head(was), session_head(session))
        _entries(node, was, session, plan.unit, same_units)
        wanted.append((at, node))
    refill(nodes, wanted)


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
    refill(nodes, wanted)


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
