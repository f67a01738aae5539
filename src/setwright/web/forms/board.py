"""What may be typed on the board."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from django import forms

from setwright.documents.units import Unit
from setwright.exercises.kit import from_kg, to_kg
from setwright.plan.intake import DAYS
from setwright.plan.week import Entry, Session
from setwright.web.board.changing import At
from setwright.web.board.orders import Order

_AT = re.compile(r"(\d{1,2})\.(\d{1,2})")
DAY_CHOICES = [(day, day.capitalize()) for day in DAYS]


class OrderForm(forms.Form):
    """What every order says: which version it was made on, and what it is about."""

    base = forms.IntegerField(min_value=1, widget=forms.HiddenInput)
    at = forms.CharField(required=False, max_length=6, widget=forms.HiddenInput)
    exercise = forms.CharField(required=False, max_length=80, widget=forms.HiddenInput)
    session = forms.IntegerField(required=False, min_value=0, max_value=13)

    def order(self, do: str) -> Order:
        """The order, of a form that is valid."""
        data = dict(self.cleaned_data)
        session = data.pop("session")
        place = place_of(data.pop("at"))
        exercise = data.pop("exercise")
        del data["base"]
        return Order(do, place, exercise, -1 if session is None else session, self.fields_of(data))

    def fields_of(self, data: Mapping[str, Any]) -> Mapping[str, Any]:
        """What was typed, as the edit takes it."""
        return data


def place_of(text: str) -> At | None:
    """A place out of an address or a form; None when it is none."""
    match = _AT.fullmatch(text)
    return At(int(match[1]), int(match[2])) if match else None


def _figure(label: str, low: float, high: float, step: str = "1") -> forms.FloatField:
    widget = forms.NumberInput(attrs={"step": step, "inputmode": "decimal"})
    return forms.FloatField(min_value=low, max_value=high, label=label, widget=widget)


class PrescribeForm(OrderForm):
    """Sets, repetitions, effort, rest, load and note of one exercise."""

    sets = forms.IntegerField(min_value=1, max_value=20, label="Sets")
    reps_low = forms.IntegerField(min_value=1, max_value=100, label="Repetitions, lowest")
    reps_high = forms.IntegerField(min_value=1, max_value=100, label="highest")
    rir_first = _figure("RIR, first set", 0, 10, "0.5")
    rir_last = _figure("last set", 0, 10, "0.5")
    rest_low = forms.IntegerField(min_value=0, max_value=900, label="Rest, shortest (s)")
    rest_high = forms.IntegerField(min_value=0, max_value=900, label="longest (s)")
    load = forms.FloatField(required=False, min_value=0, max_value=1000, label="Load")
    note = forms.CharField(required=False, max_length=300, label="Note")
    unit: Unit = "kg"

    def clean(self) -> dict[str, Any]:
        """The lower figure first, and a note on one line."""
        data = super().clean() or self.cleaned_data
        for low, high in (("reps_low", "reps_high"), ("rest_low", "rest_high")):
            if low in data and high in data and data[low] > data[high]:
                self.add_error(high, "Not lower than the one before it.")
        if not data.get("note", "").isprintable():
            self.add_error("note", "On one line.")
        return data

    def fields_of(self, data: Mapping[str, Any]) -> Mapping[str, Any]:
        """Fields of an entry."""
        load = data["load"]
        return {
            "sets": data["sets"],
            "reps": (data["reps_low"], data["reps_high"]),
            "rir": (data["rir_first"], data["rir_last"]),
            "rest_s": (data["rest_low"], data["rest_high"]),
            "load_kg": None if load is None else to_kg(load, self.unit),
            "note": data["note"].strip(),
        }


def prescription_of(entry: Entry, unit: Unit) -> dict[str, Any]:
    """The form's values for an exercise as it stands."""
    load = entry.load_kg
    return {
        "sets": entry.sets,
        "reps_low": entry.reps[0],
        "reps_high": entry.reps[1],
        "rir_first": f"{entry.rir[0]:g}",
        "rir_last": f"{entry.rir[1]:g}",
        "rest_low": entry.rest_s[0],
        "rest_high": entry.rest_s[1],
        "load": None if load is None else f"{round(from_kg(load, unit), 3):g}",
        "note": entry.note,
    }


class SetsForm(OrderForm):
    """A set more or fewer."""

    by = forms.IntegerField(min_value=-20, max_value=20)


class MoveForm(OrderForm):
    """Another place: `3.2` before the third exercise of the fourth session, or a free day."""

    to = forms.CharField(max_length=12, label="Move to")

    def clean_to(self) -> At | str:
        """A place or a day."""
        text: str = self.cleaned_data["to"]
        place = place_of(text)
        if place is None and text not in DAYS:
            raise forms.ValidationError("Choose a place in a session, or a day.")
        return place or text

    def order(self, do: str) -> Order:
        """To a place, or to a day that has no session yet."""
        made = super().order(do)
        to = self.cleaned_data["to"]
        if isinstance(to, At):
            fields = {"session": to.session, "position": to.position}
            return Order("move", made.at, made.exercise, -1, fields)
        return Order("move-day", made.at, made.exercise, -1, {"day": to})


class ExerciseForm(OrderForm):
    """Another exercise."""

    new = forms.CharField(max_length=80, label="Exercise")


class AddSessionForm(ExerciseForm):
    """A session on a day, with its first exercise."""

    day = forms.ChoiceField(choices=DAY_CHOICES, label="Day")


class SessionForm(OrderForm):
    """Name, day and minutes of a session."""

    name = forms.CharField(max_length=60, label="Name")
    day = forms.ChoiceField(choices=DAY_CHOICES, label="Day")
    minutes = forms.IntegerField(
        required=False, min_value=5, max_value=300, label="Minutes to be had"
    )


class MendForm(OrderForm):
    """A remark of the audit whose smallest change is to be made."""

    remark = forms.CharField(max_length=400)

    def fields_of(self, data: Mapping[str, Any]) -> Mapping[str, Any]:
        """Criterion and subject."""
        criterion, _, subject = data["remark"].partition("|")
        return {"criterion": criterion, "subject": subject}


def session_of(session: Session) -> dict[str, Any]:
    """The form's values for a session as it stands."""
    return {"name": session.name, "day": session.day, "minutes": session.minutes}


FORMS: Mapping[str, type[OrderForm]] = {
    "prescribe": PrescribeForm,
    "sets": SetsForm,
    "move": MoveForm,
    "join": OrderForm,
    "apart": OrderForm,
    "remove": OrderForm,
    "replace": ExerciseForm,
    "add": ExerciseForm,
    "add-session": AddSessionForm,
    "session": SessionForm,
    "remove-session": OrderForm,
    "mend": MendForm,
}
