"""Plans written: YAML with one line of shorthand for each exercise."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any

from setwright.documents.yaml_io import scalar
from setwright.plan import amounts
from setwright.plan.naming import exercise_name
from setwright.plan.shorthand import fits_a_line, format_prescription
from setwright.plan.week import Entry, Plan, Session

# Text that needs no quotes in YAML: begins with a letter, holds none of YAML's own signs.
_PLAIN = re.compile(r"[A-Za-zÀ-ÖØ-öø-ÿ][\w ,./()+×%°'&-]*\Z")
_PLAIN_LINE = re.compile(r"[\w][\w ,./()+×%°'&-]*\Z")


def quoted(text: str) -> str:
    """Text as a YAML scalar that reads back as the same text."""
    plain = (
        _PLAIN.match(text)
        and not text.endswith(" ")
        and isinstance(scalar(text), str)
        and text.isprintable()
    )
    return text if plain else _in_quotes(text)


def _in_quotes(text: str) -> str:
    return "".join(
        char
        if char.isprintable() or char == " "
        else json.dumps(char)[1:-1]
        if ord(char) < 0x10000
        else f"\\U{ord(char):08x}"
        for char in json.dumps(text, ensure_ascii=False)
    )


def entry_node(entry: Entry, unit: str = "kg") -> dict[str, Any]:
    """An exercise as a plan file holds it: its line, and its note apart where no line can hold it."""
    if fits_a_line(entry):
        return {exercise_name(entry.exercise): format_prescription(entry, unit)}
    bare = format_prescription(entry.model_copy(update={"note": ""}), unit)
    return {exercise_name(entry.exercise): bare, "note": entry.note}


def session_head(session: Session) -> dict[str, Any]:
    """A session's own fields, without its exercises."""
    head: dict[str, Any] = {"name": session.name, "day": session.day}
    if session.minutes is not None:
        head["minutes"] = session.minutes
    return head


def plan_head(plan: Plan) -> dict[str, Any]:
    """A plan's own fields, without its sessions."""
    head: dict[str, Any] = {"setwright": plan.setwright, "title": plan.title}
    if plan.person:
        head["person"] = plan.person
    head["unit"] = plan.unit
    return head


def write_plan(plan: Plan) -> str:
    """Write a plan as YAML that ``read_plan`` reads back to the same plan."""
    return "\n".join(_lines(plan)) + "\n"


def _lines(plan: Plan) -> Iterator[str]:
    for key, value in plan_head(plan).items():
        yield f"{key}: {_scalar(value)}"
    yield "sessions:"
    for session in plan.sessions:
        lead = "  - "
        for key, value in session_head(session).items():
            yield f"{lead}{key}: {_scalar(value)}"
            lead = "    "
        yield "    exercises:"
        for entry in session.exercises:
            lead = "      - "
            for key, value in entry_node(entry, plan.unit).items():
                yield f"{lead}{quoted(key)}: {_scalar(value)}"
                lead = "        "
    if plan.unavoidable:
        yield "unavoidable:"
        for item in plan.unavoidable:
            yield f"  - criterion: {quoted(item.criterion)}"
            yield f"    subject: {quoted(item.subject)}"
            yield f"    because: {quoted(item.because)}"


def _scalar(value: Any) -> str:
    if isinstance(value, int):
        return str(value)
    # A prescription begins with its number of sets and can still stand without quotes.
    if re.match(r"\d+ x \d", value) and _PLAIN_LINE.match(value) and not value.endswith(" "):
        return str(value)
    return quoted(value)


def fields_of(entry: Entry, unit: str = "kg") -> dict[str, Any]:
    """An exercise as single fields in the trade's forms, for files that are written so."""
    fields: dict[str, Any] = {
        "exercise": exercise_name(entry.exercise),
        "sets": entry.sets,
        "reps": amounts.write_reps(entry.reps),
        "rir": amounts.write_rir(entry.rir),
        "rest": amounts.write_rest(entry.rest_s),
    }
    if entry.tempo is not None:
        fields["tempo"] = amounts.write_tempo(entry.tempo)
    if entry.partials is not None:
        fields["partials"] = entry.partials
    if entry.superset is not None:
        fields["superset"] = entry.superset
    if entry.load_kg is not None:
        fields["load"] = amounts.write_load(entry.load_kg, unit)
    if entry.note:
        fields["note"] = entry.note
    return fields


def update_plan(text: str, plan: Plan) -> str:
    """Bring a plan file up to date and keep its author's comments, order and manner of writing.

    Args:
        text: the file as it stands; anything ``read_plan`` accepts.
        plan: the plan it shall hold.

    Raises:
        DocumentError: when the text is no plan.
    """
    from setwright.plan.update import updated

    return updated(text, plan)
