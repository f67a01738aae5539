"""The form of an intake to its document, and the document's faults at their fields."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from django import forms

from setwright.documents.errors import DocumentError, Fault
from setwright.documents.yaml_text import block
from setwright.plan.intake import DAYS, Intake
from setwright.plan.read import read_intake
from setwright.web.forms.intake import QUESTIONS, PersonForm
from setwright.web.forms.intake_rows import Rows, filled

_FIGURE = re.compile(r"[+-]?\d+(?:[.,]\d+)?\Z")
Place = tuple[forms.Form, str | None]


@dataclass
class _Built:
    """A document under way, and the field that each path of it came from."""

    data: dict[str, Any] = field(default_factory=dict)
    places: dict[str, Place] = field(default_factory=dict)

    def put(self, path: str, form: forms.Form, name: str | None) -> None:
        self.places[path] = form, name


def read_form(person: PersonForm, rows: Mapping[str, Rows]) -> Intake | None:
    """The intake that a form holds; None when something is wrong, which stands at its field."""
    sound = [person.is_valid(), *(one.is_valid() for one in rows.values())]
    if not all(sound):
        return None
    built = _Built()
    _person(built, person)
    _days(built, person)
    _aims(built, rows["aims"])
    _kit(built, rows["kit"])
    _avoid(built, rows["avoid"])
    _loads(built, rows["loads"])
    _earlier(built, rows["earlier"])
    try:
        return read_intake("\n".join(block(built.data)) + "\n", "intake")
    except DocumentError as error:
        for fault in error.faults:
            _say(built, person, fault)
        return None


def _person(built: _Built, person: PersonForm) -> None:
    data = person.cleaned_data
    built.data["setwright"] = "intake/1"
    for name in ("name", "experience", "age_band", "sex", "setting", "split", "gym", "unit"):
        if data[name]:
            built.data[name] = data[name]
        built.put(name, person, name)
    for name in ("body_mass_kg", "stature_cm", "seed"):
        if data[name].strip():
            built.data[name] = figure(data[name])
        built.put(name, person, name)
    answers: dict[str, Any] = {name: data[name] == "yes" for name in QUESTIONS}
    if data["cleared_on"]:
        answers["cleared_on"] = data["cleared_on"]
    for name in answers:
        built.put(f"screening.{name}", person, name)
    built.data["screening"] = answers
    built.put("kit", person, "gym")


def _days(built: _Built, person: PersonForm) -> None:
    found: list[dict[str, Any]] = []
    for day in DAYS:
        minutes = person.cleaned_data[f"{day}_minutes"].strip()
        focus = person.cleaned_data[f"{day}_focus"]
        if not minutes and not focus:
            continue
        path = f"days.{len(found)}"
        row: dict[str, Any] = {"day": day}
        if minutes:
            row["minutes"] = figure(minutes)
        if focus:
            row["focus"] = focus
            built.put(f"{path}.focus", person, f"{day}_focus")
        built.put(path, person, f"{day}_minutes")
        found.append(row)
    built.data["days"] = found
    built.put("days", person, "monday_minutes")


def _aims(built: _Built, rows: Rows) -> None:
    aims: dict[str, list[str]] = {}
    for row, data in filled(rows):
        words = aims.setdefault(data["aim"] or "emphasise", [])
        built.put(f"aims.{data['aim'] or 'emphasise'}.{len(words)}", row, "muscle")
        words.append(data["muscle"])
    if aims:
        built.data["aims"] = aims


def _kit(built: _Built, rows: Rows) -> None:
    found: list[dict[str, Any]] = []
    for row, data in filled(rows):
        path = f"kit.{len(found)}"
        item: dict[str, Any] = {"kit": data["kit"]}
        built.put(path, row, "kit")
        for name in ("bar_kg", "from_kg", "to_kg", "step_kg", "plates_kg", "loads_kg"):
            if data[name].strip():
                several = name in ("plates_kg", "loads_kg")
                item[name] = figures(data[name]) if several else figure(data[name])
                built.put(f"{path}.{name}", row, name)
        if data["unit"] == "lb":
            item["unit"] = "lb"
        if data["single"]:
            item["pairs"] = False
        found.append(item)
    if found:
        built.data["kit"] = found


def _avoid(built: _Built, rows: Rows) -> None:
    found: list[dict[str, Any]] = []
    for row, data in filled(rows):
        item = {data["kind"] or "exercise": data["what"], "reason": data["reason"] or "preference"}
        if data["note"]:
            item["note"] = data["note"]
        path = f"avoid.{len(found)}"
        built.put(path, row, "what")
        built.put(f"{path}.note", row, "note")
        found.append(item)
    if found:
        built.data["avoid"] = found


def _loads(built: _Built, rows: Rows) -> None:
    found: list[dict[str, Any]] = []
    for row, data in filled(rows):
        item: dict[str, Any] = {"exercise": data["exercise"], "reps": figure(data["reps"])}
        item["load"] = figure(data["load"])
        if data["rir"].strip():
            item["rir"] = figure(data["rir"])
        path = f"known_loads.{len(found)}"
        built.put(path, row, "exercise")
        for name, own in (("load", "load"), ("load_kg", "load"), ("reps", "reps"), ("rir", "rir")):
            built.put(f"{path}.{name}", row, own)
        found.append(item)
    if found:
        built.data["known_loads"] = found


def _earlier(built: _Built, rows: Rows) -> None:
    """One entry a row, as the document allows a day more than once."""
    found: list[dict[str, Any]] = []
    for row, data in filled(rows):
        path = f"earlier_this_week.{len(found)}"
        built.put(path, row, "what")
        built.put(f"{path}.sets.{data['what']}", row, "sets")
        found.append({"day": data["day"] or "monday", "sets": {data["what"]: figure(data["sets"])}})
    if found:
        built.data["earlier_this_week"] = found


def figure(text: str) -> int | float | str | None:
    """A figure as the document has it; what is none stays text for the document to refuse."""
    text = text.strip()
    if not text:
        return None
    if not _FIGURE.match(text):
        return text
    value = float(text.replace(",", "."))
    return int(value) if value.is_integer() else value


def figures(text: str) -> list[int | float | str | None]:
    """Figures with spaces, semicolons, or commas and a space between.

    A comma without a space could be a decimal or a divider, so that it stays text and is refused.
    """
    found = re.split(r"\s*;\s*|,\s+|\s+", text.strip())
    return [one if "," in one else figure(one) for one in found if one]


def _say(built: _Built, person: PersonForm, fault: Fault) -> None:
    path = fault.field
    while path and path not in built.places:
        path = path.rpartition(".")[0]
    form, name = built.places.get(path, (person, None))
    found = "Nothing is given" if fault.found in ("nothing", "no kit") else f"Found {fault.found}"
    form.add_error(name, f"{found}. Allowed: {fault.allowed}.")
