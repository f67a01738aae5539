"""A record out of a plain form, for a browser without script."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from datetime import datetime
from typing import Any

from setwright.documents.units import Unit, to_kg
from setwright.exercises import catalogue

FAILED = "failed"


class FieldError(ValueError):
    """A field that could not be read, in plain words."""


def record_of_form(
    data: Mapping[str, str], symptoms: list[str], now: datetime, unit: Unit
) -> dict[str, Any]:
    """The JSON object of a log's line; the log's own reader judges the rest.

    Args:
        data: fields by name.
        symptoms: those that were ticked.
        now: on the wall of the person.
        unit: of loads.

    Raises:
        FieldError: for a figure that is none, or a form that is none of ours.
    """
    kind = data.get("kind", "")
    if kind not in KINDS:
        raise FieldError("The form was not in order. Reload the page.")
    record: dict[str, Any] = {
        "kind": kind,
        "id": data.get("id", ""),
        "at": now.isoformat(),
        "note": data.get("note", "").strip(),
    }
    return record | KINDS[kind](data, symptoms, unit)


def _set(data: Mapping[str, str], symptoms: list[str], unit: Unit) -> dict[str, Any]:
    rir, load = data.get("rir", ""), _figure(data, "load", "The load")
    if load is None and not symptoms and _needs_load(data.get("exercise", "")):
        raise FieldError("The load: a figure is needed.")
    found: dict[str, Any] = {
        "exercise": data.get("exercise", ""),
        "role": data.get("role", "working"),
        "load_kg": to_kg(load or 0.0, unit),
        "unit": unit,
        "reps": _whole(data, "reps", "Repetitions"),
        "partial_reps": _whole(data, "partial_reps", "Partial repetitions") or 0,
        "to_failure": rir == FAILED,
        "technique": "technique" in data,
        "symptoms": symptoms,
    }
    if found["reps"] is None:
        if not symptoms:
            raise FieldError("Repetitions: a whole number is needed.")
        found["reps"] = 0
    if rir and rir != FAILED:
        found["rir"] = _figure(data, "rir", "Left in reserve")
    if data.get("side") in ("left", "right"):
        found["side"] = data["side"]
    if (number := _whole(data, "number", "The set's number")) and found["role"] == "working":
        found["number"] = number
    if level := _whole(data, "pain_level", "Pain"):
        where = data.get("pain_where", "").strip()
        if not where:
            raise FieldError("Pain: say where it is.")
        found["pain"] = {"where": where, "level": level}
    return found


def _needs_load(ident: str) -> bool:
    """Whether nothing is lifted without one."""
    if ident not in catalogue.ids():
        return False
    return catalogue.exercise(ident).loading not in ("bodyweight", "band")


def _skipped(data: Mapping[str, str], symptoms: list[str], unit: Unit) -> dict[str, Any]:
    return {"exercise": data.get("exercise", ""), "reason": data.get("reason", "other")}


def _replaced(data: Mapping[str, str], symptoms: list[str], unit: Unit) -> dict[str, Any]:
    return {**_skipped(data, symptoms, unit), "by": data.get("by", "")}


def _missed(data: Mapping[str, str], symptoms: list[str], unit: Unit) -> dict[str, Any]:
    return {"session": data.get("session", ""), "reason": data.get("reason", "other")}


def _body_mass(data: Mapping[str, str], symptoms: list[str], unit: Unit) -> dict[str, Any]:
    mass = _figure(data, "mass", "Body mass")
    if mass is None:
        raise FieldError("Body mass: a figure is needed.")
    return {"kg": to_kg(mass, unit)}


def _withdrawn(data: Mapping[str, str], symptoms: list[str], unit: Unit) -> dict[str, Any]:
    return {"of": data.get("of", "")}


KINDS: Mapping[str, Callable[[Mapping[str, str], list[str], Unit], dict[str, Any]]] = {
    "set": _set,
    "skipped": _skipped,
    "replaced": _replaced,
    "missed": _missed,
    "body_mass": _body_mass,
    "withdrawn": _withdrawn,
}


def _figure(data: Mapping[str, str], name: str, words: str) -> float | None:
    text = data.get(name, "").strip().replace(",", ".").replace("\u2212", "-")
    if not text:
        return None
    try:
        value = float(text)
    except ValueError:
        raise FieldError(f"{words}: {text[:20]} is no figure.") from None
    if not abs(value) < 1e6:
        raise FieldError(f"{words}: {text[:20]} is no figure.")
    return value


def _whole(data: Mapping[str, str], name: str, words: str) -> int | None:
    value = _figure(data, name, words)
    if value is None:
        return None
    if value != int(value):
        raise FieldError(f"{words}: a whole number is needed.")
    return int(value)
