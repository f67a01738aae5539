"""What of a proposal can be changed: as fields of a form, and read back from one."""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Final, Literal

from pydantic import JsonValue

from setwright.documents.errors import DocumentError, Fault
from setwright.exercises import catalogue
from setwright.exercises.names import match
from setwright.plan.intake import DAYS
from setwright.plan.week import Plan
from setwright.training.labels import labels
from setwright.training.proposals.model import Proposal

Kind = Literal["number", "choice", "exercise", "day"]

LABELS: Final = {
    "by": "Exercise instead",
    "sets": "Sets",
    "session": "Session",
    "day": "Day",
    "week": "Week that is lighter, from Monday",
    "rest_least_s": "Rest at least, s",
    "rest_most_s": "Rest at most, s",
}
HELP: Final = {"by": "Empty: leave it out.", "sets": "Empty: as many as before."}


@dataclass(frozen=True)
class Field:
    """One field of a change.

    Attributes:
        name: in the form.
        label: for people.
        kind: how it is entered.
        value: as proposed.
        choices: value and words, for a choice.
        help: more about it.
        most: largest number.
        error: what was wrong with what was sent.
    """

    name: str
    label: str
    kind: Kind
    value: str
    choices: tuple[tuple[str, str], ...] = ()
    help: str = ""
    most: int = 20
    error: str = ""


def fields(one: Proposal, plan: Plan | None) -> tuple[Field, ...]:
    """Fields of a proposal that can be edited; what it is about stays."""
    return tuple(_fields(one, plan))


def _fields(one: Proposal, plan: Plan | None) -> Iterator[Field]:
    sessions = tuple((name, name) for name in labels(plan)) if plan is not None else ()
    for name, value in one.change.items():
        label, more = LABELS.get(name, name), HELP.get(name, "")
        if name == "add" and isinstance(value, list):
            yield from _rows(value, sessions)
        elif name == "exercise" or (name == "session" and name == _about(one)):
            continue
        elif name == "by":
            known = "" if value is None else catalogue.exercise(str(value)).name
            yield Field(name, label, "exercise", known, help=more)
        elif name == "session":
            yield Field(name, label, "choice", str(value), sessions)
        elif name == "day":
            yield Field(name, label, "choice", str(value), tuple((d, d.title()) for d in DAYS))
        elif name == "week":
            yield Field(name, label, "day", str(value))
        else:
            # Sets that no other exercise brings along have to be given.
            more = more if value is None or "by" in one.change else ""
            text = "" if value is None else str(value)
            most = 900 if name.endswith("_s") else 20
            yield Field(name, label, "number", text, help=more, most=most)


def _about(one: Proposal) -> str:
    """The field that names a session, where the proposal is about one."""
    return "session" if one.change.get("session") == one.subject else ""


def _rows(rows: list[JsonValue], sessions: tuple[tuple[str, str], ...]) -> Iterator[Field]:
    for at, row in enumerate(rows):
        if isinstance(row, dict):
            name = catalogue.exercise(str(row["exercise"])).name
            yield Field(f"add-{at}-sets", f"{name}: sets", "number", str(row["sets"]),
                        help="0: not at all.")  # fmt: skip
            yield Field(f"add-{at}-to", f"{name}: into", "choice", str(row["to"]), sessions)


def read_change(one: Proposal, plan: Plan | None, said: Mapping[str, str]) -> dict[str, JsonValue]:
    """The fields that were changed, as `--change` of the command line gives them.

    Args:
        one: the proposal.
        plan: in force.
        said: what the form sent.

    Raises:
        DocumentError: when a field cannot be read, by its name.
    """
    found: dict[str, JsonValue] = {}
    faults = []
    for field in fields(one, plan):
        text = said.get(field.name, field.value).strip()
        if text == field.value or field.name.startswith("add-"):
            continue
        try:
            found[field.name] = _value(field, text)
        except ValueError as error:
            faults.append(Fault(field.name, repr(text), str(error)))
    if isinstance(one.change.get("add"), list):
        rows = _read_rows(one.change["add"], said, faults)
        if rows != one.change["add"]:
            found["add"] = rows
    if not found and not faults:
        faults.append(Fault("", "nothing changed", "at least one other value, or Accept"))
    if faults:
        raise DocumentError("the change", tuple(faults))
    return found


def _value(field: Field, text: str) -> JsonValue:
    if field.kind == "exercise":
        return _exercise(text) if text else None
    if field.kind == "number":
        return None if not text and field.help else _whole(text)
    return text


def _exercise(text: str) -> str:
    found = match(text)
    if found.sure is None:
        near = ", ".join(catalogue.exercise(one).name for one, _ in found.candidates[:3])
        raise ValueError(f"an exercise of the catalogue{f', such as {near}' if near else ''}")
    return found.sure


def _whole(text: str) -> int:
    try:
        return int(text)
    except ValueError:
        raise ValueError("a whole number") from None


def _read_rows(rows: JsonValue, said: Mapping[str, str], faults: list[Fault]) -> list[JsonValue]:
    found: list[JsonValue] = []
    for at, row in enumerate(rows if isinstance(rows, list) else ()):
        assert isinstance(row, dict)
        name = f"add-{at}-sets"
        try:
            sets = _whole(said.get(name, json.dumps(row["sets"])).strip())
        except ValueError as error:
            faults.append(Fault(name, repr(said.get(name)), str(error)))
            continue
        if sets:
            found.append({**row, "sets": sets, "to": said.get(f"add-{at}-to", str(row["to"]))})
    return found
