"""JSON Schemas of the documents, for editors: the models, with the short forms beside them."""

from __future__ import annotations

import json
from collections.abc import Callable
from typing import Any

from setwright.exercises.movement_file import MovementDocument
from setwright.exercises.movements import LIKE, MERGED
from setwright.plan.decision import Decision
from setwright.plan.intake import DAYS, Intake
from setwright.plan.log_store import RECORDS
from setwright.plan.spelling import SHORT_FIELDS
from setwright.plan.week import Plan

Schema = dict[str, Any]

_LINE: Schema = {
    "type": "string",
    "pattern": r"\d\s*([xX×*]|[sS]ets|[sS][aä]tze)",
    "description": "Exercise: sets x reps, RIR first-last, rest low-high, and more",
}
_NAMED_LINE: Schema = {
    "type": "object",
    "minProperties": 1,
    "maxProperties": 2,
    "properties": {"note": {"type": "string", "maxLength": 300}},
    "additionalProperties": _LINE,
    "not": {"required": ["sets"]},
}
_DAY: Schema = {
    "anyOf": [{"enum": list(DAYS)}, {"type": "string", "pattern": r"^[A-Za-z]{3,9}\.?$"}],
    "description": "a weekday, whole or by its first letters",
}
_ANSWER: Schema = {"anyOf": [{"type": "boolean"}, {"enum": ["yes", "no"]}]}

# No offset: the clock on the wall where the set was done.
_LOCAL_TIME: Schema = {
    "type": "string",
    "pattern": r"^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}",
    "description": "local time, 2026-09-07T18:05:00",
}


def _beside(field: Schema, pattern: str, number: bool = True, description: str = "") -> Schema:
    forms: list[Schema] = [field, {"type": "string", "pattern": pattern}]
    if number:
        forms.append({"type": "number"})
    return {"anyOf": forms, "description": description}


def _entry(entry: Schema) -> Schema:
    fields = entry["properties"]
    fields["reps"] = _beside(fields["reps"], r"^\s*\d", description="8 or 8-10")
    fields["rir"] = _beside(fields["rir"], r"^\s*\d", description="2 or 3-1, first to last set")
    fields["rest_s"] = _beside(fields["rest_s"], r"^\s*\d", description="90 s, 90-120 s, 2-3 min")
    fields["tempo"] = _beside(fields["tempo"], r"^\s*\d", description="3/1/1/0, 31X0")
    fields["load_kg"] = _beside(fields["load_kg"], r"^\s*\d", description="60 kg, 135 lb")
    for short, name in SHORT_FIELDS.items():
        fields[short] = fields[name]
    entry["required"] = [name for name in entry["required"] if name != "rest_s"]
    entry["oneOf"] = [{"required": ["rest_s"]}, {"required": ["rest"]}]
    return entry


def plan_schema() -> Schema:
    """The JSON Schema of a plan."""
    schema = Plan.model_json_schema()
    definitions = schema["$defs"]
    _entry(definitions["Entry"])
    session = definitions["Session"]["properties"]
    session["day"] = _DAY
    session["exercises"]["items"] = {"anyOf": [{"$ref": "#/$defs/Entry"}, _NAMED_LINE, _LINE]}
    return _headed(schema, "plan-1", "Plan")


def intake_schema() -> Schema:
    """The JSON Schema of an intake."""
    schema = Intake.model_json_schema()
    definitions = schema["$defs"]
    for name, answer in definitions["Screening"]["properties"].items():
        if answer.get("type") == "boolean":
            kept = {key: value for key, value in answer.items() if key != "type"}
            definitions["Screening"]["properties"][name] = {**kept, **_ANSWER}
    for owner in ("TrainingDay", "EarlierWork"):
        definitions[owner]["properties"]["day"] = _DAY
    fields = schema["properties"]
    fields["days"]["items"] = {
        "anyOf": [
            {"$ref": "#/$defs/TrainingDay"},
            {"type": "string", "pattern": r"^[A-Za-z]+[\s,:]+\d+"},
        ]
    }
    known = definitions["KnownLoad"]
    known["properties"]["load_kg"] = _beside(known["properties"]["load_kg"], r"^\s*\d")
    known["properties"]["load"] = known["properties"]["load_kg"]
    known["required"] = [name for name in known["required"] if name != "load_kg"]
    known["oneOf"] = [{"required": ["load_kg"]}, {"required": ["load"]}]
    done: Schema = {"type": "string", "pattern": r"\d\s*(kgs?|lbs?)\s*[xX×]\s*\d"}
    fields["known_loads"]["items"] = {
        "anyOf": [
            {"$ref": "#/$defs/KnownLoad"},
            {
                "type": "object",
                "minProperties": 1,
                "maxProperties": 1,
                "additionalProperties": done,
            },
            done,
        ]
    }
    return _headed(schema, "intake-1", "Intake")


def movement_schema() -> Schema:
    """The JSON Schema of a movement a coach declares: whole, or like an exercise with changes."""
    schema = MovementDocument.model_json_schema()
    fields = schema["properties"]
    for name in MERGED:
        degrees = fields[name]["additionalProperties"]
        fields[name]["additionalProperties"] = {"anyOf": [degrees, {"type": "null"}]}
    fields[LIKE] = {"type": "string", "description": "the exercise it changes"}
    schema["required"] = ["setwright", "name"]
    schema["anyOf"] = [{"required": [LIKE]}, {"required": ["ends", "support"]}]
    return _headed(schema, "movement-1", "Movement")


def log_schema() -> Schema:
    """The JSON Schema of one line of a log."""
    schema = RECORDS.json_schema()
    for definition in schema["$defs"].values():
        if "kind" in definition["properties"]:
            definition["properties"]["at"] = _LOCAL_TIME
            definition["required"].append("kind")
    return _headed(schema, "log-record-1", "Log record")


def decision_schema() -> Schema:
    """The JSON Schema of one line of the decisions."""
    schema = Decision.model_json_schema()
    schema["properties"]["at"] = _LOCAL_TIME
    return _headed(schema, "decision-1", "Decision")


def _headed(schema: Schema, name: str, title: str) -> Schema:
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:setwright:{name}",
        **schema,
        "title": f"Setwright {title.lower()}",
    }


SCHEMAS: dict[str, Callable[[], Schema]] = {
    "plan-1.schema.json": plan_schema,
    "intake-1.schema.json": intake_schema,
    "movement-1.schema.json": movement_schema,
    "log-record-1.schema.json": log_schema,
    "decision-1.schema.json": decision_schema,
}


def schema_text(name: str) -> str:
    """The text of a shipped schema file."""
    return json.dumps(SCHEMAS[name](), indent=2, ensure_ascii=False) + "\n"
