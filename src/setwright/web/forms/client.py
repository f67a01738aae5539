"""Forms about a client, besides the intake."""

from __future__ import annotations

from django import forms


class NewClientForm(forms.Form):
    """A client to be added."""

    name = forms.CharField(
        max_length=60,
        label="Name",
        help_text="As you call the person; the intake comes next.",
        widget=forms.TextInput(attrs={"autocomplete": "off"}),
    )
