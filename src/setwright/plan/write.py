"""Plans and intakes written: YAML, one line of shorthand for each exercise."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from setwright.documents.yaml_text import block, quoted, scalar_text
from setwright.plan import amounts
from setwright.plan.intake import Intake
from setwright.plan.naming import exercise_name
from setwright.plan.shorthand import fits_a_line, format_prescription
from setwright.plan.week import Entry, Plan, Session

# A prescription begins with a figure and can still stand without quotes.
_PLAIN_LINE = re.compile(r"\d+ x \d[\w ,./()+×%°'&-]*(?<! )\Z")


def write_plan(plan: Plan) -> str:
    """Write a plan as YAML that ``read_plan`` reads back to the same plan."""
    return "\n".join(_lines(plan)) + "\n"


def write_intake(intake: Intake) -> str:
    """Write an intake as YAML that ``read_intake`` reads back to the same intake."""
    return "\n".join(block(intake_data(intake))) + "\n"


def intake_data(intake: Intake) -> dict[str, Any]:
    """An intake's fields as its file holds them: without defaults, but with every answer."""
    data = intake.model_dump(exclude_defaults=True)
    data["screening"] = intake.screening.model_dump()
    return data


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


def plan_head(plan: Plan) -> dict[str, Any]:
    """A plan's own fields, without its sessions."""
    head: dict[str, Any] = {"setwright": plan.setwright, "title": plan.title}
    if plan.person:
        head["person"] = plan.person
    head["unit"] = plan.unit
    return head


def session_head(session: Session) -> dict[str, Any]:
    """A session's own fields, without its exercises."""
    head: dict[str, Any] = {"name": session.name, "day": session.day}
    if session.minutes is not None:
        head["minutes"] = session.minutes
    return head


def entry_node(entry: Entry, unit: str = "kg") -> dict[str, Any]:
    """An exercise as a plan file holds it: its line, and a note that no line can hold apart."""
    if fits_a_line(entry):
        return {exercise_name(entry.exercise): format_prescription(entry, unit)}
    bare = format_prescription(entry.model_copy(update={"note": ""}), unit)
    return {exercise_name(entry.exercise): bare, "note": entry.note}


def entry_fields(entry: Entry, unit: str = "kg") -> dict[str, Any]:
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


def _lines(plan: Plan) -> Iterator[str]:
    for key, value in plan_head(plan).items():
        yield f"{key}: {scalar_text(value)}"
    yield "sessions:"
    for session in plan.sessions:
        lead = "  - "
        for key, value in session_head(session).items():
            yield f"{lead}{key}: {scalar_text(value)}"
            lead = "    "
        yield "    exercises:"
        for entry in session.exercises:
            lead = "      - "
            for key, text in entry_node(entry, plan.unit).items():
                yield f"{lead}{quoted(key)}: {text if _PLAIN_LINE.match(text) else quoted(text)}"
                lead = "        "
    if plan.unavoidable:
        yield from block({"unavoidable": [item.model_dump() for item in plan.unavoidable]})
