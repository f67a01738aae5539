"""The lists of an intake: aims, kit, what to avoid, known loads, earlier work."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from django import forms
from django.forms.formsets import BaseFormSet

from setwright.exercises.model import Kit
from setwright.plan.intake import Day
from setwright.web.forms.intake import choices, number_field

MOST = 80
if TYPE_CHECKING:
    Rows = BaseFormSet[forms.Form]
else:
    Rows = BaseFormSet


def _words(label: str, known: str, most: int = 80, help_text: str = "") -> forms.CharField:
    widget = forms.TextInput(attrs={"list": known, "autocomplete": "off"})
    return forms.CharField(
        label=label, required=False, max_length=most, widget=widget, help_text=help_text
    )


class AimRow(forms.Form):
    """One muscle and what is wanted of it."""

    KEY = "muscle"
    muscle = _words("Muscle, part or group", "muscles")
    aim = forms.ChoiceField(
        choices=[
            ("emphasise", "Emphasise"),
            ("maintain", "Maintain"),
            ("leave_out", "Leave out"),
        ],
        label="Aim",
        required=False,
    )


class KitRow(forms.Form):
    """One kind of kit and its loads: a bar with plates, or a range, or a list."""

    KEY = "kit"
    kit = forms.ChoiceField(choices=choices(Kit, "none"), label="Kit", required=False)
    unit = forms.ChoiceField(
        choices=[("kg", "kg"), ("lb", "lb")], label="Figures in", required=False
    )
    bar_kg = number_field("Bar or carriage")
    plates_kg = number_field("Plates, each a pair", most=300, inputmode="text", size=22)
    from_kg = number_field("From")
    to_kg = number_field("To")
    step_kg = number_field("Step")
    loads_kg = number_field("Loads one by one", most=600, inputmode="text", size=22)
    single = forms.BooleanField(label="Only one of each, no pairs", required=False)


class AvoidRow(forms.Form):
    """Something the person must not or will not do."""

    KEY = "what"
    kind = forms.ChoiceField(
        choices=[
            ("exercise", "Exercise"),
            ("pattern", "Movement pattern"),
            ("action", "Joint action"),
        ],
        label="Avoid",
        required=False,
    )
    what = _words("Which", "exercises")
    reason = forms.ChoiceField(
        choices=[("pain", "Pain"), ("preference", "Preference"), ("skill", "Skill")],
        label="Because of",
        required=False,
    )
    note = forms.CharField(max_length=300, required=False, label="Note")


class LoadRow(forms.Form):
    """A set that was done."""

    KEY = "exercise"
    exercise = _words("Exercise", "exercises")
    load = number_field("Load")
    reps = number_field("Repetitions", inputmode="numeric")
    rir = number_field("In reserve")


class EarlierRow(forms.Form):
    """Hard sets done already this week."""

    KEY = "what"
    day = forms.ChoiceField(choices=choices(Day), label="Day", required=False)
    what = _words("Exercise or muscle", "exercises")
    sets = number_field("Hard sets", inputmode="numeric")


ROWS: Mapping[str, type[forms.Form]] = {
    "aims": AimRow,
    "kit": KitRow,
    "avoid": AvoidRow,
    "loads": LoadRow,
    "earlier": EarlierRow,
}


def formsets(
    data: Mapping[str, Any] | None,
    initial: Mapping[str, Sequence[Mapping[str, Any]]],
    more: str = "",
) -> dict[str, Rows]:
    """Every list as a formset.

    Args:
        data: what was sent, or None.
        initial: rows of every list to begin with.
        more: list that gets further empty rows.
    """
    found = {}
    for name, row in ROWS.items():
        held = list(initial.get(name, ()))
        kind = forms.formset_factory(
            row, extra=1 if held else 2, max_num=MOST, absolute_max=2 * MOST
        )
        sent = dict(data.items()) if data is not None else None
        if sent is not None and more == name:
            total = sent.get(f"{name}-TOTAL_FORMS", "0")
            sent[f"{name}-TOTAL_FORMS"] = (
                str(min(int(total) + 3, MOST)) if total.isdecimal() else "3"
            )
        found[name] = kind(sent, prefix=name, initial=held if data is None else None)
    return found


def filled(rows: Rows) -> list[tuple[forms.Form, dict[str, Any]]]:
    """Rows in which something stands, with what was typed; call after ``is_valid``."""
    found = []
    for row in rows:
        data = getattr(row, "cleaned_data", {})
        key: str = row.KEY  # type: ignore[attr-defined]
        typed = {name for name, field in row.fields.items() if isinstance(field, forms.CharField)}
        if any(data.get(name) for name in (*typed, key)):
            found.append((row, data))
    return found
