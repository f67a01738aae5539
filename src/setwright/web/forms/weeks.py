"""What may be typed where a week begins."""

from __future__ import annotations

import base64
import binascii
from datetime import date
from typing import Any

from django import forms

from setwright.documents.table_file import MAX_BYTES

SOURCES = (
    ("design", "Design it from the intake"),
    ("copy", "Copy an earlier week"),
    ("empty", "Begin empty"),
)


class WeekForm(forms.Form):
    """The Monday on which a week begins."""

    starts = forms.DateField(
        label="Monday",
        widget=forms.DateInput(attrs={"type": "date", "step": "7"}, format="%Y-%m-%d"),
    )

    def clean_starts(self) -> date:
        """A Monday."""
        day: date = self.cleaned_data["starts"]
        if day.weekday() != 0:
            raise forms.ValidationError(f"{day:%-d %B} is a {day:%A}. Weeks begin on a Monday.")
        return day


class NewWeekForm(WeekForm):
    """A Monday and what the week begins with."""

    source = forms.ChoiceField(choices=SOURCES)


class ImportForm(WeekForm):
    """A plan in a file or pasted."""

    file = forms.FileField(
        required=False, label="File", help_text="Notes, CSV, XLSX, or a plan of Setwright."
    )
    text = forms.CharField(
        required=False, label="Or paste it here", max_length=100_000, widget=forms.Textarea
    )
    unit = forms.ChoiceField(
        required=False,
        label="Loads without a unit are",
        choices=(("", "as the file says"), ("kg", "kg"), ("lb", "lb")),
    )
    held = forms.CharField(required=False, max_length=4_000_000, widget=forms.HiddenInput)
    name = forms.CharField(required=False, max_length=120, widget=forms.HiddenInput)

    def clean(self) -> dict[str, Any]:
        """The bytes, whichever way they came: ``data`` and ``name``."""
        data = super().clean() or self.cleaned_data
        upload, text, held = data.get("file"), data.get("text", ""), data.get("held", "")
        if upload is not None:
            if upload.size > MAX_BYTES:
                self.add_error("file", f"At most {MAX_BYTES // 1000:,} kB.")
                return data
            data["data"], data["name"] = upload.read(), upload.name[:120]
        elif held:
            try:
                data["data"] = base64.b64decode(held, validate=True)
            except binascii.Error:
                self.add_error(None, "Choose the file once more.")
        elif text.strip():
            data["data"], data["name"] = text.encode(), "pasted text"
        else:
            self.add_error("file", "Choose a file, or paste a plan.")
        return data
